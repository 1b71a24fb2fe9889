import { assert, type Fraction, fraction } from '@sheafbook/units';
import type { EaterRate, EdibleLot } from './edible-stock.ts';
import { groupBy } from './group-by.ts';
import { sharedDenominator } from './sums.ts';

/** Eaters who may eat exactly the same lots: they count as one mouth, since food between them can be shared at will. */
export type Diet = { readonly eaterIds: readonly string[]; readonly perDay: bigint };

/** Lots that end on the same day and that the same diets may eat. `day` is infinite when no day ends it. */
export type Pile = {
  readonly amount: bigint;
  readonly day: number;
  readonly diets: readonly number[];
  readonly lots: readonly number[];
};

/**
 * What a household holds and who may eat it, with all fractions brought to whole numbers.
 * Units: amounts and rates times `scale`; days whole. Piles are sorted by their last day, then by how few may eat
 * them, then by the first lot in them.
 */
export type Larder = {
  readonly diets: readonly Diet[];
  readonly piles: readonly Pile[];
  readonly scale: bigint;
};

export function stockLarder(rates: readonly EaterRate[], lots: readonly EdibleLot[]): Larder {
  const eating = rates.filter(({ perDay }) => perDay.numerator > 0n);
  const amounts = lots.map((lot) => amountOf(lot));
  const scale = sharedDenominator([...eating.map(({ perDay }) => perDay), ...amounts]);
  const usable = lots.map((lot) => (isPast(lot) ? new Set<string>() : new Set(lot.eaterIds)));
  const diets = groupDiets(eating, usable, scale);
  const dietOf = new Map(diets.flatMap((diet, index) => diet.eaterIds.map((eaterId) => [eaterId, index])));
  const edible = usable.map((eaterIds) =>
    numbersInOrder([...eaterIds].flatMap((id) => dietOf.get(id) ?? [])),
  );
  return {
    diets,
    piles: groupPiles(
      lots,
      amounts.map((amount) => scaled(amount, scale)),
      edible,
    ),
    scale,
  };
}

export function amountOf(lot: EdibleLot): Fraction {
  return typeof lot.amount === 'bigint' ? fraction(lot.amount) : lot.amount;
}

/** A lot whose last day is today or earlier feeds nobody tomorrow. */
export function isPast(lot: EdibleLot): boolean {
  return lot.daysLeft !== null && lot.daysLeft <= 0;
}

function groupDiets(eating: readonly EaterRate[], usable: readonly Set<string>[], scale: bigint): Diet[] {
  const groups = groupBy(eating, ({ eaterId }) =>
    usable.flatMap((eaterIds, position) => (eaterIds.has(eaterId) ? position : [])).join(),
  );
  return groups.map((group) => ({
    eaterIds: group.map(({ eaterId }) => eaterId),
    perDay: group.reduce((sum, { perDay }) => sum + scaled(perDay, scale), 0n),
  }));
}

function groupPiles(
  lots: readonly EdibleLot[],
  amounts: readonly bigint[],
  edible: readonly (readonly number[])[],
): Pile[] {
  const entries = lots.map((lot, position) => ({
    position,
    amount: amounts[position] ?? 0n,
    day: lot.daysLeft ?? Number.POSITIVE_INFINITY,
    diets: edible[position] ?? [],
  }));
  const groups = groupBy(
    entries.filter(({ diets }) => diets.length > 0),
    ({ day, diets }) => `${day}:${diets.join()}`,
  );
  const piles = groups.flatMap((group) => {
    const [first] = group;
    const amount = group.reduce((sum, entry) => sum + entry.amount, 0n);
    return first
      ? { amount, day: first.day, diets: first.diets, lots: group.map(({ position }) => position) }
      : [];
  });
  return piles.toSorted(
    (a, b) =>
      compareDays(a.day, b.day) || a.diets.length - b.diets.length || (a.lots[0] ?? 0) - (b.lots[0] ?? 0),
  );
}

/** Two infinities differ by NaN, so days are compared and not subtracted. */
function compareDays(a: number, b: number): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function numbersInOrder(values: readonly number[]): number[] {
  return [...new Set(values)].toSorted((a, b) => a - b);
}

function scaled(value: Fraction, scale: bigint): bigint {
  assert(scale % value.denominator === 0n, 'the scale makes every value whole');
  return value.numerator * (scale / value.denominator);
}

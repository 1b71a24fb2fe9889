import {
  assert,
  assertWhole,
  compareFractions,
  divideFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  subtractFractions,
  sumFractions,
} from '@sheafbook/units';
import { compareDays, type Days, wholeDaysOf } from './days.ts';
import type { FoodGroupCode } from './food-group.ts';
import { type GapPiece, gapAt } from './gap-pieces.ts';
import { assertGaps, daysWith, type GroupGap, piecesOf } from './group-gap.ts';

/** A group's gap and the price to close it; null when it can't be bought. Units: minor units a kilogram, exact. Errors: none by itself. */
export type PricedGap = GroupGap & { readonly minorUnitsPerKilogram: Fraction | null };

/** What of a group to buy. Units: exact grams and minor units. Errors: none by itself. */
export type GapPurchase = {
  readonly group: FoodGroupCode;
  readonly grams: Fraction;
  readonly minorUnits: Fraction;
};

/**
 * What closeGapDivisible finds. Units: days, exact minor units; `limitingGroup` ends first after buying, the earlier of
 * equals, null when no group ends. Errors: none by itself.
 */
export type DivisibleClosing = {
  readonly days: Fraction;
  readonly wholeDays: number | null;
  readonly minorUnits: Fraction;
  readonly limitingGroup: FoodGroupCode | null;
  readonly groups: readonly GapPurchase[];
};

type PricedPieces = { readonly pieces: readonly GapPiece[]; readonly minorUnitsPerGram: Fraction };

/**
 * What it costs to cover every group until a day, when food can be bought to the gram.
 * Units: exact minor units; null when a group that lacks food by then has no price. Shape: convex and made of straight
 * pieces as the day moves. With `gapPieces` it holds for days up to their target.
 * Errors: AssertionError when a group stands twice, or a need, stock or price is negative.
 */
export function costToReach(groups: readonly PricedGap[], days: Fraction): Fraction | null {
  assertPrices(groups);
  const purchases = purchasesFor(groups, days);
  return purchases && sumFractions(purchases.map(({ minorUnits }) => minorUnits));
}

/**
 * The longest that a budget can cover every group, up to the target, when food can be bought to the gram, and what to
 * buy for it.
 * Units: exact days, grams and minor units; the target and the budget are whole. Shape: one purchase a group, in the
 * same order, also when it is 0.
 * Errors: as costToReach; AssertionError when the budget or the target is not whole.
 */
export function closeGapDivisible(input: {
  readonly groups: readonly PricedGap[];
  readonly budgetMinorUnits: number;
  readonly targetDays: number;
}): DivisibleClosing {
  assertWhole(input.budgetMinorUnits, 'budgetMinorUnits');
  assertWhole(input.targetDays, 'targetDays');
  assertPrices(input.groups);
  const days = longestWithin(input.groups, fraction(input.budgetMinorUnits), fraction(input.targetDays));
  const groups = purchasesFor(input.groups, days) ?? [];
  return {
    days,
    wholeDays: wholeDaysOf(days),
    minorUnits: sumFractions(groups.map(({ minorUnits }) => minorUnits)),
    limitingGroup: limitingGroup(input.groups, groups),
    groups,
  };
}

/** Slides down the tangents of the cost from a day that costs too much; on a convex line that never goes past the answer. */
function longestWithin(groups: readonly PricedGap[], budget: Fraction, target: Fraction): Fraction {
  const priced = groups.flatMap((group): PricedPieces[] => {
    if (group.minorUnitsPerKilogram === null) return [];
    return [
      {
        pieces: piecesOf(group),
        minorUnitsPerGram: divideFractions(group.minorUnitsPerKilogram, fraction(1000)),
      },
    ];
  });
  let days = longestUnpriced(groups, target);
  for (;;) {
    const { cost, perDay } = tangentAt(priced, days);
    if (compareFractions(cost, budget) <= 0) return days;
    days = subtractFractions(days, divideFractions(subtractFractions(cost, budget), perDay));
  }
}

/** What can't be bought ends when its stock does, whatever the budget. */
function longestUnpriced(groups: readonly PricedGap[], target: Fraction): Fraction {
  return groups.reduce((least, group) => {
    if (group.minorUnitsPerKilogram !== null) return least;
    const days = daysWith(piecesOf(group), fraction(0));
    return days !== 'no-end' && compareFractions(days, least) < 0 ? days : least;
  }, target);
}

function tangentAt(priced: readonly PricedPieces[], days: Fraction): { cost: Fraction; perDay: Fraction } {
  const active = priced.map(({ pieces, minorUnitsPerGram }) => {
    const grams = gapAt(pieces, days);
    const line = pieces.find(
      (piece) => grams.numerator > 0n && compareFractions(lineAt(piece, days), grams) === 0,
    );
    return {
      cost: multiplyFractions(grams, minorUnitsPerGram),
      perDay: multiplyFractions(line?.gramsPerDay ?? fraction(0), minorUnitsPerGram),
    };
  });
  return {
    cost: sumFractions(active.map(({ cost }) => cost)),
    perDay: sumFractions(active.map(({ perDay }) => perDay)),
  };
}

function lineAt({ gramsPerDay, coveredGrams }: GapPiece, days: Fraction): Fraction {
  return subtractFractions(multiplyFractions(gramsPerDay, days), coveredGrams);
}

function purchasesFor(groups: readonly PricedGap[], days: Fraction): GapPurchase[] | null {
  const purchases = groups.map((group) => {
    const grams = gapAt(piecesOf(group), days);
    if (grams.numerator === 0n) return { group: group.group, grams, minorUnits: fraction(0) };
    if (group.minorUnitsPerKilogram === null) return null;
    const minorUnits = divideFractions(multiplyFractions(grams, group.minorUnitsPerKilogram), fraction(1000));
    return { group: group.group, grams, minorUnits };
  });
  return purchases.every((purchase) => purchase !== null) ? purchases : null;
}

function limitingGroup(groups: readonly GroupGap[], purchases: readonly GapPurchase[]): FoodGroupCode | null {
  const ends = groups.map((group, position): { group: FoodGroupCode; days: Days } => ({
    group: group.group,
    days: daysWith(piecesOf(group), purchases[position]?.grams ?? fraction(0)),
  }));
  const [first] = ends
    .filter(({ days }) => days !== 'no-end')
    .toSorted((a, b) => compareDays(a.days, b.days));
  return first?.group ?? null;
}

function assertPrices(groups: readonly PricedGap[]): void {
  assertGaps(groups);
  for (const { group, minorUnitsPerKilogram } of groups) {
    assert((minorUnitsPerKilogram?.numerator ?? 0n) >= 0n, `${group} costs less than nothing`);
  }
}

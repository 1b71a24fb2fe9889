import { type Fraction, fraction } from '@sheafbook/units';
import type { EdibleLot } from './edible-stock.ts';
import { amountOf, type Larder, type Pile } from './larder.ts';
import { pour } from './pouring.ts';
import { smaller } from './sums.ts';

/** What nobody can eat in time, lot by lot in the order given, when everything that ends first is eaten first. */
export function foodAtRisk(
  larder: Larder,
  lots: readonly EdibleLot[],
): { readonly lotId: string; readonly amount: Fraction }[] {
  const ending = larder.piles.filter(({ day }) => Number.isFinite(day));
  const eaten = eatenOfLots(larder, ending, lots);
  const inPile = new Set(larder.piles.flatMap((pile) => pile.lots));
  return lots.flatMap((lot, position) => {
    if (lot.daysLeft === null) return [];
    const amount = inPile.has(position)
      ? uneaten(lot, eaten.get(position) ?? 0n, larder.scale)
      : amountOf(lot);
    return amount.numerator > 0n ? { lotId: lot.lotId, amount } : [];
  });
}

function eatenOfLots(
  { diets, scale }: Larder,
  piles: readonly Pile[],
  lots: readonly EdibleLot[],
): ReadonlyMap<number, bigint> {
  const days = [...new Set(piles.map(({ day }) => day))]; // piles come sorted by their last day
  const limits = diets.map(({ perDay }) => days.map((day) => perDay * BigInt(day)));
  const leveled = piles.map((pile) => ({ ...pile, level: days.indexOf(pile.day) }));
  const { leftovers } = pour(leveled, limits);
  const eatenOfPiles = piles.map(({ amount }, index) => amount - (leftovers[index] ?? 0n));
  return new Map(
    piles.flatMap((pile, index) => {
      const amounts = pile.lots.map((position) => wholeAmount(lots[position], scale));
      const eaten = inOrder(amounts, eatenOfPiles[index] ?? 0n);
      return pile.lots.map((position, place): [number, bigint] => [position, eaten[place] ?? 0n]);
    }),
  );
}

/** How a total is made up of amounts when the first is used up before the second is begun. */
function inOrder(amounts: readonly bigint[], total: bigint): bigint[] {
  let left = total;
  return amounts.map((amount) => {
    const used = smaller(amount, left);
    left -= used;
    return used;
  });
}

function uneaten(lot: EdibleLot, eaten: bigint, scale: bigint): Fraction {
  return fraction(wholeAmount(lot, scale) - eaten, scale);
}

function wholeAmount(lot: EdibleLot | undefined, scale: bigint): bigint {
  if (!lot) return 0n;
  const amount = amountOf(lot);
  return amount.numerator * (scale / amount.denominator);
}

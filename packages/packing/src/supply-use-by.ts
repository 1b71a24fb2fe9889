import { assertWhole, sumOf } from '@sheafbook/units';

/** Pieces that came together. Units: whole pieces; `useBy` is the last good day, null where none was read. Errors: none. */
export type SupplyLot = { readonly pieces: number; readonly useBy: string | null };

/**
 * Pieces that are no good any more today ('past'), or will be no more on the day that they are wanted for ('passes').
 * Units: whole pieces; `useBy` is the earliest of their last days. Errors: none by itself.
 */
export type SpoilingSupply = {
  readonly standing: 'past' | 'passes';
  readonly useBy: string;
  readonly pieces: number;
};

/**
 * Which of what came is still on hand, where the oldest is used first. What is on hand beyond all that came, such as what a count
 * found, is older than anything known.
 * Units: whole pieces. Shape: `came` and the answer with the oldest first. Errors: AssertionError when a count is not whole.
 */
export function lotsOnHand(came: readonly SupplyLot[], onHandPieces: number): SupplyLot[] {
  assertWhole(onHandPieces, 'pieces on hand');
  let left = onHandPieces;
  const lots: SupplyLot[] = [];
  for (const lot of came.toReversed()) {
    const pieces = Math.min(lot.pieces, left);
    if (pieces > 0) lots.push({ pieces, useBy: lot.useBy });
    left -= pieces;
  }
  if (left > 0) lots.push({ pieces: left, useBy: null });
  return lots.toReversed();
}

/**
 * What of the lots on hand is no good for a day: first what is past today, then what passes until then. A lot is good on its
 * last day; one without a day is taken as good.
 * Units: days as YYYY-MM-DD, whole pieces. Shape: one of each standing at most. Errors: none.
 */
export function spoilingBy(
  lots: readonly SupplyLot[],
  { today, onDay }: { readonly today: string; readonly onDay: string },
): SpoilingSupply[] {
  const dated = lots.flatMap(({ pieces, useBy }) => (useBy === null ? [] : [{ pieces, useBy }]));
  const past = dated.filter(({ useBy }) => useBy < today);
  const passes = dated.filter(({ useBy }) => useBy >= today && useBy < onDay);
  return [together('past', past), together('passes', passes)].flatMap((one) => one ?? []);
}

function together(
  standing: SpoilingSupply['standing'],
  lots: readonly { readonly pieces: number; readonly useBy: string }[],
): SpoilingSupply | null {
  const [useBy] = lots.map((lot) => lot.useBy).toSorted();
  return useBy === undefined ? null : { standing, useBy, pieces: sumOf(lots.map(({ pieces }) => pieces)) };
}

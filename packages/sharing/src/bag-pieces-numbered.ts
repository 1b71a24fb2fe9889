import { assert } from '@sheafbook/units';
import { planBagPieces } from './bag-pieces.ts';

/** A bag that came in, by its number, with its booked net mass. Units: grams. Errors: none. */
export type NumberedBag = { readonly bagId: string; readonly number: number; readonly netGrams: number };

/** A bag and who gets how much of it. Units: grams. Errors: none. */
export type NumberedBagCut = NumberedBag & {
  readonly pieces: readonly { readonly ownerId: string; readonly grams: number }[];
};

/**
 * Cuts the bags that really came for the awards of a split, by `planBagPieces` in order of their numbers.
 * Units: grams. Shape: one cut a bag, by number. Pieces of a bag add up to its net, pieces of an owner to its award.
 * Errors: AssertionError as `planBagPieces`, and when two bags have one number.
 */
export function cutNumberedBags(input: {
  readonly bags: readonly NumberedBag[];
  readonly awards: readonly {
    readonly ownerId: string;
    readonly seat: number;
    readonly grams: number;
    readonly wholeBags?: boolean;
  }[];
}): { readonly bags: readonly NumberedBagCut[]; readonly pieceCount: number; readonly isFewest: boolean } {
  const bags = input.bags.toSorted((a, b) => a.number - b.number);
  assert(new Set(bags.map((bag) => bag.number)).size === bags.length, 'two bags have one number');
  const allotments = input.awards.map(({ grams, ...award }) => ({ ...award, units: grams }));
  const plan = planBagPieces(
    allotments,
    bags.map((bag) => bag.netGrams),
  );
  const cuts = bags.map((bag, position) => ({
    ...bag,
    pieces: (plan.bags[position]?.pieces ?? []).map(({ ownerId, units }) => ({ ownerId, grams: units })),
  }));
  return { bags: cuts, pieceCount: plan.pieceCount, isFewest: plan.isFewest };
}

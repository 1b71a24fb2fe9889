import { assert, assertWhole, sumOf } from '@sheafbook/units';
import type { FillLine } from './fill-request.ts';

/**
 * How far the wants of a line are from whole bags.
 * Units: whole line units. Shape: `toFill` is the smallest extra pledge, and `toDrop` the smallest cut, that
 * leave only full bags, any mix of the sizes; `offers` say the same for each size alone: (−Σ wanted) mod size
 * and Σ wanted mod size, and the bags that are full.
 * Errors: none.
 */
export type NextBag = {
  readonly wanted: number;
  readonly toFill: number;
  readonly toDrop: number;
  readonly offers: readonly {
    readonly bagOfferId: string;
    readonly fullBags: number;
    readonly toFill: number;
    readonly toDrop: number;
  }[];
};

/**
 * Says what the next bag of a line lacks. Limits on the number of bags are not looked at.
 * Units: whole line units. Errors: AssertionError when there is no offer, or an amount is not whole, or a
 * size is 0.
 */
export function nextBag({ pledges, offers }: Pick<FillLine, 'pledges' | 'offers'>): NextBag {
  assert(offers.length > 0, 'a line needs at least one bag offer');
  for (const { wanted } of pledges) assertWhole(wanted, 'wanted');
  for (const { bagSize } of offers) {
    assertWhole(bagSize, 'bagSize');
    assert(bagSize > 0, 'a bag must hold at least one line unit');
  }
  const wanted = sumOf(pledges.map((pledge) => pledge.wanted));
  const sizes = offers.map((offer) => offer.bagSize);
  const isFull = listFullSums(sizes, wanted + Math.max(...sizes));
  return {
    wanted,
    toFill: isFull.indexOf(true, wanted) - wanted,
    toDrop: wanted - isFull.lastIndexOf(true, wanted),
    offers: offers.map(({ bagOfferId, bagSize }) => ({
      bagOfferId,
      fullBags: Math.floor(wanted / bagSize),
      toFill: (bagSize - (wanted % bagSize)) % bagSize,
      toDrop: wanted % bagSize,
    })),
  };
}

/** Which masses are sums of whole bags: true at every sum of sizes up to the most. */
function listFullSums(sizes: readonly number[], most: number): boolean[] {
  const isFull = [true];
  for (let units = 1; units <= most; units += 1) {
    isFull.push(sizes.some((size) => units >= size && isFull[units - size]));
  }
  return isFull;
}

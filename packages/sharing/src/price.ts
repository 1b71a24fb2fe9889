import { assert, assertWhole } from '@sheafbook/units';

/**
 * One step of a price list: this price a bag holds from `fromBags` bags on.
 * Units: whole bags; minor units of the storehouse's currency for one bag. Errors: none.
 */
export type PriceBreak = { readonly fromBags: number; readonly bagPriceMinorUnits: number };

/**
 * One bag size of one food at one supplier.
 * Units: `bagSize` whole line units (such as 50 for a 50 lb bag), `bagGrams` whole grams of one bag.
 * Shape: `breaks` ascend and the first begins at 1 bag. `all-units`: the price of the break reached holds for
 * every bag; `incremental`: each bag costs the price of the break it falls in. `mostBags` null = no limit.
 * Errors: none.
 */
export type BagOffer = {
  readonly bagOfferId: string;
  readonly bagSize: number;
  readonly bagGrams: number;
  readonly breakKind: 'all-units' | 'incremental';
  readonly breaks: readonly PriceBreak[];
  readonly mostBags: number | null;
};

/**
 * What a number of bags costs, without freight.
 * Units: whole bags in, minor units out. Errors: AssertionError when `bags` is not whole and ≥ 0, the price
 * list is not in order, or the sum leaves the safe integers.
 */
export function goodsMinorUnits(offer: BagOffer, bags: number): number {
  assertWhole(bags, 'bags');
  assertPriceList(offer);
  const goods = offer.breakKind === 'all-units' ? allUnitsGoods(offer, bags) : incrementalGoods(offer, bags);
  assertWhole(goods, 'goodsMinorUnits');
  return goods;
}

function allUnitsGoods(offer: BagOffer, bags: number): number {
  const reached = offer.breaks.findLast((priceBreak) => priceBreak.fromBags <= bags);
  return bags * (reached?.bagPriceMinorUnits ?? 0); // no break is reached only by no bags at all
}

function incrementalGoods(offer: BagOffer, bags: number): number {
  return offer.breaks.reduce((sum, { fromBags, bagPriceMinorUnits }, position) => {
    const nextFrom = offer.breaks[position + 1]?.fromBags ?? Number.POSITIVE_INFINITY;
    const bagsInStep = Math.max(0, Math.min(bags, nextFrom - 1) - (fromBags - 1));
    return sum + bagsInStep * bagPriceMinorUnits;
  }, 0);
}

/**
 * Checks that a bag offer makes sense as written.
 * Units: as in `BagOffer`. Errors: AssertionError naming the first thing that is wrong: a size, mass or price
 * that is not whole, a size or mass of 0, a list that does not begin at 1 bag or does not ascend.
 */
export function assertPriceList({ bagSize, bagGrams, breaks, mostBags }: BagOffer): void {
  assertWhole(bagSize, 'bagSize');
  assertWhole(bagGrams, 'bagGrams');
  assert(bagSize > 0, 'a bag must hold at least one line unit');
  assert(bagGrams > 0, 'a bag must hold at least one gram');
  assert(breaks[0]?.fromBags === 1, 'the first price must hold from 1 bag on');
  if (mostBags !== null) assertWhole(mostBags, 'mostBags');
  for (const [position, { fromBags, bagPriceMinorUnits }] of breaks.entries()) {
    assertWhole(fromBags, 'fromBags');
    assertWhole(bagPriceMinorUnits, 'bagPriceMinorUnits');
    assert(fromBags > (breaks[position - 1]?.fromBags ?? 0), 'price breaks must ascend by bags');
  }
}

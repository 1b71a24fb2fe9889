import { addFractions, compareFractions, type Fraction, fraction } from '@sheafbook/units';
import type { BagCount } from './fill-bag-counts.ts';
import type { FillLine, FillPledge, FillRequest } from './fill-request.ts';
import { freightMinorUnits } from './freight.ts';

/** What the bags of all lines come to. */
export type OrderTotals = { readonly goods: number; readonly freight: number; readonly grams: number };

export function totalOrder(request: FillRequest, counts: readonly BagCount[]): OrderTotals {
  const goods = counts.reduce((sum, count) => sum + count.goods, 0);
  const grams = counts.reduce((sum, count) => sum + count.grams, 0);
  return { goods, grams, freight: freightMinorUnits(request.freight, goods, grams) };
}

/** An order of nothing needs no minimum. */
export function meetsMinimum(request: FillRequest, { goods, grams }: OrderTotals): boolean {
  return grams === 0 || (goods >= request.minimumGoodsMinorUnits && grams >= request.minimumGrams);
}

/**
 * The landed price of a line: its goods and its by-weight share of freight, per gram of that line, exactly.
 * (goods + freight × own grams / all grams) / own grams = goods / own grams + freight / all grams.
 */
export function landedPrice(count: BagCount, totals: OrderTotals): Fraction {
  return addFractions(fraction(count.goods, count.grams), fraction(totals.freight, totals.grams));
}

export function isWithinCeiling({ ceiling }: FillPledge, price: Fraction): boolean {
  return ceiling === null || compareFractions(price, fraction(ceiling.minorUnits, ceiling.grams)) <= 0;
}

/** The positions of the pledges whose ceiling allows a price. */
export function allowedAt(line: FillLine, price: Fraction): number[] {
  return [...line.pledges.keys()].filter((position) => {
    const pledge = line.pledges[position];
    return pledge !== undefined && isWithinCeiling(pledge, price);
  });
}

/** The least that freight per gram can come to in an order of at most so much; never above the real one. */
export function leastFreightPerGram(request: FillRequest, most: { goods: number; grams: number }): Fraction {
  const { steps, freeFromGoodsMinorUnits } = request.freight;
  const mayBeFree = freeFromGoodsMinorUnits !== null && most.goods >= freeFromGoodsMinorUnits;
  if (mayBeFree || steps.length === 0 || most.grams === 0) return fraction(0);
  return steps
    .filter((step) => step.fromGrams <= most.grams)
    .map((step, position) => {
      const nextFrom = steps[position + 1]?.fromGrams ?? Number.POSITIVE_INFINITY;
      return fraction(step.minorUnits, Math.min(most.grams, nextFrom - 1));
    })
    .reduce((least, rate) => (compareFractions(rate, least) < 0 ? rate : least));
}

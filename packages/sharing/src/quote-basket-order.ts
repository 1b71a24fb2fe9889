import { sumOf } from '@sheafbook/units';
import type { Cover } from './quote-cover.ts';
import type { SupplierQuote } from './quote-terms.ts';

/**
 * What a supplier's order comes to while foods are tried in it. Changed in place: millions of trials share
 * it.
 */
export type RunningOrder = {
  goods: number;
  grams: number;
  foods: number;
  readonly quote: SupplierQuote;
  readonly mayBeFree: boolean;
  /** For each freight step the least price of it and all heavier ones. */
  readonly leastFromStep: readonly number[];
};

/** An empty order; `offered` are all covers that it could come to hold. */
export function openOrder(quote: SupplierQuote, offered: readonly Cover[]): RunningOrder {
  const { steps, freeFromGoodsMinorUnits } = quote.freight;
  const mostGoods = sumOf(offered.map((cover) => cover.goods));
  return {
    goods: 0,
    grams: 0,
    foods: 0,
    quote,
    mayBeFree: freeFromGoodsMinorUnits !== null && mostGoods >= freeFromGoodsMinorUnits,
    leastFromStep: steps.map((_, position) =>
      Math.min(...steps.slice(position).map((step) => step.minorUnits)),
    ),
  };
}

export function addCover(order: RunningOrder, cover: Cover, times: 1 | -1): void {
  order.goods += times * cover.goods;
  order.grams += times * cover.grams;
  order.foods += times;
}

/** Goods and freight as they stand; infinite when the supplier's minimum is missed. */
export function costOfOrder({ quote, goods, grams, foods }: RunningOrder): number {
  if (foods === 0) return 0;
  if (goods < quote.minimumGoodsMinorUnits || grams < quote.minimumGrams) return Number.POSITIVE_INFINITY;
  const threshold = quote.freight.freeFromGoodsMinorUnits;
  const isFree = threshold !== null && goods >= threshold;
  return isFree ? goods : goods + (quote.freight.steps[stepAt(quote, grams)]?.minorUnits ?? 0);
}

/** What the order costs at least, whatever else comes to it. */
export function boundOfOrder(order: RunningOrder): number {
  if (order.foods === 0 || order.mayBeFree) return order.goods;
  return order.goods + (order.leastFromStep[stepAt(order.quote, order.grams)] ?? 0);
}

function stepAt({ freight }: SupplierQuote, grams: number): number {
  let position = freight.steps.length - 1;
  while (position > 0 && (freight.steps[position]?.fromGrams ?? 0) > grams) position -= 1;
  return position;
}

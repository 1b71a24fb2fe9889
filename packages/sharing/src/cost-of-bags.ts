import { addFractions, fraction } from '@sheafbook/units';
import type { CostTerms } from './cost-terms.ts';
import { freightMinorUnits } from './freight.ts';
import { goodsMinorUnits } from './price.ts';

/**
 * Goods of this bag size, freight of the whole order, the two together, and goods with their share of
 * freight.
 */
export function costOfBags({ offer, freight, others }: CostTerms, bags: number) {
  const goods = goodsMinorUnits(offer, bags);
  const orderGoods = goods + (others?.goodsMinorUnits ?? 0);
  const grams = bags * offer.bagGrams;
  const orderGrams = grams + (others?.grams ?? 0);
  const freightCost = freightMinorUnits(freight, orderGoods, orderGrams);
  const freightShare =
    orderGrams === 0 ? fraction(0) : fraction(BigInt(freightCost) * BigInt(grams), orderGrams);
  const landed = addFractions(fraction(goods), freightShare);
  return { goods, freight: freightCost, total: goods + freightCost, landed };
}

/** A price break other than the first begins at this number of bags. */
export function isBreak({ offer }: CostTerms, bags: number): boolean {
  return bags > 1 && offer.breaks.some((priceBreak) => priceBreak.fromBags === bags);
}

/** Freight is free at this number of bags by the value of the goods, and is not at one bag less. */
export function isFreeFrom(terms: CostTerms, bags: number): boolean {
  const threshold = terms.freight.freeFromGoodsMinorUnits;
  if (threshold === null || terms.freight.steps.length === 0) return false;
  const orderGoods = (count: number) =>
    goodsMinorUnits(terms.offer, count) + (terms.others?.goodsMinorUnits ?? 0);
  return orderGoods(bags) >= threshold && orderGoods(bags - 1) < threshold;
}

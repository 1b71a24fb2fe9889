import { assert, assertWhole } from '@sheafbook/units';

/**
 * What delivery costs. Each step's price holds for the whole delivery from its weight on.
 * Units: grams of the whole delivery; minor units. Shape: no steps = free delivery; one step from 0 = flat;
 * steps ascend and the first begins at 0. `freeFromGoodsMinorUnits` null = never free.
 * Errors: none.
 */
export type FreightTerms = {
  readonly steps: readonly { readonly fromGrams: number; readonly minorUnits: number }[];
  readonly freeFromGoodsMinorUnits: number | null;
};

/**
 * What freight costs for a delivery of some value and mass. Nothing delivered costs nothing.
 * Units: `goods` in minor units, `grams` whole, minor units out.
 * Errors: AssertionError when an amount is not whole and ≥ 0, or the steps do not ascend from 0.
 */
export function freightMinorUnits(terms: FreightTerms, goods: number, grams: number): number {
  assertWhole(goods, 'goods');
  assertWhole(grams, 'grams');
  assertFreightTerms(terms);
  const isFree = terms.freeFromGoodsMinorUnits !== null && goods >= terms.freeFromGoodsMinorUnits;
  if (isFree || grams === 0) return 0;
  return terms.steps.findLast((step) => step.fromGrams <= grams)?.minorUnits ?? 0;
}

/**
 * Checks that freight terms make sense as written.
 * Units: as in `FreightTerms`. Errors: AssertionError when a number is not whole and ≥ 0, or the steps do not
 * begin at 0 and ascend.
 */
export function assertFreightTerms({ steps, freeFromGoodsMinorUnits }: FreightTerms): void {
  if (freeFromGoodsMinorUnits !== null) assertWhole(freeFromGoodsMinorUnits, 'freeFromGoodsMinorUnits');
  assert((steps[0]?.fromGrams ?? 0) === 0, 'the first freight step must begin at 0 grams');
  for (const [position, { fromGrams, minorUnits }] of steps.entries()) {
    assertWhole(fromGrams, 'fromGrams');
    assertWhole(minorUnits, 'minorUnits');
    assert(fromGrams > (steps[position - 1]?.fromGrams ?? -1), 'freight steps must ascend by weight');
  }
}

/**
 * The least that an order can pay for freight when it comes to at most so much; never above the real one.
 * Units: `goods` in minor units, `grams` whole, minor units out. Errors: as `freightMinorUnits`.
 */
export function leastFreightMinorUnits(terms: FreightTerms, goods: number, grams: number): number {
  if (freightMinorUnits(terms, goods, grams) === 0) return 0;
  const reachable = terms.steps.filter((step) => step.fromGrams <= grams);
  return Math.min(...reachable.map((step) => step.minorUnits));
}

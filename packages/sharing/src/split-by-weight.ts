import { assert, assertWhole } from '@sheafbook/units';

/**
 * Divides whole units among shares in proportion to their weights.
 * Units: `totalUnits` and the results are the same unit, cents or grams. Weights have no unit.
 * Shape: one result per weight, in the same order; the results add up to `totalUnits` exactly.
 * Ties: leftover units go to the largest fractions, then to the earlier position.
 * Errors: AssertionError if an input is not whole and ≥ 0, or if every weight is zero.
 * Source: Hamilton's method of largest remainders; COMAP, For All Practical Purposes, 10th ed., ch. 14.
 */
export function splitByWeight(totalUnits: number, weights: readonly number[]): number[] {
  assertWhole(totalUnits, 'totalUnits');
  for (const weight of weights) assertWhole(weight, 'weight');
  return splitByExactWeight(totalUnits, weights.map(BigInt));
}

/**
 * The same division for weights too large for a double, such as fractions scaled to a common denominator.
 * Units: `totalUnits` and the results are the same unit. Weights have no unit and may have any size.
 * Errors: AssertionError if `totalUnits` is not whole and ≥ 0, a weight is negative, or every weight is zero.
 */
export function splitByExactWeight(totalUnits: number, weights: readonly bigint[]): number[] {
  assertWhole(totalUnits, 'totalUnits');
  assert(
    weights.every((weight) => weight >= 0n),
    'no weight may be negative',
  );
  const weightSum = weights.reduce((sum, weight) => sum + weight, 0n);
  assert(weightSum > 0n, 'at least one weight must be positive');

  const parts = weights.map((weight, position) => {
    const scaled = BigInt(totalUnits) * weight; // bigint: the product can pass 2^53
    return { position, floorUnits: Number(scaled / weightSum), rest: scaled % weightSum };
  });
  const leftoverUnits = totalUnits - parts.reduce((sum, part) => sum + part.floorUnits, 0);
  const byRest = parts.toSorted(
    (a, b) => (a.rest < b.rest ? 1 : a.rest > b.rest ? -1 : 0) || a.position - b.position,
  );
  const topped = new Set(byRest.slice(0, leftoverUnits).map((part) => part.position));
  return parts.map((part) => part.floorUnits + (topped.has(part.position) ? 1 : 0));
}

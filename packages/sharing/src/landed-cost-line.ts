import { assert } from '@sheafbook/units';
import type { ChargedLine, LandedTotal } from './landed-cost-terms.ts';
import { splitByWeight } from './split-by-weight.ts';

/** Who bears how much of a line. Units: `weight` is whole, in the unit of the line's basis. Errors: none. */
export type WeighedOwner = { readonly ownerId: string; readonly weight: number };

/**
 * Shares one cost line by weight; a negative amount is shared as its absolute amount and negated.
 * Units: minor units. Shape: one share an owner, in the order given, which is the order of ties.
 * Errors: AssertionError when the amount or a weight is not whole, or an amount other than 0 has no weight to go by.
 */
export function shareLine(
  costLineId: string,
  minorUnits: number,
  owners: readonly WeighedOwner[],
): ChargedLine {
  assert(Number.isSafeInteger(minorUnits), `${costLineId} must be a whole number of minor units`);
  const weights = owners.map((owner) => owner.weight);
  const parts = minorUnits === 0 ? weights.map(() => 0) : splitByWeight(Math.abs(minorUnits), weights);
  const weightSum = weights.reduce((sum, weight) => sum + BigInt(weight), 0n);
  const shares = owners.map(({ ownerId, weight }, position) => {
    const part = parts[position] ?? 0;
    const isAboveExact = BigInt(part) * weightSum > BigInt(Math.abs(minorUnits)) * BigInt(weight);
    return { ownerId, minorUnits: minorUnits < 0 ? 0 - part : part, weight, gotSpareUnit: isAboveExact };
  });
  return { costLineId, minorUnits, shares };
}

/**
 * Shares a credit that became known after the buy was charged, by the very weights of the line it belongs to, so that
 * a household that has left still gets its part. A blended line is credited by each of its two lines.
 * Units: minor units of the credit, positive or negative. Shape: one share for each of the line's, in its order.
 * Ties: largest remainder, then the lower seat, as the line itself.
 * Errors: AssertionError when the credit is not whole, or the line's weights are all 0.
 */
export function creditByOriginalWeights(creditMinorUnits: number, line: ChargedLine): LandedTotal[] {
  const credit = shareLine(line.costLineId, creditMinorUnits, line.shares);
  return credit.shares.map(({ ownerId, minorUnits }) => ({ ownerId, minorUnits }));
}

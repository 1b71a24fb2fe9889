import { assert, assertWhole } from '@sheafbook/units';

/** Why a pour is worth a word. Units: none. Errors: none. */
export type PourAlarm = 'single' | 'mean' | 'shortage';

/** The bounds past which a line says something. Units: grams, pours. Errors: none. Source: common practice, no source. */
export const POUR_BOUNDS = { singleGrams: 40, meanGrams: 15, meanOver: 5 } as const;

/**
 * What each pour of a run tells: the running excess over the target and the alarms that it sets off. `single`: one pour is
 * over 40 g off. `mean`: the last five are over 15 g too heavy on average. `shortage`: going on like this, someone
 * would lose a container.
 * Units: whole grams. `plannedUnits` is the whole run. Shape: one a pour, in order.
 * Errors: AssertionError when a figure is not whole and ≥ 0, or more was poured than planned.
 */
export function judgePours(
  poursGrams: readonly number[],
  { targetGrams, plannedUnits }: { readonly targetGrams: number; readonly plannedUnits: number },
): { readonly excessGrams: number; readonly alarms: readonly PourAlarm[] }[] {
  assertWhole(targetGrams, 'targetGrams');
  assert(targetGrams > 0, 'a target is above zero');
  assert(poursGrams.length <= plannedUnits, 'no more is poured than planned');
  let excessGrams = 0;
  return poursGrams.map((grams, position) => {
    assertWhole(grams, 'grams');
    excessGrams += grams - targetGrams;
    const poured = position + 1;
    const alarms: PourAlarm[] = [];
    if (Math.abs(grams - targetGrams) > POUR_BOUNDS.singleGrams) alarms.push('single');
    if (isTooHeavy(poursGrams.slice(0, poured), targetGrams)) alarms.push('mean');
    // E/n × units left > target/2, without the divisions.
    if (2 * excessGrams * (plannedUnits - poured) > targetGrams * poured) alarms.push('shortage');
    return { excessGrams, alarms };
  });
}

function isTooHeavy(sofarGrams: readonly number[], targetGrams: number): boolean {
  const { meanOver, meanGrams } = POUR_BOUNDS;
  if (sofarGrams.length < meanOver) return false;
  const last = sofarGrams.slice(-meanOver);
  return last.reduce((sum, grams) => sum + grams - targetGrams, 0) > meanGrams * meanOver;
}

/**
 * How many containers it takes until over-pouring has given one away.
 * Units: whole grams; null when the pours are not too heavy. Errors: AssertionError when the target is not above zero.
 */
export function containersPerOneLost(targetGrams: number, overGrams: number): number | null {
  assertWhole(targetGrams, 'targetGrams');
  assert(targetGrams > 0, 'a target is above zero');
  return overGrams > 0 ? Math.floor(targetGrams / overGrams) : null;
}

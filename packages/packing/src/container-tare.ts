import { assert, assertWhole, fraction, roundFraction, sumOf } from '@sheafbook/units';

/** So many empty containers are weighed when a new batch of them, or of their lids, is opened. Units: containers. Errors: none. Source: job map 6. */
export const TARE_CONTAINERS = 10;

/** By how much the heaviest of them may weigh more than the lightest, so that one tare serves all. Units: grams. Errors: none. Source: job map 6. */
export const TARE_SPREAD_GRAMS = 6;

/** No container that people carry weighs more when it is empty. Units: grams. Errors: none. Source: common practice, no source. */
export const MOST_TARE_GRAMS = 100_000;

/**
 * What ten empty containers say of their kind: what one weighs, and whether they are alike enough to take that from each. Where
 * they are not, each container is tared by itself.
 * Units: whole grams; the mean is rounded half up. Errors: AssertionError when there are not ten readings, or one is not whole
 * or outside 1 to `MOST_TARE_GRAMS`. Source: job map 6.
 */
export function judgeTare(readings: readonly number[]): {
  readonly meanGrams: number;
  readonly leastGrams: number;
  readonly mostGrams: number;
  readonly spreadGrams: number;
  readonly isAlike: boolean;
} {
  assert(readings.length === TARE_CONTAINERS, `${TARE_CONTAINERS} empty containers are weighed`);
  for (const grams of readings) {
    assertWhole(grams, 'grams');
    assert(grams >= 1 && grams <= MOST_TARE_GRAMS, `no empty container weighs ${grams} g`);
  }
  const [leastGrams, mostGrams] = [Math.min(...readings), Math.max(...readings)];
  const spreadGrams = mostGrams - leastGrams;
  return {
    meanGrams: Number(roundFraction(fraction(sumOf(readings), TARE_CONTAINERS))),
    ...{ leastGrams, mostGrams, spreadGrams, isAlike: spreadGrams <= TARE_SPREAD_GRAMS },
  };
}

/**
 * What is in a container: gross less tare; null where the container alone weighs as much as the scale says, or more.
 * Units: whole grams. Errors: AssertionError when a figure is not whole and ≥ 0. Source: job map 6.
 */
export function netOfGross(grossGrams: number, tareGrams: number): number | null {
  assertWhole(grossGrams, 'grossGrams');
  assertWhole(tareGrams, 'tareGrams');
  return grossGrams > tareGrams ? grossGrams - tareGrams : null;
}

import { assert, sumOf } from '@sheafbook/units';
import type { Stretch } from './place-history.ts';

/**
 * How fast food ages by the warmth it stands in: `doublesOver` degrees more halve its life.
 * Units: tenths of a degree Celsius; `coldestTenths` below which cold earns nothing more. Errors: none by itself.
 */
export type AgeingRule = {
  readonly referenceTenths: number;
  readonly doublesOverTenths: number;
  readonly coldestTenths: number | null;
};

/**
 * Life halves for each 10 °F warmer than 70 °F and doubles for each 10 °F cooler.
 * Units: as `AgeingRule`; 70 °F is 21.111… °C and 10 °F are 5.555… °C. Errors: none.
 * Source: USDA Agriculture Handbook 506, a seed rule that is sound in the middle range.
 */
export const PUBLISHED_AGEING: AgeingRule = {
  referenceTenths: (70 - 32) / 0.18,
  doublesOverTenths: 10 / 0.18,
  coldestTenths: 50, // no bonus below 5 °C (common practice, no source)
};

/**
 * How many times as fast as at the reference food ages at a temperature.
 * Units: tenths of a degree Celsius; none out. Errors: AssertionError when it is not finite.
 */
export function ageingRate(tenthsCelsius: number, rule: AgeingRule = PUBLISHED_AGEING): number {
  assert(Number.isFinite(tenthsCelsius), 'a temperature is a number');
  const tenths = rule.coldestTenths === null ? tenthsCelsius : Math.max(tenthsCelsius, rule.coldestTenths);
  return 2 ** ((tenths - rule.referenceTenths) / rule.doublesOverTenths);
}

/**
 * The steady temperature at which food ages this fast, so that a day or a year can be kept as one figure.
 * Units: as `ageingRate` in, whole tenths of a degree Celsius out, the nearest. Errors: AssertionError when the rate is not above 0.
 */
export function tenthsThatAgeLike(rate: number, rule: AgeingRule = PUBLISHED_AGEING): number {
  assert(rate > 0, 'food ages forward');
  return Math.round(rule.referenceTenths + rule.doublesOverTenths * Math.log2(rate));
}

/**
 * The life that a history has used up.
 * Units: days at the reference temperature. Errors: AssertionError when a stretch runs backwards.
 */
export function usedDays(history: readonly Stretch[], rule: AgeingRule = PUBLISHED_AGEING): number {
  return history.reduce((sum, { days, tenthsCelsius }) => {
    assert(days >= 0, 'a stretch does not run backwards');
    return sum + days * ageingRate(tenthsCelsius, rule);
  }, 0);
}

/**
 * For how long a life has been over by the end of a history; 0 where something is left of it.
 * Units: days at the reference temperature in, days as they passed out. Errors: AssertionError as `usedDays`.
 */
export function daysSinceUsedUp(
  lifeDays: number,
  history: readonly Stretch[],
  rule: AgeingRule = PUBLISHED_AGEING,
): number {
  let leftDays = lifeDays;
  let sinceDays = 0;
  for (const stretch of history) {
    const used = usedDays([stretch], rule);
    if (leftDays <= 0) sinceDays += stretch.days;
    else if (used > leftDays) sinceDays += stretch.days * (1 - leftDays / used);
    leftDays -= used;
  }
  return sinceDays;
}

/**
 * What is left of a life at a temperature, never more than the life itself.
 * Units: days at the reference temperature in, days at `tenthsCelsius` out; never below 0.
 * Errors: AssertionError when the life is below zero.
 */
export function remainingDays(
  life: { readonly lifeDays: number; readonly usedDays: number; readonly capDays?: number },
  tenthsCelsius: number,
  rule: AgeingRule = PUBLISHED_AGEING,
): number {
  assert(life.lifeDays >= 0, 'a life is not below zero');
  const atReference = Math.max(0, life.lifeDays - life.usedDays);
  return Math.min(atReference / ageingRate(tenthsCelsius, rule), life.capDays ?? Number.POSITIVE_INFINITY);
}

/**
 * The days of life that a history cost beyond what standing somewhere cooler would have.
 * Units: days at the reference temperature; below zero when it stood cooler than that. Errors: as `usedDays`.
 */
export function daysLostAgainst(
  history: readonly Stretch[],
  coolerTenths: number,
  rule: AgeingRule = PUBLISHED_AGEING,
): number {
  const days = sumOf(history.map((part) => part.days));
  return usedDays(history, rule) - days * ageingRate(coolerTenths, rule);
}

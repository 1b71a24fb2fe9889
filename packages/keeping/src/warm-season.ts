import { assert, assertWhole } from '@sheafbook/units';
import { ageingRate } from './ageing.ts';
import type { Stretch } from './place-history.ts';

/**
 * The days in a row in which food aged most.
 * Units: whole days from the history's first day on; days at the reference temperature. Errors: none.
 */
export type WarmSeason = {
  readonly startsAfterDays: number;
  readonly days: number;
  readonly usedDays: number;
};

/**
 * The warmest so many days in a row of a history, the earliest of equals; all of a shorter one.
 * Units: whole days. Shape: stretches in the order of time.
 * Errors: AssertionError when `days` is not whole and above zero.
 */
export function warmSeasonOf(history: readonly Stretch[], days: number): WarmSeason {
  assertWhole(days, 'days');
  assert(days > 0, 'a season has a day at least');
  const rates = history.flatMap((part) =>
    Array.from({ length: part.days }, () => ageingRate(part.tenthsCelsius)),
  );
  const length = Math.min(days, rates.length);
  let used = rates.slice(0, length).reduce((sum, rate) => sum + rate, 0);
  let best = { startsAfterDays: 0, days: length, usedDays: used };
  for (let start = 1; start + length <= rates.length; start += 1) {
    used += (rates[start + length - 1] ?? 0) - (rates[start - 1] ?? 0);
    if (used > best.usedDays + 1e-9) best = { startsAfterDays: start, days: length, usedDays: used };
  }
  return best;
}

const DAYS_A_YEAR = 365.25;
const DAYS_A_MONTH = DAYS_A_YEAR / 12;

/** A time as it is said of an estimate. Units: whole days, months or years as `unit` says. Errors: none. */
export type RoughSpan = { readonly count: number; readonly unit: 'day' | 'month' | 'year' };

/**
 * How long food keeps, no finer than it is known: days for two months, months for two years, then years; begun ones do not
 * count. A life comes in whole days, so one of full years comes a part of a day short of them.
 * Units: days in. Errors: none.
 */
export function roughSpan(days: number): RoughSpan {
  if (days < 2 * DAYS_A_MONTH) return { count: days, unit: 'day' };
  return days + 1 < 2 * DAYS_A_YEAR
    ? { count: Math.floor(days / DAYS_A_MONTH), unit: 'month' }
    : { count: Math.floor((days + 1) / DAYS_A_YEAR), unit: 'year' };
}

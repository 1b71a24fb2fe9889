import { assert, type Fraction, firstDayOf, fraction, isDay } from '@sheafbook/units';

/**
 * How old someone is in completed years and months; `isBorn` is false when the birth lies after the day asked about.
 * Units: years, months. Errors: none by itself.
 */
export type Age = { readonly isBorn: boolean; readonly years: number; readonly months: number };

/**
 * The age on a day, also of someone not yet born, since a household may plan for a child.
 * Units: `birthOn` is an ISO day, `YYYY-MM` or `YYYY`; a month or a year alone counts as its first day, so that an
 * age is never taken too low. `today` is an ISO day. Someone born on 29 February completes a year on 1 March.
 * Errors: AssertionError when a day does not exist.
 */
export function ageOn(birthOn: string, today: string): Age {
  assert(isDay(today), `a day YYYY-MM-DD is needed, got ${today}`);
  const birth = partsOf(firstDayOf(birthOn));
  const now = partsOf(today);
  const months = (now.year - birth.year) * 12 + now.month - birth.month - (now.day < birth.day ? 1 : 0);
  return { isBorn: months >= 0, years: Math.floor(months / 12), months };
}

/** The age in years with its completed months as twelfths. Units: years. Errors: none. */
export function yearsOf(age: Age): Fraction {
  return fraction(age.months, 12);
}

function partsOf(day: string): { readonly year: number; readonly month: number; readonly day: number } {
  return { year: Number(day.slice(0, 4)), month: Number(day.slice(5, 7)), day: Number(day.slice(8)) };
}

import { assert, type Fraction, fraction } from '@sheafbook/units';

type Day = { readonly year: number; readonly month: number; readonly day: number };

/** How old someone is; `isBorn` is false when the birth lies after the day asked about. */
export type Age = { readonly isBorn: boolean; readonly years: number; readonly months: number };

/**
 * The age on a day, in completed years and in completed months.
 * Units: `birthOn` is an ISO day, `YYYY-MM` or `YYYY`; a month or a year alone counts as its first day, so that an
 * age is never taken too low. `today` is an ISO day. Someone born on 29 February completes a year on 1 March.
 * Errors: AssertionError when a day does not exist.
 */
export function ageOn(birthOn: string, today: string): Age {
  const birth = readDay(birthOn);
  const now = readDay(today);
  const months = (now.year - birth.year) * 12 + now.month - birth.month - (now.day < birth.day ? 1 : 0);
  return { isBorn: months >= 0, years: Math.floor(months / 12), months };
}

/** The age in years with its completed months as twelfths. Units: years. Errors: none. */
export function ageInYears(age: Age): Fraction {
  return fraction(age.months, 12);
}

function readDay(text: string): Day {
  const parts = /^(\d{4})(?:-(\d{2})(?:-(\d{2}))?)?$/.exec(text);
  assert(parts, `a day is written YYYY-MM-DD, YYYY-MM or YYYY, got ${text}`);
  const [year, month, day] = [Number(parts[1]), Number(parts[2] ?? 1), Number(parts[3] ?? 1)];
  const made = new Date(Date.UTC(year, month - 1, day));
  assert(made.getUTCMonth() === month - 1 && made.getUTCDate() === day, `${text} is not a day that exists`);
  return { year, month, day };
}

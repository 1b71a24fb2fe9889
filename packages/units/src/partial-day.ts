import { assert } from './assert.ts';
import { isDay } from './day.ts';

/**
 * Whether a text is a day, a month or a year: `YYYY-MM-DD`, `YYYY-MM` or `YYYY`. People know when a can was packed or a
 * child was born no finer than they know it.
 * Units: ISO 8601. Errors: none.
 */
export function isPartialDay(text: string): boolean {
  return /^\d{4}(-\d{2}(-\d{2})?)?$/.test(text) && isDay(padToFirstDay(text));
}

/**
 * The day that a month-only or year-only date counts as in every rule: its first, the cautious reading.
 * Units: ISO 8601. Errors: AssertionError when the text is no day, month or year.
 */
export function firstDayOf(partialDay: string): string {
  assert(isPartialDay(partialDay), `a day, month or year is needed, got ${partialDay}`);
  return padToFirstDay(partialDay);
}

/**
 * Completed years of age. Someone born on 29 February completes a year on 1 March where there is no such day.
 * Units: ISO days in, whole years out; a month-only or year-only birth date counts as its first day.
 * Errors: AssertionError when a date is none, or when the birth lies after `today`.
 */
export function ageInYears(birthOn: string, today: string): number {
  const firstDay = firstDayOf(birthOn);
  assert(isDay(today), `a day YYYY-MM-DD is needed, got ${today}`);
  assert(firstDay <= today, `${birthOn} lies after ${today}`);
  const years = Number(today.slice(0, 4)) - Number(firstDay.slice(0, 4));
  return today.slice(5) < firstDay.slice(5) ? years - 1 : years;
}

function padToFirstDay(text: string): string {
  return text + '-01-01'.slice(text.length - 4);
}

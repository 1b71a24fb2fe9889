import { assert } from './assert.ts';

const MILLISECONDS_PER_DAY = 86_400_000;

/**
 * Whether a text is a calendar day that exists: `YYYY-MM-DD`, years 0001 to 9999.
 * Units: an ISO 8601 day of the proleptic Gregorian calendar. Errors: none.
 */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || text.startsWith('0000')) return false;
  const instant = new Date(`${text}T00:00:00Z`);
  // 30 February parses as 2 March: only a day that comes back unchanged exists.
  return !Number.isNaN(instant.getTime()) && instant.toISOString().startsWith(text);
}

/**
 * The day a whole number of days later, or earlier when negative.
 * Units: ISO days, whole days. Errors: AssertionError when `day` is no day or the answer leaves years 0001 to 9999.
 */
export function addDays(day: string, days: number): string {
  assert(Number.isSafeInteger(days), `a whole number of days is needed, got ${days}`);
  const instant = new Date((dayNumber(day) + days) * MILLISECONDS_PER_DAY);
  assert(!Number.isNaN(instant.getTime()), `${day} and ${days} days leave the calendar`);
  const sum = instant.toISOString().slice(0, 10);
  assert(isDay(sum), `${day} and ${days} days leave the years 0001 to 9999`);
  return sum;
}

/**
 * How many days `b` lies after `a`: b − a, negative when b is earlier.
 * Units: ISO days in, whole days out. Errors: AssertionError when either is no day.
 */
export function daysBetween(a: string, b: string): number {
  return dayNumber(b) - dayNumber(a);
}

/**
 * The day of the week: 0 for Sunday to 6 for Saturday, as `Date` counts them.
 * Units: an ISO day in. Errors: AssertionError when it is no day.
 */
export function weekdayOf(day: string): number {
  return new Date(dayNumber(day) * MILLISECONDS_PER_DAY).getUTCDay();
}

function dayNumber(day: string): number {
  assert(isDay(day), `a day YYYY-MM-DD is needed, got ${day}`);
  return Date.parse(`${day}T00:00:00Z`) / MILLISECONDS_PER_DAY;
}

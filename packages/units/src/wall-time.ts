import { assert } from './assert.ts';
import { isDay } from './day.ts';
import { isTimeZone } from './time-zone.ts';

/**
 * Whether a text is a day and an hour as a clock on a wall shows them: "2026-10-17T09:40".
 * Units: an ISO 8601 local time to the minute. Errors: none.
 */
export function isWallTime(text: string): boolean {
  const [day = '', time = ''] = text.split('T');
  return isDay(day) && /^([01]\d|2[0-3]):[0-5]\d$/.test(time);
}

/**
 * The instant at which a clock on the wall of a place shows a time. An hour that a change of clocks skips is taken as
 * if the clocks had not changed yet; of one that comes twice, one of the two is taken.
 * Units: an ISO 8601 local time in, milliseconds since 1970-01-01T00:00:00Z out.
 * Errors: AssertionError when the text is no such time or the zone unknown.
 */
export function instantOfWallTime(wallTime: string, timeZone: string): number {
  assert(isWallTime(wallTime), `a time YYYY-MM-DDTHH:MM is needed, got ${wallTime}`);
  assert(isTimeZone(timeZone), `unknown time zone ${timeZone}`);
  const wished = Date.parse(`${wallTime}:00Z`);
  // Twice, since the first guess may lie on the other side of a change of clocks.
  const first = wished - offsetAt(timeZone, wished);
  return wished - offsetAt(timeZone, first);
}

/**
 * What a clock on the wall of a place shows at an instant.
 * Units: milliseconds since 1970-01-01T00:00:00Z in, an ISO 8601 local time to the minute out.
 * Errors: AssertionError when the instant is not finite or the zone unknown.
 */
export function wallTimeInZone(instantMs: number, timeZone: string): string {
  assert(Number.isFinite(instantMs), `an instant in milliseconds is needed, got ${instantMs}`);
  return wallTimeWithSeconds(instantMs, timeZone).slice(0, 'YYYY-MM-DDTHH:MM'.length);
}

/** Clock times that a wall shows twice: from the one, up to but not including the other. Units: "YYYY-MM-DD HH:MM:SS", local. Errors: none. */
export type RepeatedHour = { readonly fromAt: string; readonly toAt: string };

const DAY_MS = 86_400_000;

/**
 * The times of a year that a wall shows twice, because clocks go back; none where they never do.
 * Units: a year; local times. Shape: in the order of time.
 * Errors: AssertionError when the year is not between 1 and 9999 or the zone unknown.
 */
export function listRepeatedHours(year: number, timeZone: string): RepeatedHour[] {
  assert(Number.isInteger(year) && year >= 1 && year <= 9999, `a year is needed, got ${year}`);
  const first = Date.parse(`${String(year).padStart(4, '0')}-01-01T00:00:00Z`);
  const hours: RepeatedHour[] = [];
  for (let dayMs = first; dayMs < first + 366 * DAY_MS; dayMs += DAY_MS) {
    if (offsetAt(timeZone, dayMs) <= offsetAt(timeZone, dayMs + DAY_MS)) continue;
    const changeMs = findChange(timeZone, dayMs, dayMs + DAY_MS);
    const shown = (offsetMs: number) => new Date(changeMs + offsetMs).toISOString().slice(0, 19);
    const [fromAt, toAt] = [offsetAt(timeZone, changeMs), offsetAt(timeZone, changeMs - 1000)].map(shown);
    hours.push({ fromAt: (fromAt ?? '').replace('T', ' '), toAt: (toAt ?? '').replace('T', ' ') });
  }
  return hours;
}

/** The first second at which the offset is the one of `toMs`. */
function findChange(timeZone: string, fromMs: number, toMs: number): number {
  const after = offsetAt(timeZone, toMs);
  let [low, high] = [fromMs / 1000, toMs / 1000];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (offsetAt(timeZone, middle * 1000) === after) high = middle;
    else low = middle;
  }
  return high * 1000;
}

function offsetAt(timeZone: string, at: number): number {
  return Date.parse(`${wallTimeWithSeconds(at, timeZone)}Z`) - at;
}

const wallTimeWithSeconds = (instantMs: number, timeZone: string): string =>
  wallFormatOf(timeZone).format(new Date(instantMs)).replace(' ', 'T');

/** Kept, since making one takes far longer than asking it; a zone that is asked for is asked again. */
const wallFormats = new Map<string, Intl.DateTimeFormat>();

function wallFormatOf(timeZone: string): Intl.DateTimeFormat {
  const kept = wallFormats.get(timeZone);
  if (kept) return kept;
  assert(isTimeZone(timeZone), `unknown time zone ${timeZone}`);
  const format = new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'medium' });
  wallFormats.set(timeZone, format);
  return format;
}

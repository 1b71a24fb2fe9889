import { assert } from '@sheafbook/units';

const MS_PER_DAY = 86_400_000;

/**
 * Counts the calendar days from one day to another.
 * Units: days; negative when the second comes first. Errors: AssertionError for a text that is no real day.
 */
export function daysBetween(fromOn: string, toOn: string): number {
  return dayNumber(toOn) - dayNumber(fromOn);
}

/**
 * Orders two UTC instants to the nanosecond, so that a database's microseconds count although a Date drops them.
 * Units: negative when a is earlier, 0 when equal, positive when a is later.
 * Errors: AssertionError for a text that is no UTC instant such as 2026-09-05T08:30:00.123456Z, or as PostgreSQL writes
 * it, 2026-09-05 08:30:00.123456+00.
 */
export function compareInstants(a: string, b: string): number {
  const [left, right] = [sortableInstant(a), sortableInstant(b)];
  return left < right ? -1 : left > right ? 1 : 0;
}

function dayNumber(dayOn: string): number {
  const midnight = Date.parse(`${dayOn}T00:00:00Z`);
  const isDay = !Number.isNaN(midnight) && new Date(midnight).toISOString().slice(0, 10) === dayOn;
  assert(isDay, `${dayOn} is no calendar day`);
  return midnight / MS_PER_DAY;
}

function sortableInstant(instant: string): string {
  const parts = /^(\d{4}-\d\d-\d\d)[T ](\d\d:\d\d:\d\d)(?:\.(\d{1,9}))?(?:Z|\+00(?::?00)?)$/.exec(instant);
  assert(parts, `${instant} is no UTC instant`);
  return `${parts[1]}T${parts[2]}.${(parts[3] ?? '').padEnd(9, '0')}`;
}

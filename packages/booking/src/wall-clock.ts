import {
  AssertionError,
  addDays,
  assert,
  instantOfWallTime,
  isWallTime,
  wallTimeInZone,
} from '@sheafbook/units';

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

/**
 * What a time on the wall means where clocks change: once, twice (autumn) or never (spring), and then the next minute that
 * does come.
 * Units: milliseconds since 1970-01-01T00:00:00Z; wall times as ISO 8601 to the minute. Errors: none by itself.
 */
export type WallReading =
  | { readonly comes: 'once'; readonly atMs: number }
  | { readonly comes: 'twice'; readonly firstMs: number; readonly secondMs: number }
  | { readonly comes: 'never'; readonly nextWallTime: string; readonly nextMs: number };

/**
 * Reads a time on the wall of a place. What comes twice is to be asked about, the first being the default; what never comes
 * is refused with the next minute that does.
 * Units: as `WallReading`. Errors: AssertionError when the text is no such time or the zone unknown.
 */
export function readWallTime(wallTime: string, timeZone: string): WallReading {
  assert(isWallTime(wallTime), `a time YYYY-MM-DDTHH:MM is needed, got ${wallTime}`);
  const instants = instantsOf(wallTime, timeZone);
  const [firstMs, secondMs] = instants;
  if (firstMs !== undefined && secondMs !== undefined) return { comes: 'twice', firstMs, secondMs };
  if (firstMs !== undefined) return { comes: 'once', atMs: firstMs };
  for (let minutes = 1; minutes <= DAY / MINUTE; minutes += 1) {
    const nextWallTime = shifted(wallTime, minutes);
    const [nextMs] = instantsOf(nextWallTime, timeZone);
    if (nextMs !== undefined) return { comes: 'never', nextWallTime, nextMs };
  }
  throw new AssertionError(`no clock shows ${wallTime} or any minute of the day after it`);
}

/** Every instant, in order, at which the wall shows a time. */
function instantsOf(wallTime: string, timeZone: string): number[] {
  const guess = instantOfWallTime(wallTime, timeZone);
  // The clocks of no place change by more than a day; those that shift do it within a day of the guess.
  const candidates = [guess, ...[-DAY, DAY].map((step) => guess + driftOf(guess, guess + step, timeZone))];
  const shown = [...new Set(candidates)].filter((atMs) => wallTimeInZone(atMs, timeZone) === wallTime);
  return shown.toSorted((a, b) => a - b);
}

/** How much later an instant must be when the offset of another moment holds. */
const driftOf = (guess: number, otherMs: number, timeZone: string) =>
  offsetAt(guess, timeZone) - offsetAt(otherMs, timeZone);

const offsetAt = (atMs: number, timeZone: string) =>
  Date.parse(`${wallTimeInZone(atMs, timeZone)}:00Z`) - floorMinute(atMs);
const floorMinute = (atMs: number) => Math.floor(atMs / MINUTE) * MINUTE;

const shifted = (wallTime: string, minutes: number) =>
  new Date(Date.parse(`${wallTime}:00Z`) + minutes * MINUTE).toISOString().slice(0, 16);

/**
 * The same time on the wall some days later: a loan of three days ends when the clock shows what it showed, not after 72
 * hours. An hour that does not come is the next minute that does; of one that comes twice it is the first.
 * Units: milliseconds, whole days. Errors: AssertionError when `days` is not whole.
 */
export function sameTimeDaysLater(atMs: number, days: number, timeZone: string): number {
  assert(Number.isSafeInteger(days), 'a loan lasts whole days');
  const [day = '', time = ''] = wallTimeInZone(atMs, timeZone).split('T');
  const reading = readWallTime(`${addDays(day, days)}T${time}`, timeZone);
  if (reading.comes === 'once') return reading.atMs;
  return reading.comes === 'twice' ? reading.firstMs : reading.nextMs;
}

import { assert } from './assert.ts';

// ECMAScript's own bound on a time value, 100 million days each way.
const LARGEST_INSTANT = 8.64e15;

/**
 * Whether a text names a time zone of the IANA database that this runtime knows. Bare offsets such as "+05:30" are
 * refused: they do not follow summer time, so a place has none.
 * Units: none. Errors: none.
 */
export function isTimeZone(name: string): boolean {
  return findDayFormat(name) !== undefined;
}

/**
 * The calendar day on the wall of a place at an instant.
 * Units: milliseconds since 1970-01-01T00:00:00Z in, an ISO day out.
 * Errors: AssertionError when the instant is not finite, the zone unknown, or the year outside 0001 to 9999.
 */
export function dayInZone(instantMs: number, timeZone: string): string {
  const format = dayFormatOf(timeZone);
  assert(Math.abs(instantMs) <= LARGEST_INSTANT, `an instant in milliseconds is needed, got ${instantMs}`);
  const parts = format.formatToParts(instantMs);
  const read = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
  assert(read('era') === 'AD' && read('year').length <= 4, 'the instant leaves the years 0001 to 9999');
  return `${read('year').padStart(4, '0')}-${read('month')}-${read('day')}`;
}

/** Kept, since making one takes longer than all else that a request computes; a zone that is asked for is asked again. */
const dayFormats = new Map<string, Intl.DateTimeFormat>();

function dayFormatOf(timeZone: string): Intl.DateTimeFormat {
  const format = dayFormats.get(timeZone) ?? findDayFormat(timeZone);
  assert(format, `unknown time zone ${timeZone}`);
  dayFormats.set(timeZone, format);
  return format;
}

function findDayFormat(timeZone: string): Intl.DateTimeFormat | undefined {
  if (!/^[A-Za-z]/.test(timeZone)) return undefined;
  const day = { year: 'numeric', month: '2-digit', day: '2-digit', era: 'short' } as const;
  try {
    return new Intl.DateTimeFormat('en-US-u-ca-gregory-nu-latn', { timeZone, ...day });
  } catch {
    return undefined; // the only way to ask: a RangeError says that the zone is unknown
  }
}

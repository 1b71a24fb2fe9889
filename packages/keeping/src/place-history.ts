import { addDays, assert, daysBetween, isDay } from '@sheafbook/units';

/** One reading of a thermometer. Units: an ISO day, tenths of a degree Celsius. Errors: none by itself. */
export type Reading = { readonly readOn: string; readonly tenthsCelsius: number };

/**
 * How a stretch is known. `told` is the word of whoever kept it, `gap` took the warmer neighbour, `unknown` the warm guess.
 * Units: none. Errors: none.
 */
export type HowKnown = 'read' | 'told' | 'gap' | 'unknown';

/** Days at one temperature. Units: whole days, tenths of a degree Celsius. Errors: none by itself. */
export type Stretch = { readonly days: number; readonly tenthsCelsius: number; readonly known: HowKnown };

/** The warm guess for a place that nobody measured. Units: tenths of a degree Celsius. Errors: none. Source: common practice, no source. */
export const UNKNOWN_TENTHS_CELSIUS = 250;

/** A reading stands for at most so many days; past that it is a gap. Units: days. Errors: none. Source: common practice, no source. */
export const LONGEST_READING_DAYS = 31;

/**
 * The temperatures of a place over some days, from its readings. A reading holds until the next one, at most a month; a gap
 * takes the warmer of its two neighbours; a place that was never read is taken as 25 °C and said to be unknown.
 * Units: ISO days, `[fromOn, toOn)`; tenths of a degree Celsius. Shape: stretches in the order of time, together all the days.
 * Errors: AssertionError when a day is none, the span runs backwards, or two readings are of one day.
 */
export function historyOf(readings: readonly Reading[], fromOn: string, toOn: string): Stretch[] {
  assert(isDay(fromOn) && isDay(toOn), 'a span runs from a day to a day');
  assert(fromOn <= toOn, 'a span runs forward');
  const sorted = readings.toSorted((a, b) => (a.readOn < b.readOn ? -1 : 1));
  sorted.forEach((reading, position) => {
    assert(reading.readOn !== sorted[position + 1]?.readOn, 'a day has one reading');
  });
  if (sorted.length === 0) return stretch(fromOn, toOn, UNKNOWN_TENTHS_CELSIUS, 'unknown');
  return sorted.flatMap((reading, position) => {
    const next = sorted[position + 1];
    const before = position === 0 ? gapBefore(reading, fromOn, toOn) : [];
    const holdsUntil = earlier(addDays(reading.readOn, LONGEST_READING_DAYS), next?.readOn ?? null);
    const read = clipped(reading.readOn, holdsUntil, { fromOn, toOn }, reading.tenthsCelsius, 'read');
    const warmer = Math.max(reading.tenthsCelsius, next?.tenthsCelsius ?? reading.tenthsCelsius);
    const gapEnds = next?.readOn ?? later(toOn, holdsUntil);
    return [...before, ...read, ...clipped(holdsUntil, gapEnds, { fromOn, toOn }, warmer, 'gap')];
  });
}

type Span = { readonly fromOn: string; readonly toOn: string };

const earlier = (a: string, b: string | null) => (b === null || a < b ? a : b);
const later = (a: string, b: string) => (a > b ? a : b);

/** Before the first reading nobody looked: its own temperature, said to be a gap. */
const gapBefore = (first: Reading, fromOn: string, toOn: string) =>
  clipped(fromOn, first.readOn, { fromOn, toOn }, first.tenthsCelsius, 'gap');

function clipped(startOn: string, endOn: string, span: Span, tenths: number, known: HowKnown): Stretch[] {
  return stretch(later(startOn, span.fromOn), earlier(endOn, span.toOn), tenths, known);
}

function stretch(startOn: string, endOn: string, tenthsCelsius: number, known: HowKnown): Stretch[] {
  return startOn < endOn ? [{ days: daysBetween(startOn, endOn), tenthsCelsius, known }] : [];
}

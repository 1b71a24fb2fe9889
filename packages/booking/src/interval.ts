import { assert } from '@sheafbook/units';

/**
 * A half-open stretch of time `[startMs, endMs)`: two that touch do not overlap.
 * Units: milliseconds since 1970-01-01T00:00:00Z. Errors: none by itself.
 */
export type Interval = { readonly startMs: number; readonly endMs: number };

/**
 * What a thing needs before and after each use, to be fetched, cleaned or to cool. Kept on the booking when it is made, so
 * that changing the thing changes no booking.
 * Units: milliseconds. Errors: none by itself.
 */
export type Buffers = { readonly preMs: number; readonly postMs: number };

/** Stops at an interval that is empty or runs backwards. Units: milliseconds. Errors: AssertionError when it is. */
export function assertInterval({ startMs, endMs }: Interval): void {
  assert(
    Number.isSafeInteger(startMs) && Number.isSafeInteger(endMs),
    'an interval runs between whole milliseconds',
  );
  assert(startMs < endMs, 'an interval ends after it starts');
}

/** Whether two intervals share any moment. Units: milliseconds. Errors: none. */
export const overlaps = (a: Interval, b: Interval): boolean => a.startMs < b.endMs && b.startMs < a.endMs;

/** Whether one interval lies wholly within another. Units: milliseconds. Errors: none. */
export const isWithin = (inner: Interval, outer: Interval): boolean =>
  outer.startMs <= inner.startMs && inner.endMs <= outer.endMs;

/** The time that a booking takes a thing out of use, its buffers with it. Units: milliseconds. Errors: none. */
export function blockedBy({ startMs, endMs, preMs, postMs }: Interval & Buffers): Interval {
  return { startMs: startMs - preMs, endMs: endMs + postMs };
}

/**
 * Whether two bookings of one thing are in each other's way: their blocked times overlap; touching is allowed.
 * Units: milliseconds. Errors: none.
 */
export const areInConflict = (a: Interval & Buffers, b: Interval & Buffers) =>
  overlaps(blockedBy(a), blockedBy(b));

/** By start, then by end. Units: none. Errors: none. */
export const byStart = (a: Interval, b: Interval) => a.startMs - b.startMs || a.endMs - b.endMs;

/**
 * The same moments as few intervals that neither overlap nor touch.
 * Units: milliseconds. Shape: in the order of time. Errors: none.
 */
export function merged(intervals: readonly Interval[]): Interval[] {
  const result: Interval[] = [];
  for (const { startMs, endMs } of intervals.toSorted(byStart)) {
    const last = result.at(-1);
    if (last && startMs <= last.endMs)
      result[result.length - 1] = { ...last, endMs: Math.max(last.endMs, endMs) };
    else result.push({ startMs, endMs });
  }
  return result;
}

import { assertInterval, type Interval } from './interval.ts';

/**
 * The end of a time that nobody knows: the last instant that a date can name.
 * Units: milliseconds since 1970-01-01T00:00:00Z. Errors: none. Source: ECMA-262, section "Time Values and Time Range".
 */
export const NOBODY_KNOWS_MS = 8_640_000_000_000_000;

/** A booking, and whether its thing is out on it. Units: milliseconds. Errors: none by itself. */
export type Outing = Interval & { readonly isOut: boolean };

/**
 * Whether a thing is out past the time at which it was due.
 * Units: milliseconds. Errors: none. Shape: false at the very moment at which it is due.
 */
export const isOutAndLate = ({ endMs, isOut }: Outing, nowMs: number): boolean => isOut && endMs < nowMs;

/**
 * The time that a booking is to be reckoned with. A thing that is out and late is still out, and nobody knows until when:
 * it holds its piece without an end, until it is brought back. Anything else holds what it was booked for.
 * Units: milliseconds. Errors: AssertionError when the booking is empty.
 */
export function reckonedTime(booking: Outing, nowMs: number): Interval {
  assertInterval(booking);
  const { startMs, endMs } = booking;
  return { startMs, endMs: isOutAndLate(booking, nowMs) ? NOBODY_KNOWS_MS : endMs };
}

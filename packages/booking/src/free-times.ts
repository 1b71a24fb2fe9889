import { assert } from '@sheafbook/units';
import { assertInterval, type Buffers, blockedBy, type Interval, merged } from './interval.ts';

/**
 * The times within a window at which a new booking may be made: its own buffers must fall clear of what is taken. The window
 * bounds the booking, not its buffers: a thing may be cleaned after hours.
 * Units: milliseconds. Shape: half-open intervals in the order of time, each at least `leastMs` long.
 * Errors: AssertionError when an interval is empty or `leastMs` is not above zero.
 */
export function freeTimes(
  window: Interval,
  taken: readonly (Interval & Buffers)[],
  { preMs, postMs, leastMs }: Buffers & { readonly leastMs: number },
): Interval[] {
  assertInterval(window);
  assert(leastMs > 0, 'a booking takes time');
  const blocked = merged(taken.map(blockedBy));
  const free: Interval[] = [];
  let startMs = window.startMs;
  for (const { startMs: blockedFrom, endMs: blockedTo } of blocked) {
    free.push({ startMs, endMs: Math.min(blockedFrom - postMs, window.endMs) });
    startMs = Math.max(startMs, blockedTo + preMs);
  }
  free.push({ startMs, endMs: window.endMs });
  return free.filter((gap) => gap.endMs - gap.startMs >= leastMs);
}

/**
 * Whether a booking may be made among those that are there.
 * Units: milliseconds. Errors: AssertionError when it is empty.
 */
export function isFree(wished: Interval & Buffers, taken: readonly (Interval & Buffers)[]): boolean {
  assertInterval(wished);
  const blocked = blockedBy(wished);
  return taken
    .map(blockedBy)
    .every((other) => blocked.endMs <= other.startMs || other.endMs <= blocked.startMs);
}

import { assert, assertWhole } from '@sheafbook/units';
import { type Buffers, blockedBy, type Interval, overlaps } from './interval.ts';
import { mostAtOnce } from './partition.ts';

/** A booking of one of several things that are alike. Units: units from 1, milliseconds. Errors: none by itself. */
export type UnitBooking = Interval & Buffers & { readonly unit: number };

/**
 * Which unit of a pool a new booking gets: one whose blocked time stays clear, the one that has been free longest before it,
 * the lowest number of those that tie.
 * Units: units from 1; null when none is free. Errors: AssertionError when there are no units.
 */
export function unitFor(
  wished: Interval & Buffers,
  bookings: readonly UnitBooking[],
  units: number,
): number | null {
  assertWhole(units, 'units');
  assert(units > 0, 'a pool has units');
  const blocked = blockedBy(wished);
  let best: { readonly unit: number; readonly freeFromMs: number } | null = null;
  for (let unit = 1; unit <= units; unit += 1) {
    const own = bookings.filter((booking) => booking.unit === unit).map(blockedBy);
    if (own.some((other) => overlaps(other, blocked))) continue;
    const before = own.filter(({ endMs }) => endMs <= blocked.startMs).map(({ endMs }) => endMs);
    const freeFromMs = Math.max(Number.NEGATIVE_INFINITY, ...before);
    if (!best || freeFromMs < best.freeFromMs) best = { unit, freeFromMs };
  }
  return best?.unit ?? null;
}

/**
 * How many units a pool would need so that nobody is refused.
 * Units: units. Errors: AssertionError when an interval is empty.
 */
export const unitsNeeded = (bookings: readonly (Interval & Buffers)[]) => mostAtOnce(bookings.map(blockedBy));

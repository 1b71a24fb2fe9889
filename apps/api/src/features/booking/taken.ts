import {
  type Buffers,
  freeTimes,
  type Interval,
  isOutAndLate,
  isWithin,
  reckonedTime,
  type UnitBooking,
  unitFor,
} from '@sheafbook/booking';
import type { BookingRow, EquipmentItemRow } from '@sheafbook/db/tables';
import type { UnitState } from '../equipment/use-cases.ts';
import type { Taken } from './queries.ts';
import { minutes } from './when.ts';

/** The buffers of a thing as a new booking gets them. */
export const buffersOf = (item: EquipmentItemRow): Buffers => ({
  preMs: minutes(item.preMinutes),
  postMs: minutes(item.postMinutes),
});

/** What holds a piece, reckoned; with the booking that it is of. */
export type HeldTime = UnitBooking & { readonly isLate: boolean; readonly booking: Taken };

/** A booking with the buffers that it was made with; one that is out and late holds its piece until it is back. */
export function toHeldTime(booking: Taken, nowMs: number): HeldTime {
  const [startMs, endMs] = [booking.startsAt.getTime(), booking.endsAt.getTime()];
  const outing = { startMs, endMs, isOut: booking.state === 'out' };
  return {
    ...{ preMs: startMs - booking.blockedFrom.getTime(), postMs: booking.blockedTo.getTime() - endMs },
    ...{ ...reckonedTime(outing, nowMs), unit: booking.unitNo, booking },
    isLate: isOutAndLate(outing, nowMs),
  };
}

/** A piece that can't be lent as it is holds no place for anybody. */
const isUsable = ({ blockers }: UnitState): boolean => blockers.length === 0;

/** The piece that a new booking gets: the longest free of those that can be lent, the lowest number of a tie. */
export function chooseUnit(
  wished: Interval & Buffers,
  states: readonly UnitState[],
  taken: readonly UnitBooking[],
): UnitState | null {
  const usable = states.filter(isUsable);
  if (usable.length === 0) return null;
  // Numbered anew from 1, so that a piece that is retired leaves no gap.
  const numberOf = new Map(usable.map(({ unit }, at) => [unit.unitNo, at + 1]));
  const bookings = taken.flatMap((booking) => {
    const unit = numberOf.get(booking.unit);
    return unit === undefined ? [] : [{ ...booking, unit }];
  });
  const chosen = unitFor(wished, bookings, usable.length);
  return chosen === null ? null : (usable[chosen - 1] ?? null);
}

export type FreeTime = { readonly startsAt: Date; readonly endsAt: Date; readonly unitNo: number };

/** The times in a window at which a piece is free; of pieces that are alike, only what another does not offer too. */
export function listFree(
  window: Interval,
  of: {
    states: readonly UnitState[];
    taken: readonly UnitBooking[];
    item: EquipmentItemRow;
    leastMs: number;
  },
): FreeTime[] {
  const all = of.states.filter(isUsable).flatMap(({ unit: { unitNo } }) =>
    freeTimes(
      window,
      of.taken.filter(({ unit }) => unit === unitNo),
      { ...buffersOf(of.item), leastMs: of.leastMs },
    ).map((free) => ({ ...free, unitNo })),
  );
  return all
    .filter(
      (free, at) =>
        !all.some(
          (other, otherAt) =>
            otherAt !== at && isWithin(free, other) && (!isWithin(other, free) || otherAt < at),
        ),
    )
    .toSorted((a, b) => a.startMs - b.startMs || a.unitNo - b.unitNo)
    .map(({ startMs, endMs, unitNo }) => ({
      ...{ startsAt: new Date(startMs), endsAt: new Date(endMs), unitNo },
    }));
}

/** The columns of a booking that its times give. */
export function timesOf(wished: Interval, { preMs, postMs }: Buffers) {
  return {
    startsAt: new Date(wished.startMs),
    endsAt: new Date(wished.endMs),
    blockedFrom: new Date(wished.startMs - preMs),
    blockedTo: new Date(wished.endMs + postMs),
  } satisfies Partial<BookingRow>;
}

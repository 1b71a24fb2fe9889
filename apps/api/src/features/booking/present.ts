import { presentBooking, presentWish } from './present-booking.ts';
import type { readBookingsOfItem, readFreeTimes, readOwnBookings, waitFor } from './use-cases.ts';

export const presentFreeTimes = ({
  item,
  free,
  busy,
  late,
  blockers,
}: Awaited<ReturnType<typeof readFreeTimes>>) => ({
  itemId: item.equipmentItemId,
  free: free.map(({ startsAt, endsAt, unitNo }) => ({
    startsAt: startsAt.toISOString(),
    endsAt: endsAt.toISOString(),
    unitNo,
  })),
  busy: busy.map(({ unitNo, purpose, startsAt, endsAt, blockedFrom, blockedTo }) => ({
    ...{ unitNo, purpose, startsAt: startsAt.toISOString(), endsAt: endsAt.toISOString() },
    ...{ blockedFrom: blockedFrom.toISOString(), blockedTo: blockedTo.toISOString() },
  })),
  /** Pieces that are out past their time: nobody knows when they are back, so no time of theirs is free. */
  late: late.map(({ unitNo, dueAt }) => ({ unitNo, dueAt: dueAt.toISOString() })),
  unfit: blockers
    .filter((row) => row.blockers.length > 0)
    .map((row) => ({ unitNo: row.unit.unitNo, blockers: [...row.blockers] })),
});

export const presentOwn = ({ bookings, asked, waiting }: Awaited<ReturnType<typeof readOwnBookings>>) => ({
  bookings: bookings.map(presentBooking),
  asked: asked.map(presentBooking),
  waiting: waiting.map(presentWish),
});

export const presentOfItem = ({ bookings, waiting }: Awaited<ReturnType<typeof readBookingsOfItem>>) => ({
  bookings: bookings.map(presentBooking),
  waiting: waiting.map(presentWish),
});

export const presentWaited = ({ wishId, bookings, waiting }: Awaited<ReturnType<typeof waitFor>>) => ({
  id: wishId,
  bookings: bookings.map(presentBooking),
  waiting: waiting.map(presentWish),
});

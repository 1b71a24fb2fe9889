import type { ListedBooking, ListedWish } from './queries.ts';
import type { readBookingsOfItem, readFreeTimes, readOwnBookings, waitFor } from './use-cases.ts';

/** A booking; with whom it is only for those who may know. */
export function presentBooking({ booking, item, unit, seat, householdName, isSeen = true }: Seen) {
  const isShown = isSeen && booking.householdId !== null;
  return {
    id: booking.bookingId,
    itemId: booking.equipmentItemId,
    itemName: item.name,
    unitId: unit.equipmentUnitId,
    unitNo: unit.unitNo,
    unitCode: unit.unitCode,
    purpose: booking.purpose,
    household: isShown ? { id: booking.householdId, seat, name: householdName } : null,
    sessionId: booking.sessionId,
    startsAt: booking.startsAt.toISOString(),
    endsAt: booking.endsAt.toISOString(),
    blockedFrom: booking.blockedFrom.toISOString(),
    blockedTo: booking.blockedTo.toISOString(),
    state: booking.state,
    offeredUntil: booking.offeredUntil?.toISOString() ?? null,
    relayFromId: booking.relayFromId,
    relayAgreedAt: booking.relayAgreedAt?.toISOString() ?? null,
    uses: booking.uses,
    note: isSeen ? booking.note : '',
    version: booking.version,
  };
}
type Seen = ListedBooking & { readonly isSeen?: boolean };

export function presentWish({
  wish,
  itemName,
  seat,
  householdName,
  isSeen = true,
}: ListedWish & { readonly isSeen?: boolean }) {
  return {
    id: wish.equipmentWishId,
    itemId: wish.equipmentItemId,
    itemName,
    household: isSeen ? { id: wish.householdId, seat, name: householdName } : null,
    startsAt: wish.startsAt.toISOString(),
    endsAt: wish.endsAt.toISOString(),
    askedAt: wish.askedAt.toISOString(),
  };
}

export const presentFreeTimes = ({
  item,
  free,
  busy,
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

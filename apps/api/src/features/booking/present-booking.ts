import { isBeforeUntold, leftBehind } from './left-behind.ts';
import type { ListedBooking, ListedWish } from './queries.ts';

/** A booking; with whom it is only for those who may know. */
export function presentBooking(row: Seen) {
  const { booking, item, unit, seat, householdName, foods, foodsBefore, outUntil, isSeen = true } = row;
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
    /** When whoever has the piece out now was to bring it back, of a booking that comes after. */
    outUntil: outUntil?.toISOString() ?? null,
    relayFromId: booking.relayFromId,
    relayAgreedAt: booking.relayAgreedAt?.toISOString() ?? null,
    uses: booking.uses,
    note: isSeen ? booking.note : '',
    foods: isSeen ? foods.map(({ foodId, nameEn, nameEs }) => ({ id: foodId, nameEn, nameEs })) : [],
    /** False of a thing that touches food where nobody told which: what it leaves there is then unknown. */
    areFoodsTold: !item.touchesFood || foods.length > 0 || booking.purpose === 'service',
    /** Allergens that whoever had it before left there and that are none of these foods’ own: clean them off first. */
    leftBehind: isSeen ? leftBehind(foodsBefore, foods) : [],
    /** Whether something went through it before and nobody told what: then it is cleaned fully first. */
    isLeftBehindUntold: isSeen && isBeforeUntold(item, foodsBefore),
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

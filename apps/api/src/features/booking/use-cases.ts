import type { Tx } from '@sheafbook/db';
import type { BookingRow } from '@sheafbook/db/tables';
import { addDays, instantOfWallTime } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import type { WorkTask } from '../../platform/work/task.ts';
import { loadItem, loadUnit, lockItem } from '../equipment/queries.ts';
import { mayKeepEquipment, seesLoans, type UnitState } from '../equipment/use-cases.ts';
import { loadHousehold, loadPresentHousehold } from '../household/queries.ts';
import { bookEquipment, endBooking, lapseOffersInside, lookAt, offerFreedTimes } from './book.ts';
import { readFoodsThrough } from './left-behind.ts';
import { mayBookFor } from './policy.ts';
import {
  findOpenBooking,
  insertWish,
  listBookings,
  listWaiting,
  loadBooking,
  loadWish,
  updateBooking,
  updateWish,
} from './queries.ts';
import { insertBookingFoods, insertWishFoods, listFoodsOfBooking } from './queries-foods.ts';
import { agreeToRelay, askToTakeOver, refuseLateVeto, refuseToRelay } from './relay.ts';
import type {
  AcceptanceWish,
  BookingWish,
  FreeTimesQuery,
  RelayAnswer,
  ServiceTimeWish,
  WaitingWish,
} from './schema.ts';
import { type HeldTime, listFree } from './taken.ts';
import { minutes, readTimes, refuseTooLong } from './when.ts';

export {
  bookEquipment,
  type EquipmentWish,
  endBooking,
  freeEquipmentOfSession,
  offerFreedTimes,
} from './book.ts';
export { presentBooking, presentWish } from './present-booking.ts';
export { bookForSession, countForSession, moveEquipmentOfSession, type SessionTime } from './session.ts';
export { findOtherPiece, listNextTimes, startNow } from './swap.ts';

/** When a thing is free and when it is busy, over so many days of the storehouse's own calendar. */
export function readFreeTimes(context: Context, itemId: string, query: FreeTimesQuery) {
  const { storehouseId, timeZone } = context.actor;
  return withTx(context, async (tx) => {
    const item = await loadItem(tx, storehouseId, itemId);
    const { states, rows, taken } = await lookAt(tx, context, item);
    const fromDay = query.fromDay ?? todayOf(context);
    const dayMs = instantOfWallTime(`${fromDay}T00:00`, timeZone);
    const window = {
      startMs: Math.max(dayMs, context.now().getTime()),
      endMs: instantOfWallTime(`${addDays(fromDay, query.days)}T00:00`, timeZone),
    };
    const leastMs = minutes(query.leastMinutes);
    const isOver = window.startMs >= window.endMs;
    const free = isOver ? [] : listFree(window, { states, taken, item, leastMs });
    const busy = rows.filter(
      ({ blockedTo, blockedFrom, state }) =>
        (blockedTo.getTime() > window.startMs || state === 'out') && blockedFrom.getTime() < window.endMs,
    );
    return {
      item,
      free,
      busy,
      late: listLate(states, taken),
      blockers: states.map(({ unit, blockers }) => ({ unit, blockers })),
    };
  });
}

/** The pieces that could be lent if whoever has them had brought them back. */
const listLate = (states: readonly UnitState[], taken: readonly HeldTime[]) =>
  taken
    .filter(({ isLate }) => isLate)
    .filter(({ unit }) => states.some((state) => state.unit.unitNo === unit && state.blockers.length === 0))
    .map(({ booking: { unitNo, endsAt } }) => ({ unitNo, dueAt: endsAt }));

/** Books a thing for a household: one's own, or whoever asked the keeper. */
export function bookForHousehold(context: Context, itemId: string, wish: BookingWish) {
  const { storehouseId } = context.actor;
  const householdId = householdFor(context, wish.householdId);
  return withTx(context, async (tx) => {
    await loadHousehold(tx, storehouseId, householdId);
    if (!mayBookFor(context.actor, householdId)) throw new Problem('not-your-household');
    await loadPresentHousehold(tx, storehouseId, householdId); // a keeper still finds the seat of one that left
    const loan = { purpose: 'loan', householdId } as const;
    const asked = { ...readTimes(context, wish), itemId, for: loan, note: wish.note };
    const item = await lockItem(tx, storehouseId, itemId);
    const foods = await readFoodsThrough(tx, item, wish.foodIds);
    const { bookingId } = wish.byRelay
      ? await askToTakeOver(tx, context, { item, wish: asked, foods })
      : await bookEquipment(tx, context, asked);
    await insertBookingFoods(tx, { storehouseId, bookingId }, wish.foodIds.slice(0, foods.length));
    return readBookingInside(tx, context, bookingId);
  });
}

function householdFor({ actor }: Context, wanted: string | undefined): string {
  const householdId = wanted ?? actor.householdId;
  if (householdId === null) throw new Problem('household-needed');
  return householdId;
}

/** Takes a piece out of use for its service or its repair. */
export function bookService(context: Context, { unitId, note, ...times }: ServiceTimeWish) {
  return withTx(context, async (tx) => {
    const { equipmentItemId: itemId } = await loadUnit(tx, context.actor.storehouseId, unitId);
    const interval = readTimes(context, times);
    const asked = { ...interval, itemId, note, for: { purpose: 'service', unitId } } as const;
    const { bookingId } = await bookEquipment(tx, context, asked);
    return readBookingInside(tx, context, bookingId);
  });
}

export async function readBookingInside(tx: Tx, { actor }: Context, bookingId: string) {
  const [row] = await listBookings(tx, actor.storehouseId, { bookingId });
  if (!row) throw new Problem('thing-not-found', { thing: 'booking' });
  return row;
}

/** One's own bookings that are not over, and what one waits for. */
export function readOwnBookings(context: Context) {
  const { storehouseId, householdId } = context.actor;
  if (householdId === null) throw new Problem('household-needed');
  return withTx(context, async (tx) => {
    const bookings = await listBookings(tx, storehouseId, { householdId, isOpen: true });
    const asked = (await listAskedOf(tx, storehouseId, householdId)).filter(
      ({ booking }) => booking.householdId !== householdId,
    );
    return { bookings, asked, waiting: await listWaiting(tx, storehouseId, { householdId }) };
  });
}

/** Who asks a household to hand something on to them. */
async function listAskedOf(tx: Tx, storehouseId: string, householdId: string) {
  const own = new Set(
    (await listBookings(tx, storehouseId, { householdId, isOpen: true })).map(
      ({ booking }) => booking.bookingId,
    ),
  );
  const open = await listBookings(tx, storehouseId, { isOpen: true });
  return open.filter(
    ({ booking: { relayFromId, state } }) => relayFromId !== null && own.has(relayFromId) && state !== 'out',
  );
}

/** The bookings of a thing from now on; who has them only for those who may know. */
export function readBookingsOfItem(context: Context, itemId: string) {
  const { storehouseId, householdId } = context.actor;
  return withTx(context, async (tx) => {
    await loadItem(tx, storehouseId, itemId);
    const bookings = await listBookings(tx, storehouseId, { itemId, since: context.now(), isOpen: true });
    const waiting = await listWaiting(tx, storehouseId, { itemId });
    const isSeen = (owner: string | null) => seesLoans(context.actor) || owner === householdId;
    return {
      bookings: bookings.map((row) => ({ ...row, isSeen: isSeen(row.booking.householdId) })),
      waiting: waiting.map((row) => ({ ...row, isSeen: isSeen(row.wish.householdId) })),
    };
  });
}

/** Gives a booked time back; whoever waits for it is asked. */
export function cancelBooking(context: Context, bookingId: string) {
  const { actor } = context;
  return withTx(context, async (tx) => {
    const booking = await lockBooking(tx, context, bookingId);
    if (!mayBookFor(actor, booking.householdId)) throw new Problem('not-your-household');
    refuseUnless(booking, 'asked', 'offered', 'booked');
    if (booking.purpose === 'session')
      throw new Problem('booking-not-open', {
        detail: 'A packing session has booked this; change it there.',
      });
    await endBooking(tx, context, booking, 'cancelled');
    return readBookingInside(tx, context, bookingId);
  });
}

/** A booking under the lock of its thing. */
export async function lockBooking(tx: Tx, { actor }: Context, bookingId: string): Promise<BookingRow> {
  const { equipmentItemId } = await loadBooking(tx, actor.storehouseId, bookingId);
  await lockItem(tx, actor.storehouseId, equipmentItemId);
  return loadBooking(tx, actor.storehouseId, bookingId);
}

export function refuseUnless(booking: BookingRow, ...states: readonly string[]): void {
  if (!states.includes(booking.state)) throw new Problem('booking-not-open', { state: booking.state });
}

/** Takes a time that came free and was offered; says what goes through it where that was never told. */
export function acceptOffer(context: Context, bookingId: string, { foodIds }: AcceptanceWish) {
  return withTx(context, async (tx) => {
    const booking = await lockBooking(tx, context, bookingId);
    if (!mayBookFor(context.actor, booking.householdId)) throw new Problem('not-your-household');
    refuseUnless(booking, 'offered');
    if (booking.offeredUntil && booking.offeredUntil <= context.now())
      throw new Problem('booking-not-open', { detail: 'The offer has lapsed; the time goes to the next.' });
    const told = await listFoodsOfBooking(tx, booking.storehouseId, bookingId);
    if (told.length === 0) {
      const item = await loadItem(tx, booking.storehouseId, booking.equipmentItemId);
      const foods = await readFoodsThrough(tx, item, foodIds);
      await insertBookingFoods(tx, booking, foodIds.slice(0, foods.length));
    } else if (foodIds.length > 0)
      throw fieldProblem('invalid-input', 'foodIds', 'What goes through it was told already.');
    await updateBooking(tx, booking, { state: 'booked', offeredUntil: null });
    return readBookingInside(tx, context, bookingId);
  });
}

/** Says yes or no to handing on: the borrower before, the one after, or the keeper, who may say no until a day before. */
export function answerRelay(context: Context, bookingId: string, { version, agrees }: RelayAnswer) {
  const { actor } = context;
  return withTx(context, async (tx) => {
    const to = await lockBooking(tx, context, bookingId);
    if (to.relayFromId === null) throw new Problem('thing-not-found', { thing: 'relay' });
    const from = await loadBooking(tx, actor.storehouseId, to.relayFromId);
    const isFrom = from.householdId !== null && from.householdId === actor.householdId;
    if (!isFrom && !mayKeepEquipment(actor)) throw new Problem('not-your-household');
    if (to.version !== version) throw new Problem('stale-version', { newer: { version: to.version } });
    refuseUnless(to, 'asked', 'booked');
    const item = await loadItem(tx, actor.storehouseId, to.equipmentItemId);
    if (agrees) await agreeToRelay(tx, context, { item, from, to });
    else {
      if (!isFrom) refuseLateVeto(context, to);
      await refuseToRelay(tx, context, { item, from, to });
      await offerFreedTimes(tx, context, item);
    }
    return readBookingInside(tx, context, bookingId);
  });
}

/** Waits for a time that is taken; it is offered when its whole length comes free. */
export function waitFor(context: Context, itemId: string, wish: WaitingWish) {
  const { storehouseId, personId } = context.actor;
  const householdId = householdFor(context, wish.householdId);
  return withTx(context, async (tx) => {
    await loadHousehold(tx, storehouseId, householdId);
    if (!mayBookFor(context.actor, householdId)) throw new Problem('not-your-household');
    const item = await lockItem(tx, storehouseId, itemId);
    const interval = readTimes(context, wish);
    refuseTooLong(context, interval, item.longestDays);
    const open = await findOpenBooking(tx, storehouseId, { itemId, householdId });
    if (open) throw new Problem('already-booked', { bookingId: open.bookingId });
    const waiting = await listWaiting(tx, storehouseId, { itemId, householdId });
    if (waiting.length > 0) throw new Problem('already-waiting');
    const foods = await readFoodsThrough(tx, item, wish.foodIds);
    const { equipmentWishId } = await insertWish(tx, {
      ...{ storehouseId, equipmentWishId: newId(context), equipmentItemId: itemId, householdId },
      ...{ startsAt: new Date(interval.startMs), endsAt: new Date(interval.endMs) },
      ...{ askedBy: personId, askedAt: context.now() },
    });
    await insertWishFoods(tx, { storehouseId, equipmentWishId }, wish.foodIds.slice(0, foods.length));
    await offerFreedTimes(tx, context, item); // it may be free by now
    return { wishId: equipmentWishId, ...(await listOwnWaiting(tx, context, { itemId, householdId })) };
  });
}

async function listOwnWaiting(tx: Tx, { actor }: Context, of: { itemId: string; householdId: string }) {
  const { storehouseId } = actor;
  return {
    waiting: await listWaiting(tx, storehouseId, of),
    bookings: await listBookings(tx, storehouseId, { ...of, isOpen: true }),
  };
}

export function stopWaiting(context: Context, wishId: string): Promise<void> {
  return withTx(context, async (tx) => {
    const wish = await loadWish(tx, context.actor.storehouseId, wishId);
    if (!mayBookFor(context.actor, wish.householdId)) throw new Problem('not-your-household');
    if (wish.endedAt === null) await updateWish(tx, wish, { endedAt: context.now() });
  });
}

/** Work in the background: what was offered and not taken goes to the next who waits. */
export const lapseEquipmentOffers: WorkTask = {
  settle: (tx, { context }) => lapseOffersInside(tx, context),
};

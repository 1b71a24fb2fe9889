import { type Interval, nextWaiting, type UnitBooking } from '@sheafbook/booking';
import type { Tx } from '@sheafbook/db';
import type { BookingRow, EquipmentItemRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { enqueue } from '../../platform/work/enqueue.ts';
import { lockItem } from '../equipment/queries.ts';
import { listUnitStates, type UnitState } from '../equipment/use-cases.ts';
import {
  findOpenBooking,
  insertBooking,
  listBookingsOfSession,
  listLapsedOffers,
  listTaken,
  listWaiting,
  updateBooking,
  updateWish,
} from './queries.ts';
import { insertBookingFoods, listFoodIdsOfWish } from './queries-foods.ts';
import { letGoOfRelays } from './relay-ends.ts';
import { buffersOf, chooseUnit, type HeldTime, listFree, timesOf, toHeldTime } from './taken.ts';
import { HORIZON_DAYS, minutes, refuseTooLong } from './when.ts';

/** A time that came free is kept for whoever waited this long. Source: common practice, no source. */
const OFFER_HOURS = 12;
const HOUR = minutes(60);

/** Whom a thing is booked for. */
export type BookedFor =
  | { readonly purpose: 'loan'; readonly householdId: string }
  | { readonly purpose: 'session'; readonly sessionId: string }
  | { readonly purpose: 'service'; readonly unitId: string };

export type EquipmentWish = Interval & {
  readonly itemId: string;
  readonly for: BookedFor;
  readonly note?: string;
};

/**
 * Books a thing for a household, a packing session or its service, inside the caller's transaction. Locks the thing, so
 * that of many who want the last piece one gets it; refuses with the next free times when there is none.
 */
export async function bookEquipment(tx: Tx, context: Context, wish: EquipmentWish): Promise<BookingRow> {
  const item = await lockItem(tx, context.actor.storehouseId, wish.itemId);
  refuseImpossible(context, wish);
  if (wish.for.purpose === 'loan') await refuseLoanWish(tx, context, item, wish);
  const { states, taken } = await lookAt(tx, context, item);
  const unit = chooseFor(context, item, wish, { states, taken });
  if (!unit) throw notFree(context, item, wish, { states, taken });
  return insertBooking(tx, { ...rowOf(context, item, wish), equipmentUnitId: unit.unit.equipmentUnitId });
}

/** The columns that any booking of a wish has. */
export function rowOf(context: Context, item: EquipmentItemRow, wish: EquipmentWish) {
  return {
    storehouseId: context.actor.storehouseId,
    bookingId: newId(context),
    equipmentItemId: item.equipmentItemId,
    purpose: wish.for.purpose,
    householdId: wish.for.purpose === 'loan' ? wish.for.householdId : null,
    sessionId: wish.for.purpose === 'session' ? wish.for.sessionId : null,
    ...timesOf(wish, wish.for.purpose === 'service' ? { preMs: 0, postMs: 0 } : buffersOf(item)),
    note: wish.note ?? '',
    bookedBy: context.actor.personId,
    bookedAt: context.now(),
  };
}

function refuseImpossible(context: Context, { startMs, endMs }: Interval): void {
  if (startMs >= endMs) throw fieldProblem('invalid-input', 'until', 'A booking ends after it begins.');
  if (startMs < context.now().getTime())
    throw fieldProblem('invalid-input', 'from', 'This time is over. Book from now on.');
}

export async function refuseLoanWish(
  tx: Tx,
  context: Context,
  item: EquipmentItemRow,
  wish: EquipmentWish,
): Promise<void> {
  if (wish.for.purpose !== 'loan') return;
  const { householdId } = wish.for;
  refuseTooLong(context, wish, item.longestDays);
  const open = await findOpenBooking(tx, context.actor.storehouseId, {
    itemId: item.equipmentItemId,
    householdId,
  });
  if (open) throw new Problem('already-booked', { bookingId: open.bookingId });
}

/** A thing's pieces as they are, and what holds them as far as anybody books; the past tells which was free longest. */
export async function lookAt(tx: Tx, context: Context, item: EquipmentItemRow) {
  const now = context.now();
  const from = new Date(now.getTime() - HORIZON_DAYS * 24 * HOUR);
  const to = new Date(now.getTime() + 2 * HORIZON_DAYS * 24 * HOUR);
  const itemIds = [item.equipmentItemId];
  const rows = await listTaken(tx, item.storehouseId, { itemIds, from, to });
  const states = await listUnitStates(tx, context, [item]);
  return { states, rows, taken: rows.map((row) => toHeldTime(row, now.getTime())) };
}
type Seen = { readonly states: readonly UnitState[]; readonly taken: readonly HeldTime[] };

/** A packing day that is booked further ahead than this outranks private loans (job map 8). */
const OUTRANKS_MS = 14 * 24 * HOUR;

/** Whether a day is so far ahead that private loans give way to it: one that is late will be back by then, too. */
export const outranksLoans = (context: Context, { startMs }: Interval): boolean =>
  startMs > context.now().getTime() + OUTRANKS_MS;

/** What holds pieces as if everything that is late were back. */
export const withoutLate = (taken: readonly HeldTime[]) => taken.filter(({ isLate }) => !isLate);

/** The piece that a wish gets; a packing day far ahead gets one that is late where there is no other. */
export function chooseFor(
  context: Context,
  item: EquipmentItemRow,
  wish: EquipmentWish,
  { states, taken }: Seen,
): UnitState | null {
  if (wish.for.purpose !== 'service') {
    const wished = { ...wish, ...buffersOf(item) };
    const here = chooseUnit(wished, states, taken);
    const mayWait = wish.for.purpose === 'session' && outranksLoans(context, wish);
    return here ?? (mayWait ? chooseUnit(wished, states, withoutLate(taken)) : null);
  }
  const { unitId } = wish.for; // what is broken may well be in for repair
  const own = states
    .filter(({ unit }) => unit.equipmentUnitId === unitId)
    .map((state) => ({ ...state, blockers: [] }));
  return chooseUnit({ ...wish, preMs: 0, postMs: 0 }, own, taken);
}

const FREE_TIMES_SHOWN = 3;
const OUT_AND_LATE =
  'It is out and late; nobody knows when it is back. Wait for that time, and it is offered to you once it is here.';

export function notFree(context: Context, item: EquipmentItemRow, wish: EquipmentWish, seen: Seen): Problem {
  const blockers = [...new Set(seen.states.flatMap((state) => state.blockers))];
  const isUnfit = seen.states.every((state) => state.blockers.length > 0);
  if (isUnfit) return new Problem('equipment-unfit', { blockers });
  const startMs = context.now().getTime();
  const window = { startMs, endMs: startMs + HORIZON_DAYS * 24 * HOUR };
  const free = listFree(window, { ...seen, item, leastMs: wish.endMs - wish.startMs });
  const isLate = chooseUnit({ ...wish, ...buffersOf(item) }, seen.states, withoutLate(seen.taken)) !== null;
  return new Problem('equipment-taken', {
    ...(isLate ? { detail: OUT_AND_LATE } : {}),
    fields: [{ field: 'from', message: isLate ? 'It is out and late.' : 'It is taken at that time.' }],
    isLate,
    freeTimes: free.slice(0, FREE_TIMES_SHOWN).map(({ startsAt, endsAt, unitNo }) => ({
      ...{ startsAt: startsAt.toISOString(), endsAt: endsAt.toISOString(), unitNo },
    })),
  });
}

/** Gives back what a session booked and offers it to whoever waits, inside the caller's transaction. */
export async function freeEquipmentOfSession(tx: Tx, context: Context, sessionId: string): Promise<void> {
  for (const booking of await listBookingsOfSession(tx, context.actor.storehouseId, sessionId))
    await endBooking(tx, context, booking, 'cancelled');
}

/** Ends a booking before anything went out, and offers its time on. Locks its thing. */
export async function endBooking(
  tx: Tx,
  context: Context,
  booking: BookingRow,
  state: 'cancelled' | 'not-fetched',
): Promise<BookingRow> {
  const item = await lockItem(tx, booking.storehouseId, booking.equipmentItemId);
  const ended = await updateBooking(tx, booking, { state, offeredUntil: null });
  await keepAsked(tx, context, item, await letGoOfRelays(tx, booking));
  await offerFreedTimes(tx, context, item);
  return ended;
}

/** Who had asked to take it straight from there gets the time without asking, where nobody else holds it. */
async function keepAsked(
  tx: Tx,
  context: Context,
  item: EquipmentItemRow,
  asked: readonly BookingRow[],
): Promise<void> {
  for (const booking of asked) {
    const { rows } = await lookAt(tx, context, item);
    const isHeld = rows.some(
      ({ equipmentUnitId, blockedFrom, blockedTo }) =>
        equipmentUnitId === booking.equipmentUnitId &&
        blockedFrom < booking.blockedTo &&
        blockedTo > booking.blockedFrom,
    );
    await updateBooking(tx, booking, { state: isHeld ? 'cancelled' : 'booked', relayFromId: null });
  }
}

/**
 * Offers times that came free to those who wait: to the earliest wish whose whole time fits (job map 8). The time is held
 * for them so long as the offer stands; then it goes to the next. The thing is locked.
 */
export async function offerFreedTimes(tx: Tx, context: Context, item: EquipmentItemRow): Promise<void> {
  const { storehouseId } = context.actor;
  const now = context.now();
  const waiting = (await listWaiting(tx, storehouseId, { itemId: item.equipmentItemId })).filter(
    ({ wish }) => wish.startsAt > now,
  );
  if (waiting.length === 0) return;
  const { states, taken } = await lookAt(tx, context, item);
  const served = new Set<string>();
  for (const { unit } of states.filter(({ blockers }) => blockers.length === 0)) {
    const own: UnitBooking[] = taken.filter((held) => held.unit === unit.unitNo);
    for (;;) {
      const wishId = nextWaiting(
        waiting
          .filter(({ wish }) => !served.has(wish.equipmentWishId))
          .map(({ wish, seat }) => ({
            ...{ waitingId: wish.equipmentWishId, seat, askedAtMs: wish.askedAt.getTime() },
            ...{ startMs: wish.startsAt.getTime(), endMs: wish.endsAt.getTime(), ...buffersOf(item) },
          })),
        own,
      );
      const chosen = waiting.find(({ wish }) => wish.equipmentWishId === wishId);
      if (!chosen) break;
      served.add(chosen.wish.equipmentWishId);
      const interval = { startMs: chosen.wish.startsAt.getTime(), endMs: chosen.wish.endsAt.getTime() };
      own.push({ ...interval, ...buffersOf(item), unit: unit.unitNo });
      await offer(tx, context, item, { ...chosen, interval, unitId: unit.equipmentUnitId });
    }
  }
}

async function offer(
  tx: Tx,
  context: Context,
  item: EquipmentItemRow,
  { wish, interval, unitId }: { wish: Waiter['wish']; interval: Interval; unitId: string },
): Promise<void> {
  const { householdId } = wish;
  const untilMs = Math.min(context.now().getTime() + OFFER_HOURS * HOUR, interval.startMs);
  const asked = { itemId: item.equipmentItemId, ...interval, for: { purpose: 'loan', householdId } } as const;
  const booking = await insertBooking(tx, {
    ...rowOf(context, item, asked),
    equipmentUnitId: unitId,
    state: 'offered',
    offeredUntil: new Date(untilMs),
    bookedBy: wish.askedBy,
  });
  await insertBookingFoods(tx, booking, await listFoodIdsOfWish(tx, wish));
  await updateWish(tx, wish, { endedAt: context.now(), bookingId: booking.bookingId });
  await enqueue(tx, item.storehouseId, { task: 'lapse-equipment-offers', runAt: new Date(untilMs) });
}
type Waiter = Awaited<ReturnType<typeof listWaiting>>[number];

/** Offers that stood long enough end, and their times go to the next who waits. */
export async function lapseOffersInside(tx: Tx, context: Context): Promise<void> {
  for (const booking of await listLapsedOffers(tx, context.actor.storehouseId, context.now()))
    await endBooking(tx, context, booking, 'cancelled');
}

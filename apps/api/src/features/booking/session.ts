import { areInConflict, type Buffers, type Interval, sameTimeDaysLater } from '@sheafbook/booking';
import type { Tx } from '@sheafbook/db';
import type { BookingRow, EquipmentItemRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { enqueue } from '../../platform/work/enqueue.ts';
import { loadItem, lockItem } from '../equipment/queries.ts';
import { writeNotice } from '../notice/use-cases.ts';
import {
  bookEquipment,
  chooseFor,
  type EquipmentWish,
  lookAt,
  offerFreedTimes,
  outranksLoans,
  rowOf,
  withoutLate,
} from './book.ts';
import { insertBooking, listBookingsOfSession, updateBooking } from './queries.ts';
import { insertBookingFoods, listFoodsOfBooking } from './queries-foods.ts';
import { letGoOfRelays } from './relay-ends.ts';
import { buffersOf, chooseUnit, type HeldTime } from './taken.ts';
import { HORIZON_DAYS, minutes } from './when.ts';

const DAY = minutes(24 * 60);
/** Another time is kept so long for whoever had to give way. Source: common practice, no source. */
const OTHER_TIME_DAYS = 3;

export type SessionTime = Interval & { readonly sessionId: string; readonly name: string };

/**
 * Books a piece for the day of a session. Where none is free, a session that is booked more than 14 days ahead takes the
 * piece that the fewest private loans hold: each of those is told, and the same hours of a later day are kept for it.
 */
export async function bookForSession(
  tx: Tx,
  context: Context,
  { itemId, session }: { itemId: string; session: SessionTime },
): Promise<{ booking: BookingRow; outranked: number }> {
  const item = await lockItem(tx, context.actor.storehouseId, itemId);
  const { startMs, endMs, sessionId } = session;
  const wish = { startMs, endMs, itemId, for: { purpose: 'session', sessionId } } as const;
  const outranked = await makeRoom(tx, context, { item, wish });
  const booking = await bookEquipment(tx, context, wish);
  for (const loan of outranked) await offerOtherTime(tx, context, { item, loan, session });
  await offerFreedTimes(tx, context, item);
  return { booking, outranked: outranked.length };
}

type Wanted = { readonly item: EquipmentItemRow; readonly wish: EquipmentWish };

/** Loans that give way, ended; none where a piece is free anyway or the session may not outrank anybody. */
async function makeRoom(tx: Tx, context: Context, { item, wish }: Wanted): Promise<BookingRow[]> {
  const { states, taken } = await lookAt(tx, context, item);
  if (chooseFor(context, item, wish, { states, taken })) return [];
  if (!outranksLoans(context, wish)) return [];
  const wished = { ...wish, ...buffersOf(item) };
  const [fewest] = states
    .filter(({ blockers }) => blockers.length === 0)
    .map(({ unit }) => heldAgainst(wished, withoutLate(taken), unit.unitNo))
    .filter((loans) => loans.every(givesWay))
    .toSorted((a, b) => a.length - b.length);
  const ended: BookingRow[] = [];
  for (const { booking } of fewest ?? []) {
    const { unitNo: _, ...loan } = booking;
    const asked = await letGoOfRelays(tx, loan);
    for (const row of [loan, ...asked])
      ended.push(await updateBooking(tx, row, { state: 'cancelled', offeredUntil: null }));
  }
  return ended;
}

/** What holds a piece at a time that is wished for. */
const heldAgainst = (wished: Interval & Buffers, taken: readonly HeldTime[], unitNo: number) =>
  taken.filter((held) => held.unit === unitNo && areInConflict(wished, held));

const givesWay = ({ booking: { purpose, state } }: HeldTime): boolean =>
  purpose === 'loan' && (state === 'booked' || state === 'offered');

/** Whoever gave way is told, and the same hours of the first later day that is free are kept for them. */
async function offerOtherTime(
  tx: Tx,
  context: Context,
  { item, loan, session }: { item: EquipmentItemRow; loan: BookingRow; session: SessionTime },
): Promise<void> {
  const { householdId } = loan;
  if (householdId === null) return;
  const isKept = await keepSameHours(tx, context, { item, loan, householdId });
  const { name } = session;
  await writeNotice(tx, context, {
    ...{ kind: 'packing', audience: { to: 'household', householdId }, about: item.name },
    says: isKept
      ? `${name} needs the ${item.name} at your time. The same hours of another day are kept for you for three days: say whether you take them.`
      : `${name} needs the ${item.name} at your time. No other day is free at those hours: choose another time.`,
    path: `/equipment/${item.equipmentItemId}`,
  });
}

async function keepSameHours(
  tx: Tx,
  context: Context,
  { item, loan, householdId }: { item: EquipmentItemRow; loan: BookingRow; householdId: string },
): Promise<boolean> {
  const { timeZone } = context.actor;
  const { states, taken } = await lookAt(tx, context, item);
  for (let day = 1; day < HORIZON_DAYS; day += 1) {
    const startMs = sameTimeDaysLater(loan.startsAt.getTime(), day, timeZone);
    const endMs = sameTimeDaysLater(loan.endsAt.getTime(), day, timeZone);
    const unit = chooseUnit({ startMs, endMs, ...buffersOf(item) }, states, taken);
    if (!unit) continue;
    const untilMs = context.now().getTime() + OTHER_TIME_DAYS * DAY;
    const wish = {
      startMs,
      endMs,
      itemId: item.equipmentItemId,
      for: { purpose: 'loan', householdId },
    } as const;
    const { bookingId } = await insertBooking(tx, {
      ...rowOf(context, item, wish),
      equipmentUnitId: unit.unit.equipmentUnitId,
      ...{ state: 'offered', offeredUntil: new Date(untilMs), bookedBy: loan.bookedBy, note: loan.note },
    });
    const through = await listFoodsOfBooking(tx, item.storehouseId, loan.bookingId);
    await insertBookingFoods(
      tx,
      { storehouseId: item.storehouseId, bookingId },
      through.map(({ foodId }) => foodId),
    );
    await enqueue(tx, item.storehouseId, { task: 'lapse-equipment-offers', runAt: new Date(untilMs) });
    return true;
  }
  return false;
}

/** Moves what a session booked to its new time, piece for piece; gives the names of what is not free then. */
export async function moveEquipmentOfSession(
  tx: Tx,
  context: Context,
  session: SessionTime,
): Promise<string[]> {
  const lost: string[] = [];
  const { storehouseId } = context.actor;
  for (const booking of await listBookingsOfSession(tx, storehouseId, session.sessionId)) {
    const item = await lockItem(tx, storehouseId, booking.equipmentItemId);
    await updateBooking(tx, booking, { state: 'cancelled' });
    try {
      await bookForSession(tx, context, { itemId: item.equipmentItemId, session });
    } catch (error) {
      if (!(error instanceof Problem)) throw error; // refused before anything was written
      lost.push(item.name);
      await offerFreedTimes(tx, context, item);
    }
  }
  return lost;
}

/**
 * How many pieces a session could have, how many more only because it outranks private loans, and how many of the free
 * ones are out and late now: a day far ahead may book one of these, too, since they will be back by then.
 */
export async function countForSession(
  tx: Tx,
  context: Context,
  { itemId, session }: { itemId: string; session: Interval },
): Promise<{ free: number; outranking: number; lateFree: number }> {
  const item = await loadItem(tx, context.actor.storehouseId, itemId);
  const { states, taken } = await lookAt(tx, context, item);
  const mayOutrank = outranksLoans(context, session);
  const usable = states.filter(({ blockers }) => blockers.length === 0).map(({ unit }) => unit.unitNo);
  const holding = mayOutrank ? withoutLate(taken) : taken;
  const wished = { ...session, ...buffersOf(item) };
  const holders = usable.map((unitNo) => heldAgainst(wished, holding, unitNo));
  const here = usable.filter((unitNo) => heldAgainst(wished, taken, unitNo).length === 0);
  const giving = holders.filter((held) => held.length > 0 && held.every(givesWay)).length;
  const free = holders.filter((held) => held.length === 0).length;
  return { free, outranking: mayOutrank ? giving : 0, lateFree: free - here.length };
}

import { lateFee, mostAtOnce, reckonedTime, serviceAhead } from '@sheafbook/booking';
import type { Tx } from '@sheafbook/db';
import { addDays, dayInZone, daysBetween } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { WHOLE_LIST } from '../../platform/paging.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { todayOf } from '../../platform/today.ts';
import { type ListedBooking, listBookings, listWaiting } from '../booking/queries.ts';
import { presentBooking, presentWish } from '../booking/use-cases.ts';
import { listItems } from '../equipment/queries.ts';
import { listUnitStates, presentUnit, type UnitState } from '../equipment/use-cases.ts';
import { type ListedLoan, listLoans } from './queries.ts';

/** How far ahead bookings tell what will want service (job map 3.4, question 5). */
const SERVICE_HORIZON_DAYS = 60;

/** A loan that is out, with what it holds up: whoever has the piece next, from when. */
type LoanOut = ListedLoan & {
  readonly isLate: boolean;
  readonly lateMinorUnits: number;
  readonly next: ListedBooking | null;
  /** The next one's time has begun, or begins before the piece can be clean again. */
  readonly blocks: boolean;
};

/** Everything that the keeper is asked at the shed door (job map 3.4), in one look. */
export async function lookAtDesk(tx: Tx, context: Context) {
  const { storehouseId } = context.actor;
  const items = await listItems(tx, storehouseId, { limit: WHOLE_LIST });
  const states = await listUnitStates(tx, context, items);
  const bookings = (await listBookings(tx, storehouseId, { isOpen: true })).filter(isStillToCome(context));
  const out = (await listLoans(tx, storehouseId, { isOut: true })).map((loan) =>
    withNext(context, loan, bookings),
  );
  const waiting = await listWaiting(tx, storehouseId);
  await noteLook(tx, context, [
    ...bookings.flatMap(({ booking }) => booking.householdId ?? []),
    ...waiting.map(({ wish }) => wish.householdId),
  ]);
  const nameOf = new Map(items.map((item) => [item.equipmentItemId, item.name]));
  // Spelled as their own features spell them, so that a booking looks the same wherever it is read.
  return {
    out: out.map(({ next, ...row }) => ({ ...row, next: next && presentBooking(next) })),
    bookings: bookings.map(presentBooking),
    waiting: waiting.map(presentWish),
    peaks: items.map(({ equipmentItemId, name }) => ({
      ...{ itemId: equipmentItemId, itemName: name },
      units: states.filter(({ unit }) => isInUse(unit) && unit.equipmentItemId === equipmentItemId).length,
      mostAtOnce: mostAtOnce(bookings.flatMap((row) => heldTime(context, row, equipmentItemId))),
    })),
    units: states.map((state) => ({
      itemId: state.unit.equipmentItemId,
      itemName: nameOf.get(state.unit.equipmentItemId) ?? '',
      serviceAhead: serviceOf(context, state, bookings),
      ...presentUnit(state),
    })),
  };
}
export type Desk = Awaited<ReturnType<typeof lookAtDesk>>;

const isInUse = ({ condition }: { condition: string }) => condition !== 'retired';

/** The time that a booking keeps a piece of a thing, cleaning and travel with it; one only asked for keeps none. */
function heldTime(context: Context, { booking }: ListedBooking, itemId: string) {
  if (booking.equipmentItemId !== itemId || booking.state === 'asked') return [];
  const [startMs, endMs] = [booking.blockedFrom.getTime(), booking.blockedTo.getTime()];
  const isOut = booking.state === 'out';
  const { endMs: untilMs } = reckonedTime(
    { startMs: booking.startsAt.getTime(), endMs: booking.endsAt.getTime(), isOut },
    context.now().getTime(),
  );
  return [{ startMs, endMs: Math.max(endMs, untilMs) }];
}

/** When a piece will want service by its calendar and by what is booked; null when neither tells of any. */
function serviceOf(context: Context, state: UnitState, bookings: readonly ListedBooking[]) {
  const todayOn = todayOf(context);
  const bookingsInDays = bookings
    .filter(({ booking }) => booking.equipmentUnitId === state.unit.equipmentUnitId)
    .filter(({ booking }) => booking.purpose !== 'service' && booking.state !== 'asked')
    .map(({ booking }) => daysBetween(todayOn, dayInZone(booking.endsAt.getTime(), context.actor.timeZone)));
  const ahead = serviceAhead(state.service, {
    bookingsInDays: bookingsInDays.map((days) => Math.max(0, days)),
    ...{ usesEach: state.usesEach, horizonDays: SERVICE_HORIZON_DAYS },
  });
  return ahead && { onDay: addDays(todayOn, ahead.inDays), because: ahead.because };
}

/** A day's or a service's own time needs nobody to give it back. */
const isStillToCome =
  (context: Context) =>
  ({ booking }: ListedBooking): boolean =>
    booking.purpose === 'loan' || booking.endsAt > context.now();

const noteLook = (tx: Tx, context: Context, householdIds: readonly string[]) =>
  notePrivateRead(tx, context, { householdIds, what: 'loans', purpose: 'looking after equipment' });

function withNext(context: Context, row: ListedLoan, bookings: readonly ListedBooking[]): LoanOut {
  const nowMs = context.now().getTime();
  const { loan, item } = row;
  const next =
    bookings.find(
      ({ booking }) =>
        booking.equipmentUnitId === loan.equipmentUnitId &&
        (booking.state === 'booked' || booking.state === 'offered') &&
        booking.startsAt >= row.booking.startsAt,
    ) ?? null;
  const dueMs = loan.dueAt.getTime();
  const isLate = dueMs < nowMs;
  const blocks = isLate && next !== null && next.booking.blockedFrom.getTime() < nowMs + postMs(item);
  const lateMinorUnits = blocks ? lateFee({ dueMs, backMs: nowMs }, item.lateFeeMinorUnits) : 0;
  return { ...row, isLate, lateMinorUnits, next, blocks };
}

const postMs = ({ postMinutes }: { postMinutes: number }) => postMinutes * 60_000;

import type { Tx } from '@sheafbook/db';
import type { BookingRow, EquipmentUnitRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { loadItem } from '../equipment/queries.ts';
import { lookAt } from './book.ts';
import { updateBooking } from './queries.ts';
import { buffersOf, chooseUnit, type FreeTime, listFree } from './taken.ts';
import { HORIZON_DAYS, minutes } from './when.ts';

const TIMES_SHOWN = 3;

/** Another piece of the same kind that is in the store now and free for the rest of a booking's time. */
export async function findOtherPiece(
  tx: Tx,
  context: Context,
  booking: BookingRow,
): Promise<EquipmentUnitRow | null> {
  const item = await loadItem(tx, booking.storehouseId, booking.equipmentItemId);
  const { states, taken } = await lookAt(tx, context, item);
  const others = states.filter(
    ({ unit, dueBackAt }) => unit.equipmentUnitId !== booking.equipmentUnitId && dueBackAt === null,
  );
  const startMs = booking.startsAt.getTime();
  const endMs = booking.endsAt.getTime();
  return chooseUnit({ startMs, endMs, ...buffersOf(item) }, others, taken)?.unit ?? null;
}

/** The next times at which any piece is free for as long as a booking lasts. */
export async function listNextTimes(tx: Tx, context: Context, booking: BookingRow): Promise<FreeTime[]> {
  const item = await loadItem(tx, booking.storehouseId, booking.equipmentItemId);
  const { states, taken } = await lookAt(tx, context, item);
  const startMs = context.now().getTime();
  const window = { startMs, endMs: startMs + minutes(HORIZON_DAYS * 24 * 60) };
  const leastMs = booking.endsAt.getTime() - booking.startsAt.getTime();
  return listFree(window, { states, taken, item, leastMs }).slice(0, TIMES_SHOWN);
}

/** A thing that is fetched before its hour holds its piece from then on, if nobody else does. */
export async function startNow(tx: Tx, context: Context, booking: BookingRow, at: Date): Promise<BookingRow> {
  if (at >= booking.startsAt) return booking;
  const item = await loadItem(tx, booking.storehouseId, booking.equipmentItemId);
  const { rows } = await lookAt(tx, context, item);
  const blockedFrom = new Date(Math.min(at.getTime(), booking.blockedFrom.getTime()));
  const isHeld = rows.some(
    (other) =>
      other.bookingId !== booking.bookingId &&
      other.equipmentUnitId === booking.equipmentUnitId &&
      other.blockedFrom < booking.blockedTo &&
      other.blockedTo > blockedFrom,
  );
  if (isHeld)
    throw new Problem('equipment-taken', {
      detail: 'It is somebody else’s until then. Fetch it at its hour.',
    });
  return updateBooking(tx, booking, { startsAt: at, blockedFrom });
}

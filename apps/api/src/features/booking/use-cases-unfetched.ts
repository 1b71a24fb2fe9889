import type { Tx } from '@sheafbook/db';
import type { BookingRow, EquipmentItemRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import type { WorkTask } from '../../platform/work/task.ts';
import { loadItem } from '../equipment/queries.ts';
import { listUnitStates } from '../equipment/use-cases.ts';
import { writeNotice } from '../notice/use-cases.ts';
import { endBooking } from './book.ts';
import { listUnfetched } from './queries.ts';
import { lockBooking, readBookingInside, refuseUnless } from './use-cases.ts';
import { minutes } from './when.ts';

const NO_SHOW_HOURS = 4;
const NO_SHOW_MS = minutes(60 * NO_SHOW_HOURS);

/** What nobody fetched some hours after its start is free again (job map 8). */
export function freeUnfetched(context: Context, bookingId: string) {
  return withTx(context, async (tx) => {
    const booking = await lockBooking(tx, context, bookingId);
    refuseUnless(booking, 'booked');
    const fromMs = booking.startsAt.getTime() + NO_SHOW_MS;
    if (context.now().getTime() < fromMs)
      throw new Problem('booking-not-open', {
        detail: `It may be fetched until ${NO_SHOW_HOURS} hours after its start.`,
        until: new Date(fromMs).toISOString(),
      });
    await free(tx, context, booking);
    return readBookingInside(tx, context, bookingId);
  });
}

/**
 * Work in the background: what was not fetched in its hours goes to whoever waits. Only what stood there to be fetched: a
 * piece that is still out, dirty or broken is not its borrower's fault, and its time is the keeper's to judge.
 */
export const freeUnfetchedEquipment: WorkTask = {
  async settle(tx, { context }) {
    const { storehouseId } = context.actor;
    const startedBy = new Date(context.now().getTime() - NO_SHOW_MS);
    for (const { bookingId, equipmentItemId } of await listUnfetched(tx, storehouseId, startedBy)) {
      const booking = await lockBooking(tx, context, bookingId); // somebody may have fetched it meanwhile
      const item = await loadItem(tx, storehouseId, equipmentItemId);
      if (booking.state === 'booked' && (await stoodReady(tx, context, item, booking)))
        await free(tx, context, booking);
    }
  },
};

async function stoodReady(tx: Tx, context: Context, item: EquipmentItemRow, booking: BookingRow) {
  const state = (await listUnitStates(tx, context, [item])).find(
    ({ unit }) => unit.equipmentUnitId === booking.equipmentUnitId,
  );
  return state?.dueBackAt === null && state.unit.condition === 'ready' && state.blockers.length === 0;
}

async function free(tx: Tx, context: Context, booking: BookingRow): Promise<void> {
  await endBooking(tx, context, booking, 'not-fetched');
  const { householdId, equipmentItemId, storehouseId } = booking;
  if (householdId === null) return;
  const { name } = await loadItem(tx, storehouseId, equipmentItemId);
  await writeNotice(tx, context, {
    ...{ kind: 'equipment', audience: { to: 'household', householdId }, about: name },
    says: `You had booked this and did not fetch it within ${NO_SHOW_HOURS} hours, so it is free for others again: ${name}.`,
    path: `/equipment/${equipmentItemId}`,
  });
}

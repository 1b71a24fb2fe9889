import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { WHOLE_LIST } from '../../platform/paging.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listBookings, loadBooking } from '../booking/queries.ts';
import { bookForSession, countForSession, endBooking, presentBooking } from '../booking/use-cases.ts';
import { listItems } from '../equipment/queries.ts';
import { loadSession, lockSession } from '../packing-session/queries.ts';
import { requireSessionStage } from '../packing-session/use-cases.ts';

/** What a packing day has booked, and what it could book besides. */
export function readSessionEquipment(context: Context, sessionId: string) {
  return withTx(context, async (tx) =>
    look(tx, context, await loadSession(tx, context.actor.storehouseId, sessionId)),
  );
}
export type SessionEquipment = Awaited<ReturnType<typeof readSessionEquipment>>;

async function look(tx: Tx, context: Context, session: PackingSessionRow, outranked = 0) {
  const { storehouseId } = context.actor;
  const { packingSessionId: sessionId } = session;
  const items = await listItems(tx, storehouseId, { limit: WHOLE_LIST });
  const counted = [];
  for (const item of items) {
    const count = await countForSession(tx, context, {
      ...{ itemId: item.equipmentItemId, session: timesOf(session) },
    });
    counted.push({ item, ...count });
  }
  const booked = await listBookings(tx, storehouseId, { sessionId, isOpen: true });
  // Spelled as its own feature spells it, so that a booking looks the same wherever it is read.
  return { booked: booked.map(presentBooking), items: counted, outranked };
}

const timesOf = ({ startsAt, endsAt }: PackingSessionRow) => ({
  ...{ startMs: startsAt.getTime(), endMs: endsAt.getTime() },
});

/** Books a piece for the whole day. */
export function bookForDay(context: Context, sessionId: string, itemId: string) {
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, context.actor.storehouseId, sessionId);
    requireSessionStage(session, 'open');
    const day = { ...timesOf(session), sessionId, name: session.name };
    const { outranked } = await bookForSession(tx, context, { itemId, session: day });
    return look(tx, context, session, outranked);
  });
}

/** Gives one of its pieces back; whoever waits for that time is asked. */
export function giveBackOfDay(context: Context, sessionId: string, bookingId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    const booking = await loadBooking(tx, storehouseId, bookingId);
    if (booking.sessionId !== sessionId) throw new Problem('thing-not-found', { thing: 'booking' });
    if (booking.state === 'booked') await endBooking(tx, context, booking, 'cancelled');
    return look(tx, context, session);
  });
}

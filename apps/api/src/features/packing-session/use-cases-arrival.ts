import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow, PackingSlotRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { happenedByNow } from '../../platform/happened-at.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import type { WorkTask } from '../../platform/work/task.ts';
import { mayPlanSessions } from './policy.ts';
import {
  listHouseholdsHere,
  listSessionsUnmet,
  listSlots,
  lockSession,
  type SlotOf,
  updateSlot,
} from './queries.ts';
import type { Arrival } from './schema.ts';
import { minutesIn, nextPlace } from './slots.ts';
import { requireSessionStage } from './stage.ts';
import { promoteWaiting, tellHousehold } from './use-cases-slots.ts';

/** Common practice, no source: a quarter of an hour to park and unload, and five minutes more. */
const GRACE_MINUTES = 20;
const GRACE_MS = GRACE_MINUTES * 60_000;

/**
 * Writes down that a household stands at the line, or takes that back: the household itself, or whoever leads the day. Who comes
 * after its time went to others gets the first one that is free, or waits for one.
 */
export function sayArrival(
  context: Context,
  { sessionId, slotId }: { sessionId: string; slotId: string },
  { isHere, ...said }: Arrival,
): Promise<SlotOf> {
  const { storehouseId, householdId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    const found = await findSlot(tx, session, slotId);
    if (found.slot.householdId !== householdId && !mayPlanSessions(context.actor))
      throw new Problem('not-your-household');
    requireSessionStage(session, 'open', 'running');
    const { slot } = found;
    const cameAt = happenedByNow(context.now(), { field: 'cameAt', at: said.cameAt });
    if (slot.state === 'not-come') {
      if (isHere) await comeLate(tx, context, session, { slot, cameAt });
    } else if ((slot.cameAt !== null) !== isHere)
      await updateSlot(tx, slot, { cameAt: isHere ? cameAt : null });
    return findSlot(tx, session, slotId);
  });
}

async function findSlot(tx: Tx, session: PackingSessionRow, slotId: string): Promise<SlotOf> {
  const { storehouseId, packingSessionId } = session;
  const { slots, freed } = await listSlots(tx, storehouseId, packingSessionId);
  const found = [...slots, ...freed].find(({ slot }) => slot.packingSlotId === slotId);
  if (!found) throw new Problem('thing-not-found', { thing: 'slot' });
  return found;
}

/**
 * That its time was freed stays written (`freedAt`); what it waits for is asked for now, behind those who waited before. Who was
 * in time, and whose tick had no signal, gets no other: the old one may be somebody else's by now.
 */
async function comeLate(
  tx: Tx,
  context: Context,
  session: PackingSessionRow,
  { slot, cameAt }: { slot: PackingSlotRow; cameAt: Date },
): Promise<void> {
  const now = context.now();
  const { slots } = await listSlots(tx, session.storehouseId, session.packingSessionId);
  const place = nextPlace(session, slots, minutesIn(slot), now);
  const wait = { state: 'waiting', line: null, askedAt: now };
  await updateSlot(tx, slot, { cameAt, ...(place === null ? wait : { state: 'booked', ...place }) });
}

/**
 * Work in the background: a time that nobody came for goes to whoever waits. Only on a day that has begun: where the lead starts
 * late, the grace counts from that moment, since nobody could be at the line before.
 */
export const freeUnusedSlots: WorkTask = {
  async settle(tx, { context }) {
    const { storehouseId } = context.actor;
    const begunBy = new Date(context.now().getTime() - GRACE_MS);
    for (const sessionId of await listSessionsUnmet(tx, storehouseId, begunBy))
      await freeMissed(tx, context, await lockSession(tx, storehouseId, sessionId), begunBy);
  },
};

/** All of a locked session's at once, read behind its lock; then whoever waited longest chooses first among what is free. */
async function freeMissed(
  tx: Tx,
  context: Context,
  session: PackingSessionRow,
  begunBy: Date,
): Promise<void> {
  const { storehouseId, packingSessionId } = session;
  const { slots } = await listSlots(tx, storehouseId, packingSessionId);
  const here = await listHouseholdsHere(tx, storehouseId, packingSessionId);
  const missed = slots.filter(({ slot }) => isMissed(session, slot, begunBy) && !here.has(slot.householdId));
  for (const { slot } of missed) await free(tx, context, session, slot);
  if (missed.length > 0) await promoteWaiting(tx, context, session);
}

const isMissed = (session: PackingSessionRow, slot: PackingSlotRow, begunBy: Date): boolean =>
  session.stage === 'running' &&
  slot.state === 'booked' &&
  slot.cameAt === null &&
  slot.startsAt <= begunBy &&
  (session.startedAt === null || session.startedAt <= begunBy);

async function free(
  tx: Tx,
  context: Context,
  session: PackingSessionRow,
  slot: PackingSlotRow,
): Promise<void> {
  await updateSlot(tx, slot, { state: 'not-come', freedAt: context.now() });
  await tellHousehold(tx, context, session, {
    householdId: slot.householdId,
    says: `Nobody came to ${session.name} within ${GRACE_MINUTES} minutes of your time, so it is free for others. Say there that you are here, and you get the next one.`,
  });
}

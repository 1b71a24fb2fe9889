import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow } from '@sheafbook/db/tables';
import { slotMinutes } from '@sheafbook/packing';
import { wallTimeInZone } from '@sheafbook/units';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { writeNotice } from '../notice/use-cases.ts';
import { toLineWish } from './plan.ts';
import { mayPlanSessions } from './policy.ts';
import { insertSlot, listSlots, listWishes, loadSession, lockSession, updateSlot } from './queries.ts';
import type { SlotWish } from './schema.ts';
import { fillingHours, freeStarts, lineFor, movedBy, promotable } from './slots.ts';
import { requireSessionStage } from './stage.ts';

/** How long the household's own containers keep a line busy, and when it could begin. */
export function readFreeTimes(context: Context, sessionId: string) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(
    context,
    async (tx) => {
      const session = await loadSession(tx, storehouseId, sessionId);
      const minutes = await minutesOf(tx, session, householdId);
      const { slots } = await listSlots(tx, storehouseId, sessionId);
      return { minutes, starts: minutes === 0 ? [] : freeStarts(session, slots, minutes) };
    },
    { isReadOnly: true },
  );
}

/** Line-minutes of what a household wants packed; 0 when it wants nothing. */
async function minutesOf(tx: Tx, session: PackingSessionRow, householdId: string): Promise<number> {
  const { storehouseId, packingSessionId: sessionId, stations, peopleALine: people } = session;
  const wishes = await listWishes(tx, storehouseId, { sessionId, householdId });
  if (wishes.length === 0) return 0;
  const turn = wishes.map((row) => toLineWish(row, new Map()));
  return slotMinutes(turn, { stations, people });
}

/**
 * Books a household's time on a line, as long as its own containers take there. The session's row is locked, so that two who
 * ask for the last line come one after the other; the database refuses a second one in any case.
 */
export function bookSlot(context: Context, sessionId: string, wish: SlotWish) {
  const { storehouseId, personId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSessionStage(session, 'open');
    const { slots } = await listSlots(tx, storehouseId, sessionId);
    if (slots.some(({ slot }) => slot.householdId === householdId))
      throw new Problem('already-there', {
        detail: 'You have a time already. Give it back to choose another.',
      });
    const minutes = await minutesOf(tx, session, householdId);
    if (minutes === 0)
      throw new Problem('nothing-to-post', {
        detail: 'Say first what you want packed; the time follows from it.',
      });
    const startsAt = new Date(wish.startsAt);
    const endsAt = new Date(startsAt.getTime() + minutes * 60_000);
    refuseOutside(session, { startsAt, endsAt, minutes });
    const line = lineFor(session, slots, { startMs: startsAt.getTime(), endMs: endsAt.getTime() });
    if (line === null && !wish.orWait)
      throw noLineFree(context, session, freeStarts(session, slots, minutes));
    return insertSlot(tx, {
      ...{ storehouseId, packingSlotId: newId(context), packingSessionId: sessionId, householdId },
      ...{ line, startsAt, endsAt, state: line === null ? 'waiting' : 'booked' },
      ...{ askedAt: context.now(), askedBy: personId },
    });
  });
}

function refuseOutside(
  session: PackingSessionRow,
  wish: { startsAt: Date; endsAt: Date; minutes: number },
): void {
  const { startMs, endMs } = fillingHours(session);
  if (wish.startsAt.getTime() >= startMs && wish.endsAt.getTime() <= endMs) return;
  throw fieldProblem(
    'invalid-input',
    'startsAt',
    `Your containers take ${wish.minutes} min; that does not lie between setting up and cleaning down from then on.`,
  );
}

function noLineFree(
  { actor }: Context,
  session: PackingSessionRow,
  starts: readonly { startMs: number; endMs: number }[],
): Problem {
  const next = starts[0] && wallTimeInZone(starts[0].startMs, actor.timeZone).slice(11);
  const message =
    next === undefined
      ? `${session.name} has no line left for that long. You can wait for one.`
      : `No line is free then. The first one that is begins at ${next}.`;
  return new Problem('line-taken', {
    detail: message,
    fields: [{ field: 'startsAt', message }],
    starts: starts.map(({ startMs, endMs }) => ({
      from: new Date(startMs).toISOString(),
      until: new Date(endMs).toISOString(),
    })),
  });
}

/** Gives a time back, and gives it to whoever waited longest and fits. The household's own, or any by who plans the day. */
export function giveSlotBack(context: Context, sessionId: string, slotId: string) {
  const { storehouseId, householdId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    const { slots } = await listSlots(tx, storehouseId, sessionId);
    const given = slots.find(({ slot }) => slot.packingSlotId === slotId);
    if (!given) throw new Problem('thing-not-found', { thing: 'slot' });
    if (given.slot.householdId !== householdId && !mayPlanSessions(context.actor))
      throw new Problem('not-your-household');
    requireSessionStage(session, 'open', 'running');
    await updateSlot(tx, given.slot, { state: 'given-back' });
    await promoteWaiting(tx, context, session);
    if (given.slot.householdId !== householdId)
      await tellHousehold(tx, context, session, {
        householdId: given.slot.householdId,
        says: `Your time at ${session.name} was given back by who plans it. Choose another one.`,
      });
  });
}

/** A line that has become free goes to whoever waited longest and fits. */
export async function promoteWaiting(tx: Tx, context: Context, session: PackingSessionRow): Promise<void> {
  const { slots } = await listSlots(tx, session.storehouseId, session.packingSessionId);
  for (const { slot, ...place } of promotable(session, slots, context.now())) {
    await updateSlot(tx, slot, { state: 'booked', ...place });
    await tellPromoted(tx, context, session, { householdId: slot.householdId, startsAt: place.startsAt });
  }
}

/** The times of a session move along with it, and each household is told its new one. */
export async function moveSlots(
  tx: Tx,
  context: Context,
  { before, after }: { before: PackingSessionRow; after: PackingSessionRow },
): Promise<void> {
  const by = movedBy(before, after);
  if (by === 0) return;
  const { slots } = await listSlots(tx, after.storehouseId, after.packingSessionId);
  const inTurn = slots.toSorted((a, b) => a.slot.startsAt.getTime() - b.slot.startsAt.getTime());
  // The one that is in nobody's way goes first, so that no two are on a line at once even in between.
  for (const { slot } of by > 0 ? inTurn.toReversed() : inTurn) {
    const startsAt = new Date(slot.startsAt.getTime() + by);
    await updateSlot(tx, slot, { startsAt, endsAt: new Date(slot.endsAt.getTime() + by) });
    const [on = '', at = ''] = wallTimeInZone(startsAt.getTime(), context.actor.timeZone).split('T');
    await tellHousehold(tx, context, after, {
      householdId: slot.householdId,
      says: `${after.name} has moved, and your time with it: ${on} at ${at}.`,
    });
  }
}

function tellPromoted(
  tx: Tx,
  context: Context,
  session: PackingSessionRow,
  { householdId, startsAt }: { householdId: string; startsAt: Date },
) {
  const [on = '', at = ''] = wallTimeInZone(startsAt.getTime(), context.actor.timeZone).split('T');
  return tellHousehold(tx, context, session, {
    householdId,
    says: `A line has become free: you are booked at ${session.name} on ${on} at ${at}.`,
  });
}

export function tellHousehold(
  tx: Tx,
  context: Context,
  session: PackingSessionRow,
  { householdId, says }: { householdId: string; says: string },
) {
  return writeNotice(tx, context, {
    ...{ kind: 'packing', audience: { to: 'household', householdId }, about: session.name, says },
    path: `/packing-sessions/${session.packingSessionId}`,
  });
}

import type { Tx } from '@sheafbook/db';
import type { ContainerKindRow } from '@sheafbook/db/tables';
import { massAccount, moveGrams, spilled } from '@sheafbook/ledger';
import { dayInZone, spellCode } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { happenedByNow } from '../../platform/happened-at.ts';
import { newId } from '../../platform/new-id.ts';
import { postEntry, reverseEntry } from '../../platform/post-entry.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadContainer, lockContainer, refuseOffered } from '../container/queries.ts';
import { judgeContainerFill, judgeFromBagsAt, makeContainers } from '../container/use-cases.ts';
import { listAllContainerKinds, loadContainerKind } from '../container-kind/queries.ts';
import { writeNotice } from '../notice/use-cases.ts';
import { lockSession } from '../packing-session/queries.ts';
import { lastSerial } from '../pour-log/queries.ts';
import { loadOutsideVessels } from '../storehouse/queries.ts';
import { holdLate } from './late.ts';
import { listContents } from './queries.ts';
import { insertReCan, listHoldsOf, listReCanned, lockReCan, markReCanUndone } from './queries-re-can.ts';
import type { ReCanning } from './schema.ts';
import { findStop, wasClosedBefore } from './stop.ts';

type OldCan = {
  readonly containerId: string;
  readonly spilledGrams: number;
  readonly sessionId: string;
  readonly line: number;
  readonly sessionName: string;
};

/**
 * Moves what is in containers whose seal did not pass into new ones, gram by gram under the same owner and of the same lot: one
 * entry for each. The old code ends with it, and the owner is told the new one. Its line closed the new one too, so it has the
 * line's next serial; the session is locked first, as by whoever pours.
 */
export function reCan(context: Context, wish: ReCanning) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const kind = await loadContainerKind(tx, storehouseId, wish.containerKindId);
    const ids = wish.containers.map(({ containerId }) => containerId);
    for (const id of await listSessionsOf(tx, storehouseId, ids)) await lockSession(tx, storehouseId, id);
    for (const id of ids.toSorted()) await lockContainer(tx, storehouseId, id);
    await refuseOffered(tx, storehouseId, { containerIds: ids, now: context.now() });
    const old = await listAnswered(tx, storehouseId, wish);
    const doneAt = happenedByNow(context.now(), { field: 'doneAt', at: wish.doneAt });
    for (const { sessionId, line } of old) {
      const stop = await findStop(tx, storehouseId, { sessionId, line, kindCode: kind.kindCode });
      if (stop && !wasClosedBefore(stop, doneAt)) throw new Problem('machine-is-out');
    }
    const done = [];
    for (const [at, can] of old.entries())
      done.push(await fillAnew(tx, context, { can, at, kind, wish, doneAt }));
    await tellMoved(tx, context, done);
    const lines = new Map(done.map(({ sessionId, line }) => [`${sessionId} ${line}`, { sessionId, line }]));
    for (const line of lines.values()) await holdLate(tx, context, line);
    return done;
  });
}
export type Moved = Awaited<ReturnType<typeof reCan>>;

/** The sessions whose lines closed some containers that were in doubt, in a fixed order. */
async function listSessionsOf(tx: Tx, storehouseId: string, containerIds: readonly string[]) {
  const holds = await listHoldsOf(tx, storehouseId, containerIds);
  return [...new Set(holds.map(({ check }) => check.packingSessionId))].toSorted();
}

/** The containers that are to go into new ones; any other is refused, each in its own words. */
async function listAnswered(tx: Tx, storehouseId: string, { containers }: ReCanning): Promise<OldCan[]> {
  const ids = containers.map(({ containerId }) => containerId);
  const holds = await listHoldsOf(tx, storehouseId, ids);
  const moved = await listReCanned(tx, storehouseId, ids);
  return containers.map(({ containerId, spilledGrams }, at) => {
    const own = holds.filter(({ hold }) => hold.containerId === containerId);
    const already = moved.find(({ reCan: row }) => row.oldContainerId === containerId);
    const last = own.at(-1);
    if (!last) throw new Problem('thing-not-found', { thing: 'hold' });
    if (already)
      throw fieldProblem(
        'already-there',
        `containers.${at}.containerId`,
        `What was in it is in ${spellCode(already.newCode)} already.`,
      );
    if (own.some(({ hold }) => hold.disposition === null)) throw new Problem('container-in-doubt');
    if (last.hold.disposition !== 're-can')
      throw fieldProblem(
        'invalid-input',
        `containers.${at}.containerId`,
        'This container was answered for otherwise; it goes into no new one.',
      );
    const { packingSessionId: sessionId, line } = last.check;
    return { containerId, spilledGrams, sessionId, line, sessionName: last.sessionName };
  });
}

async function fillAnew(
  tx: Tx,
  context: Context,
  {
    can,
    at,
    kind,
    wish,
    doneAt,
  }: { can: OldCan; at: number; kind: ContainerKindRow; wish: ReCanning; doneAt: Date },
) {
  const { storehouseId, personId } = context.actor;
  const [content] = await listContents(tx, storehouseId, [can.containerId]);
  const householdId = content?.householdId ?? null;
  const grams = (content?.grams ?? 0) - can.spilledGrams;
  if (!content || householdId === null || grams <= 0)
    throw fieldProblem(
      'not-enough-left',
      `containers.${at}.spilledGrams`,
      `${content?.grams ?? 0} g are in this container; more can’t go into a new one.`,
    );
  const { container, food } = await loadContainer(tx, storehouseId, {
    householdId,
    containerId: can.containerId,
  });
  const { treatment } = wish;
  const { moistureTenths, lotId } = container;
  const kinds = await listAllContainerKinds(tx, storehouseId);
  const toPack = { treatment, gramsEach: grams, moistureTenths: [moistureTenths] };
  const { warnings, nearest } = judgeFromBagsAt(toPack, { kind, food, kinds }, 'treatment');
  judgeContainerFill(grams, kind, food, 'containerKindId', nearest);
  const packedOn = dayInZone(doneAt.getTime(), context.actor.timeZone);
  const [made] = await makeContainers(tx, context, {
    ...{ kind, householdId, lotId, packedOn, count: 1, note: '', treatment },
    moistureTenths,
  });
  if (!made) throw new Error('one container was asked for');
  const from = { lotId, fromVesselId: can.containerId, ownerId: householdId };
  const drafts = moveGrams({
    lotId,
    from: massAccount(can.containerId, householdId),
    to: massAccount(made.containerId, householdId),
    amountGrams: grams,
  });
  const outsideVesselId = (await loadOutsideVessels(tx, storehouseId))('spilled');
  const entry = await postEntry(tx, context, {
    ...{ what: 're-canned', onDay: todayOf(context), subjectId: made.containerId, note: wish.note },
    enteredFor: householdId,
    drafts: [
      drafts,
      ...(can.spilledGrams > 0 ? spilled({ ...from, outsideVesselId, amountGrams: can.spilledGrams }) : []),
    ],
  });
  const reCanId = newId(context);
  const { sessionId, line, sessionName } = can;
  const serial = (await lastSerial(tx, storehouseId, { sessionId, line })) + 1;
  await insertReCan(tx, {
    ...{ storehouseId, reCanId, oldContainerId: can.containerId, newContainerId: made.containerId },
    ...{ householdId, grams, spilledGrams: can.spilledGrams, note: wish.note, entryId: entry.entryId },
    ...{ packingSessionId: sessionId, line, serial, doneBy: personId, doneAt },
  });
  const codes = { oldCode: container.containerCode, newCode: made.containerCode };
  return { reCanId, entry, householdId, sessionId, sessionName, line, serial, grams, warnings, ...codes };
}

type Done = {
  readonly householdId: string;
  readonly sessionName: string;
  readonly oldCode: string;
  readonly newCode: string;
};

async function tellMoved(tx: Tx, context: Context, done: readonly Done[]): Promise<void> {
  for (const householdId of new Set(done.map((one) => one.householdId))) {
    const own = done.filter((one) => one.householdId === householdId);
    const pairs = own.map(({ oldCode, newCode }) => `${spellCode(oldCode)} → ${spellCode(newCode)}`);
    await writeNotice(tx, context, {
      ...{ kind: 'packing', audience: { to: 'household', householdId } },
      about: own[0]?.sessionName ?? '',
      says: `What was in doubt stands in new containers now: ${pairs.join(', ')}. The old codes have ended.`,
      path: '/shelf',
    });
  }
}

/** Takes it back while nothing was taken out of the new container: the grams are in the old one again, and its code holds. */
export function undoReCan(context: Context, reCanId: string, { reason }: { reason: string }) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const row = await lockReCan(tx, storehouseId, reCanId);
    const { householdId, newContainerId, oldContainerId } = row;
    if (row.undoneEntryId !== null) throw new Problem('already-reversed');
    for (const id of [newContainerId, oldContainerId].toSorted()) await lockContainer(tx, storehouseId, id);
    const anew = await loadContainer(tx, storehouseId, { householdId, containerId: newContainerId });
    const before = await loadContainer(tx, storehouseId, { householdId, containerId: oldContainerId });
    if (anew.grams < row.grams || anew.container.openedOn !== null)
      throw new Problem('cannot-reverse', {
        detail: `${anew.container.containerCode} has been eaten from or is empty already.`,
        containers: [anew.container.containerCode],
      });
    const entry = await reverseEntry(tx, context, {
      ...{ what: 're-can-undone', onDay: todayOf(context), reversesId: row.entryId },
      ...{ subjectId: oldContainerId, note: reason, enteredFor: householdId },
    });
    await markReCanUndone(tx, row, entry.entryId);
    const codes = [anew, before].map(({ container }) => spellCode(container.containerCode));
    const [hold] = await listHoldsOf(tx, storehouseId, [oldContainerId]);
    await writeNotice(tx, context, {
      ...{ kind: 'packing', audience: { to: 'household', householdId } },
      about: hold?.sessionName ?? '',
      says: `Nothing went into ${codes[0]}: that was taken back. It is in ${codes[1]} still.`,
      path: '/shelf',
    });
    return entry;
  });
}

import type { Tx } from '@sheafbook/db';
import type { ContainerKindRow, FoodRow, PackingSessionRow } from '@sheafbook/db/tables';
import { poured, reweighed, sampled, spilled } from '@sheafbook/ledger';
import { dayInZone } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { happenedAt, happenedByNow } from '../../platform/happened-at.ts';
import { newId } from '../../platform/new-id.ts';
import { postEntry, reverseEntry } from '../../platform/post-entry.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { noteMoisture, updateMoisture } from '../bag/queries.ts';
import {
  judgeAbsorbersIn,
  judgeContainerFill,
  judgeFromBagsAt,
  lockBagOfOwner,
} from '../container/use-cases.ts';
import { listAllContainerKinds, loadContainerKind } from '../container-kind/queries.ts';
import { requireTareOfKind } from '../container-tare/use-cases.ts';
import { loadHousehold } from '../household/queries.ts';
import { containersToFill, labelsSay } from '../label-ahead/use-cases.ts';
import {
  listWishes,
  loadSession,
  lockSession,
  lockSessionForShare,
  updateSession,
} from '../packing-session/queries.ts';
import { keepStood, requireSessionStage } from '../packing-session/use-cases.ts';
import { findStop, holdLate, listUnchecked, refuseStopped, refuseUnchecked } from '../seam/use-cases.ts';
import { loadOutsideVessels } from '../storehouse/queries.ts';
import { balanceOf, driedGrams, isUnexplained } from './balance.ts';
import {
  insertBroughtBag,
  insertLoss,
  insertPack,
  insertPours,
  lastSerial,
  listBringable,
  listBroughtBags,
  listLosses,
  listPacks,
  listPours,
  listPoursOfEntry,
  lockBroughtBag,
  markUndone,
  shutPack,
  updateLeft,
} from './queries.ts';
import { listQueues } from './queries-queues.ts';
import type { BringBag, LeftWish, LossWish, PackWish, PourWish } from './schema.ts';
import { scaleOf } from './weighed.ts';

/** The log of a session: what came, every container, what is unaccounted for, and the absorbers that stand open. */
export function readLog(context: Context, sessionId: string) {
  return withTx(context, async (tx) => {
    const log = await loadLog(tx, context, sessionId);
    const bags = log.balance.map(({ row }) => row.brought.householdId);
    await notePrivateRead(tx, context, {
      householdIds: [...bags, ...log.pours.map(({ pour }) => pour.householdId)],
      ...{ what: 'bags and containers at a session', purpose: 'pour log' },
    });
    return log;
  });
}
export type LogReading = Awaited<ReturnType<typeof readLog>>;

async function loadLog(tx: Tx, context: Context, sessionId: string) {
  const { storehouseId } = context.actor;
  const session = await loadSession(tx, storehouseId, sessionId);
  const bags = await listBroughtBags(tx, storehouseId, sessionId);
  const pours = await listPours(tx, storehouseId, sessionId);
  const losses = await listLosses(tx, storehouseId, sessionId);
  const packs = await listPacks(tx, storehouseId, sessionId);
  const wishes = await listWishes(tx, storehouseId, { sessionId });
  const unchecked = await listUnchecked(tx, storehouseId, sessionId);
  const queues = await listQueues(tx, storehouseId, sessionId);
  const balance = balanceOf(bags, pours, losses);
  const labelsSayOn = labelsSay(context, session);
  const log = { session, labelsSayOn, pours, losses, packs, queues, wishes, unchecked, balance };
  return { ...log, now: context.now() };
}

/** The bags that may come to the line, of those who want something packed. */
export function readBringable(context: Context, sessionId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadSession(tx, storehouseId, sessionId);
    const rows = await listBringable(tx, storehouseId, sessionId);
    await notePrivateRead(tx, context, {
      householdIds: rows.map(({ household }) => household.householdId),
      ...{ what: 'shares in bags', purpose: 'pour log' },
    });
    return rows;
  });
}

/** A household's part of a bag comes to the line, with what the book says is in it. Bringing it twice changes nothing. */
export function bringBag(context: Context, sessionId: string, wish: BringBag) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    await lockRunning(tx, context, sessionId);
    await loadHousehold(tx, storehouseId, wish.householdId);
    const { ownGrams } = await lockBagOfOwner(tx, storehouseId, {
      ...{ bagId: wish.bagId, ownerId: wish.householdId, grams: 1, field: 'bagId' },
    });
    await insertBroughtBag(tx, {
      ...{ storehouseId, packingSessionId: sessionId, ...wish, broughtGrams: ownGrams },
      ...{ broughtBy: personId, broughtAt: context.now() },
    });
    return loadLog(tx, context, sessionId);
  });
}

const lockRunning = async (tx: Tx, { actor }: Context, sessionId: string): Promise<PackingSessionRow> => {
  const session = await lockSessionForShare(tx, actor.storehouseId, sessionId);
  requireSessionStage(session, 'running');
  return session;
};

/**
 * Logs containers that a line has closed, as one entry: each with its code, its serial and its own grams, from the household's
 * part of a bag. Whoever logs on the same line waits a moment, so that serials have no gap and none comes twice.
 */
export function logPours(context: Context, sessionId: string, wish: PourWish) {
  const { storehouseId, personId } = context.actor;
  const { line, bagId, householdId, treatment, targetGrams, absorberMillilitres } = wish;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSessionStage(session, 'running');
    if (line > session.lines)
      throw fieldProblem('invalid-input', 'line', `The session has ${session.lines} lines.`);
    await lockBroughtBag(tx, storehouseId, { sessionId, bagId, householdId });
    const { bag, food } = await lockBagOfOwner(tx, storehouseId, {
      ...{ bagId, ownerId: householdId, grams: wish.grams.reduce((sum, grams) => sum + grams, 0) },
      field: `grams.${wish.grams.length - 1}`,
    });
    const kind = await loadContainerKind(tx, storehouseId, wish.containerKindId);
    const pouredAt = happenedAt(context.now(), { field: 'pouredAt', at: wish.pouredAt });
    const stop = await findStop(tx, storehouseId, { sessionId, line, kindCode: kind.kindCode });
    if (stop) refuseStopped(stop, line, pouredAt);
    const containerTareId = await requireTareOfKind(tx, storehouseId, wish);
    const kinds = await listAllContainerKinds(tx, storehouseId);
    const warnings = judgePacks(wish, bag.moistureTenthsPercent, { kind, food, kinds });
    const packedOn = dayInZone(pouredAt.getTime(), context.actor.timeZone);
    const made = await containersToFill(tx, context, {
      ...{ kind, householdId, lotId: bag.lotId, packedOn, note: '', treatment, session },
      codes: wish.codes ?? wish.grams.map(() => null),
      moistureTenths: bag.moistureTenthsPercent,
    });
    const gramsOf = (at: number) => wish.grams[at] ?? 0;
    const entry = await postEntry(tx, context, {
      ...{ what: 'session-poured', onDay: todayOf(context), buyId: bag.buyId, subjectId: sessionId },
      enteredFor: householdId,
      drafts: made.flatMap(({ containerId }, at) =>
        poured({
          ...{ lotId: bag.lotId, bagVesselId: bagId, containerVesselId: containerId, ownerId: householdId },
          amountGrams: gramsOf(at),
        }),
      ),
    });
    const before = await lastSerial(tx, storehouseId, { sessionId, line });
    await insertPours(
      tx,
      made.map(({ containerId }, at) => ({
        ...{ storehouseId, packingPourId: newId(context), packingSessionId: sessionId, line },
        ...{ serial: before + at + 1, householdId, bagId, containerId, targetGrams, grams: gramsOf(at) },
        ...{ treatment, absorberMillilitres, entryId: entry.entryId, pouredBy: personId },
        ...{ pouredAt, recordedAt: context.now(), weighedHow: wish.weighed.how, containerTareId },
        ...scaleOf(wish.weighed, at),
      })),
    );
    await holdLate(tx, context, { sessionId, line });
    const codes = made.map(({ containerId, containerCode }, at) => ({
      ...{ id: containerId, code: containerCode, serial: before + at + 1, grams: gramsOf(at) },
    }));
    return {
      ...{ entry, containers: codes },
      warnings: [...new Set([...warnings, ...sayOtherDay(wish, session, { packedOn, context })])],
    };
  });
}

/** What stands on a label that was printed for the planned day is wrong where the line ran on another. */
function sayOtherDay(
  { codes = [] }: PourWish,
  session: PackingSessionRow,
  { packedOn, context }: { packedOn: string; context: Context },
): string[] {
  const plannedOn = labelsSay(context, session);
  return packedOn === plannedOn || codes.every((code) => code === null)
    ? []
    : [`The labels made ahead say ${plannedOn}; the book says ${packedOn}. Print these labels anew.`];
}

/** Refuses a container that is too small, a treatment that is not safe in it, and packets that are too few for its air. */
function judgePacks(
  { treatment, grams, absorberMillilitres }: PourWish,
  moistureTenths: number | null,
  about: { kind: ContainerKindRow; food: FoodRow; kinds: readonly ContainerKindRow[] },
): string[] {
  const { kind, food } = about;
  return grams.flatMap((gramsEach, at) => {
    const toPack = { treatment, gramsEach, moistureTenths: [moistureTenths] };
    const { warnings, nearest } = judgeFromBagsAt(toPack, about, 'treatment');
    const filling = judgeContainerFill(gramsEach, kind, food, `grams.${at}`, nearest);
    if (absorberMillilitres !== null) judgeAbsorbersIn({ gramsEach, absorberMillilitres }, kind, food);
    return [...warnings, ...filling];
  });
}

/** Puts what one entry poured back into its bag; refused once something was taken out of a container. */
export function undoPours(context: Context, sessionId: string, wish: { entryId: string; reason: string }) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await lockRunning(tx, context, sessionId);
    const rows = await listPoursOfEntry(tx, storehouseId, wish.entryId);
    const [first] = rows;
    if (!first || first.pour.packingSessionId !== sessionId)
      throw new Problem('thing-not-found', { thing: 'pour' });
    if (first.pour.undoneEntryId !== null) throw new Problem('already-reversed');
    const gone = rows.filter(({ grams, pour }) => grams < pour.grams).map(({ code }) => code);
    if (gone.length > 0)
      throw new Problem('cannot-reverse', {
        detail: `${gone.join(', ')} has been eaten from or is empty already.`,
        containers: gone,
      });
    const entry = await reverseEntry(tx, context, {
      ...{
        what: 'session-pour-undone',
        onDay: todayOf(context),
        reversesId: wish.entryId,
        subjectId: sessionId,
      },
      ...{ note: wish.reason, enteredFor: first.pour.householdId },
    });
    await markUndone(tx, storehouseId, { entryId: wish.entryId, undoneEntryId: entry.entryId });
    return entry;
  });
}

/** What fell beside the container or went into a sample jar, at the hour at which a pen or a phone wrote it. */
export function logLoss(context: Context, sessionId: string, wish: LossWish) {
  const { storehouseId } = context.actor;
  const { bagId, householdId, grams, to, note } = wish;
  return withTx(context, async (tx) => {
    await lockRunning(tx, context, sessionId);
    await lockBroughtBag(tx, storehouseId, { sessionId, bagId, householdId });
    const { bag } = await lockBagOfOwner(tx, storehouseId, {
      bagId,
      ownerId: householdId,
      grams,
      field: 'grams',
    });
    const outsideOf = await loadOutsideVessels(tx, storehouseId);
    const leaving = {
      ...{ lotId: bag.lotId, fromVesselId: bagId, outsideVesselId: outsideOf(to) },
      ...{ ownerId: householdId, amountGrams: grams },
    };
    const recordedAt = context.now();
    const lostAt = happenedByNow(recordedAt, { field: 'lostAt', at: wish.lostAt });
    const { entryId } = await postEntry(tx, context, {
      ...{ what: `session-${to}`, onDay: todayOf(context), buyId: bag.buyId, subjectId: sessionId, note },
      enteredFor: householdId,
      drafts: to === 'spilled' ? spilled(leaving) : sampled(leaving),
    });
    await insertLoss(tx, {
      ...{ storehouseId, entryId, packingSessionId: sessionId, bagId, householdId, recordedAt },
      lostAt,
    });
    return loadLog(tx, context, sessionId);
  });
}

/** Writes down what was weighed back of a bag. Nothing is posted before the session is signed. */
export function weighLeft(context: Context, sessionId: string, wish: LeftWish) {
  const { storehouseId } = context.actor;
  const { leftGrams, because, moisture, ...one } = wish;
  return withTx(context, async (tx) => {
    await lockRunning(tx, context, sessionId);
    const brought = await lockBroughtBag(tx, storehouseId, { sessionId, ...one });
    const { wasTenths, isTenths } = moisture ?? { wasTenths: null, isTenths: null };
    await updateLeft(tx, brought, { leftGrams, differenceBecause: because, wasTenths, isTenths });
    return loadLog(tx, context, sessionId);
  });
}

/**
 * Signs a session's mass: every rest is weighed, what nobody can account for lies within what a scale explains or has a named
 * cause, and a good check stands behind every seal that is not held. The difference of each bag is booked, so that
 * in = containers + left + spilled + sampled + moisture + unexplained.
 */
export function signSession(context: Context, sessionId: string) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, sessionId);
    requireSessionStage(session, 'running');
    const { balance, unchecked } = await loadLog(tx, context, sessionId);
    refuseUnbalanced(balance);
    refuseUnchecked(unchecked);
    const outsideOf = await loadOutsideVessels(tx, storehouseId);
    const unexplainedVesselId = outsideOf('unexplained');
    for (const { row, leftInBagsGrams } of balance) {
      const { bag, brought } = row;
      const { wasTenths, isTenths } = brought;
      if (isTenths !== null) await updateMoisture(tx, bag, isTenths); // also where it explains nothing
      const owner = { bagId: bag.bagId, ownerId: brought.householdId, grams: 0, field: 'leftGrams' };
      const { ownGrams } = await lockBagOfOwner(tx, storehouseId, owner);
      const dried = driedGrams(brought, { bookedGrams: ownGrams, leftInBagsGrams });
      const drafts = reweighed({
        ...{ lotId: bag.lotId, vesselId: bag.bagId, unexplainedVesselId, weighedGrams: leftInBagsGrams },
        owners: [{ ownerId: brought.householdId, bookedGrams: ownGrams }],
        moisture: { vesselId: outsideOf('moisture'), grams: 0 - dried },
      });
      if (drafts.length === 0) continue;
      const entry = await postEntry(tx, context, {
        ...{
          what: 'session-difference',
          onDay: todayOf(context),
          buyId: bag.buyId,
          subjectId: sessionId,
          drafts,
        },
        ...{ note: brought.differenceBecause, enteredFor: brought.householdId },
      });
      if (dried === 0 || wasTenths === null || isTenths === null) continue;
      const change = { wasTenths, isTenths, bookedGrams: ownGrams, weighedGrams: leftInBagsGrams };
      await noteMoisture(tx, bag, { entryId: entry.entryId, ...change });
    }
    await updateSession(tx, session, { stage: 'signed', signedBy: personId, signedAt: context.now() });
    await keepStood(tx, session);
    return loadLog(tx, context, sessionId);
  });
}

function refuseUnbalanced(balance: ReturnType<typeof balanceOf>): void {
  const unweighed = balance.filter(({ isWeighed }) => !isWeighed).map(({ row }) => row.bag.bagCode);
  if (unweighed.length > 0)
    throw new Problem('cannot-sign', {
      detail: `What is left in ${unweighed.join(', ')} has not been weighed yet.`,
      bags: unweighed,
    });
  const off = balance.find(isUnexplained);
  if (off)
    throw new Problem('cannot-sign', {
      detail: `${Math.abs(off.unaccountedGrams)} g of ${off.row.bag.bagCode} are not accounted for; ${off.toleranceGrams} g are explained by dust and scales. Weigh again, or say why.`,
      bags: [off.row.bag.bagCode],
    });
}

/** A pack of absorbers is opened; its clock starts. */
export function openPack(context: Context, sessionId: string, wish: PackWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    await lockRunning(tx, context, sessionId);
    const { openedAt: at, ...pack } = wish;
    return insertPack(tx, {
      ...{ storehouseId, absorberPackId: newId(context), packingSessionId: sessionId, ...pack },
      ...{ openedAt: happenedAt(context.now(), { field: 'openedAt', at }), openedBy: personId },
    });
  });
}

/** What is left of a pack goes into its jar; its clock stops. */
export function closePack(
  context: Context,
  sessionId: string,
  wish: { packId: string; packetsLeft: number; shutAt?: string | undefined },
) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await lockRunning(tx, context, sessionId);
    const open = (await listPacks(tx, storehouseId, sessionId)).find(
      ({ absorberPackId }) => absorberPackId === wish.packId,
    );
    if (!open) throw new Problem('thing-not-found', { thing: 'pack of absorbers' });
    if (open.shutAt !== null) throw new Problem('already-there', { detail: 'This pack is shut already.' });
    if (wish.packetsLeft > open.packets)
      throw fieldProblem('invalid-input', 'packetsLeft', `The pack held ${open.packets} packets.`);
    const shutAt = happenedAt(context.now(), { field: 'shutAt', at: wish.shutAt });
    if (shutAt < open.openedAt)
      throw fieldProblem('invalid-input', 'shutAt', 'A pack is shut after it was opened.');
    const shut = await shutPack(tx, storehouseId, { ...wish, sessionId, shutAt });
    if (!shut) throw new Problem('already-there', { detail: 'This pack is shut already.' });
    return shut;
  });
}

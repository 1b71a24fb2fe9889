import type { Tx } from '@sheafbook/db';
import type { PackingSessionRow, SealCheckRow, SealMachineRow } from '@sheafbook/db/tables';
import { type SeamFault, seamFaultsOf, standsUpTo, stopsOf } from '@sheafbook/packing';
import type { Context } from '../../platform/context.ts';
import { happenedByNow } from '../../platform/happened-at.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadContainerKind } from '../container-kind/queries.ts';
import { isYoungHand, loadSession, lockSession } from '../packing-session/queries.ts';
import { holdDoubts } from './holding.ts';
import { openHoldsOf } from './late.ts';
import { checkOf, doubtsAt, momentOf, timed } from './moments.ts';
import {
  type EverClosed,
  insertCheck,
  insertMachine,
  listChecks,
  listChecksSince,
  listEverClosed,
  listLimits,
  listMachines,
  listSealHolds,
  lockMachine,
  updateMachine,
  upsertLimit,
} from './queries.ts';
import type { CheckWish, LimitWish, MachineWish } from './schema.ts';
import { tellFailed } from './telling.ts';
import { noteOwnersRead } from './use-cases-watch.ts';

export { holdLate } from './late.ts';
export { inTheirOrder } from './moments.ts';
export { findStop, refuseStopped } from './stop.ts';
export { listUnchecked, refuseUnchecked } from './unchecked.ts';
export { readDoubt, readSeamLog } from './use-cases-log.ts';
export { listDoubtsOf } from './use-cases-own.ts';
export { readWatch, type WatchReading } from './use-cases-watch.ts';
export { lastGoodOf } from './windows.ts';

/** The machines, the limits of each kind of can, and what is still in doubt. */
export function readSeals(context: Context) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const holds = await listSealHolds(tx, storehouseId, 'open');
    await noteOwnersRead(tx, context, holds);
    return {
      machines: await listMachines(tx, storehouseId),
      limits: await listLimits(tx, storehouseId),
      holds,
    };
  });
}

export function addMachine(context: Context, wish: MachineWish) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const machines = await listMachines(tx, storehouseId);
    if (machines.some(({ name }) => name === wish.name))
      throw fieldProblem('already-there', 'name', `There is a machine called ${wish.name} already.`);
    return insertMachine(tx, { storehouseId, ...wish });
  });
}

/** Writes down what a maker allows. Checks that were made stand as they were judged. */
export function setLimits(context: Context, containerKindId: string, limit: LimitWish) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadContainerKind(tx, storehouseId, containerKindId);
    await upsertLimit(tx, { storehouseId, containerKindId, ...limit });
    return { containerKindId, ...limit };
  });
}

/**
 * Writes down a check, at the hour at which it was made. One that fails stops the machine and holds every container that its
 * line closed since the last good check of that kind; one that waited says of each container what it would have said in its
 * turn. The session is locked first, so that no container is closed between the check and the hold.
 */
export function checkSeal(context: Context, wish: CheckWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, wish.sessionId);
    if (await isYoungHand(tx, storehouseId, { sessionId: wish.sessionId, personId }))
      throw new Problem('too-young-for-machine');
    const machine = await lockMachine(tx, storehouseId, wish.machineId);
    await loadContainerKind(tx, storehouseId, wish.containerKindId);
    const run = await listEverClosed(tx, storehouseId, wish);
    const closedThrough = run.at(-1)?.serial ?? 0;
    if (wish.line > session.lines)
      throw fieldProblem('invalid-input', 'line', `The session has ${session.lines} lines.`);
    if (wish.serial !== null && wish.serial > closedThrough)
      throw fieldProblem(
        'invalid-input',
        'serial',
        `The line has closed ${closedThrough} containers so far.`,
      );
    const recordedAt = context.now();
    const checkedAt = checkedAtOf(session, recordedAt, wish.checkedAt);
    const isLive = checkedAt.getTime() === recordedAt.getTime();
    const named = run.find(({ serial }) => serial === wish.serial);
    const { goodMs, goodSerial } = standsUpTo(
      { atMs: checkedAt.getTime(), isLive, closedThrough },
      named ? momentOf(named) : null,
    );
    const faults = wish.measures === null ? [] : await judgeMeasures(tx, storehouseId, wish);
    const passed = wish.looksGood && faults.length === 0;
    const made = {
      ...{ storehouseId, sealCheckId: newId(context), sealMachineId: wish.machineId },
      ...{ packingSessionId: wish.sessionId, line: wish.line, serial: wish.serial },
      ...{ containerKindId: wish.containerKindId, how: wish.how, looksGood: wish.looksGood },
      ...{ measures: wish.measures, faults, passed, note: wish.note },
      ...{ checkedBy: personId, checkedAt, recordedAt, occasion: wish.occasion },
      ...{ gauge: wish.gauge, closedThrough, goodUntil: new Date(goodMs), goodSerial },
    };
    const window = passed ? null : await findWindow(tx, { ...made, suspectFrom: null, suspectTo: null }, run);
    const check = await insertCheck(tx, {
      ...made,
      ...{ suspectFrom: window?.fromSerial ?? null, suspectTo: window?.toSerial ?? null },
    });
    const held = await holdDoubts(tx, storehouseId, { ...wish, made: check });
    const outSince = await judgeMachine(tx, machine);
    const holds = await openHoldsOf(tx, storehouseId, held);
    await noteOwnersRead(tx, context, holds);
    await tellFailed(tx, context, holds);
    return { check, machine: { ...machine, outSince }, holds };
  });
}

/** When a check was made: now, or as the phone or the pen wrote it, within the day. */
function checkedAtOf({ startedAt }: PackingSessionRow, now: Date, said: string | undefined): Date {
  const at = happenedByNow(now, { field: 'checkedAt', at: said });
  if (said === undefined) return at;
  // A pen writes minutes.
  if (startedAt && at.getTime() < Math.floor(startedAt.getTime() / 60_000) * 60_000)
    throw fieldProblem('invalid-input', 'checkedAt', 'This was before the packing day began.');
  return at;
}

async function judgeMeasures(tx: Tx, storehouseId: string, wish: CheckWish): Promise<SeamFault[]> {
  const limit = (await listLimits(tx, storehouseId)).find(
    ({ containerKindId }) => containerKindId === wish.containerKindId,
  );
  if (!limit) throw new Problem('seam-limits-missing');
  const { measures } = wish;
  if (!measures) return [];
  const faults = seamFaultsOf(measures, limit);
  if (faults === null)
    throw fieldProblem(
      'invalid-input',
      'measures.widthMils',
      'A seam is wider than its plates; measure it again.',
    );
  return faults;
}

/** The numbers that a failed check puts in doubt, what is answered for or was put back too. */
async function findWindow(tx: Tx, failed: SealCheckRow, run: readonly EverClosed[]) {
  const { storehouseId, packingSessionId, sealCheckId, line } = failed;
  const checks = [...(await listChecks(tx, storehouseId, packingSessionId)), failed];
  const doubts = doubtsAt(line, checks, await listMachines(tx, storehouseId));
  const own = doubts.find(({ check }) => check.sealCheckId === sealCheckId);
  const serials = run.filter((one) => own?.has(one)).map(({ serial }) => serial);
  return serials.length === 0 ? null : { fromSerial: Math.min(...serials), toSerial: Math.max(...serials) };
}

/**
 * Whether the machine is out, told from all its checks in the order in which they were made: a fault stops it, three good ones
 * in a row since let it run. What was closed before it stopped says nothing about how it closes now, neither good nor bad.
 */
async function judgeMachine(tx: Tx, machine: SealMachineRow): Promise<Date | null> {
  const checks = await listChecksSince(tx, machine, new Date(0));
  const { outSinceMs } = stopsOf(checks.map(timed), checkOf(machine.kind));
  const outSince = outSinceMs === null ? null : new Date(outSinceMs);
  if (outSince?.getTime() !== machine.outSince?.getTime()) await updateMachine(tx, machine, outSince);
  return outSince;
}

/** The checks of a session, for its log. */
export function readChecks(context: Context, sessionId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadSession(tx, storehouseId, sessionId);
    return listChecks(tx, storehouseId, sessionId);
  });
}

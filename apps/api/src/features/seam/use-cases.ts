import type { Tx } from '@sheafbook/db';
import type { SealCheckRow, SealMachineRow, SeamLimitRow } from '@sheafbook/db/tables';
import {
  closesKind,
  isClearedToRun,
  listSeamFaults,
  type SealMachineKind,
  type SeamFault,
  suspectWindow,
} from '@sheafbook/packing';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadContainerKind } from '../container-kind/queries.ts';
import { loadSession, lockSession } from '../packing-session/queries.ts';
import { lastSerial } from '../pour-log/queries.ts';
import {
  insertCheck,
  insertHolds,
  insertMachine,
  listChecks,
  listChecksSince,
  listClosed,
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
import { checkOf, isTrial, VOUCHES } from './windows.ts';

export { findStop, holdLate, refuseStopped } from './stop.ts';
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
 * Writes down a check. One that fails stops the machine and holds every container that its line closed since the last good
 * check of that kind. The session is locked first, so that no container is closed between the check and the hold.
 */
export function checkSeal(context: Context, wish: CheckWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await lockSession(tx, storehouseId, wish.sessionId);
    const machine = await lockMachine(tx, storehouseId, wish.machineId);
    await loadContainerKind(tx, storehouseId, wish.containerKindId);
    const closed = await lastSerial(tx, storehouseId, wish);
    if (wish.line > session.lines)
      throw fieldProblem('invalid-input', 'line', `The session has ${session.lines} lines.`);
    if (wish.serial !== null && wish.serial > closed)
      throw fieldProblem('invalid-input', 'serial', `The line has closed ${closed} containers so far.`);
    const faults = wish.measures === null ? [] : await judgeMeasures(tx, storehouseId, wish);
    const passed = wish.looksGood && faults.length === 0;
    const window = passed ? null : await findWindow(tx, storehouseId, { wish, closed });
    const check = await insertCheck(tx, {
      ...{ storehouseId, sealCheckId: newId(context), sealMachineId: wish.machineId },
      ...{ packingSessionId: wish.sessionId, line: wish.line, serial: wish.serial },
      ...{ containerKindId: wish.containerKindId, how: wish.how, looksGood: wish.looksGood },
      ...{ measures: wish.measures, faults, passed, note: wish.note },
      ...{ suspectFrom: window?.fromSerial ?? null, suspectTo: window?.toSerial ?? null },
      ...{ checkedBy: personId, checkedAt: context.now(), occasion: wish.occasion },
      ...{ gauge: wish.gauge, closedThrough: closed },
    });
    if (window) await holdWindow(tx, machine, check, window);
    const outSince = await judgeMachine(tx, machine, check);
    const holds = await holdsOf(tx, check);
    await noteOwnersRead(tx, context, holds);
    await tellFailed(tx, context, holds);
    return { check, machine: { ...machine, outSince }, holds };
  });
}

async function judgeMeasures(tx: Tx, storehouseId: string, wish: CheckWish): Promise<SeamFault[]> {
  const limit = (await listLimits(tx, storehouseId)).find(
    ({ containerKindId }) => containerKindId === wish.containerKindId,
  );
  if (!limit) throw new Problem('seam-limits-missing');
  const { measures } = wish;
  if (!measures) return [];
  if (measures.widthMils <= 2 * limit.lidPlate + limit.bodyPlate)
    throw fieldProblem(
      'invalid-input',
      'measures.widthMils',
      'A seam is wider than its plates; measure it again.',
    );
  return listSeamFaults(measures, limitsOf(limit));
}

const limitsOf = (limit: SeamLimitRow) => ({
  widthMils: { least: limit.widthLeast, most: limit.widthMost },
  thicknessMils: { least: limit.thicknessLeast, most: limit.thicknessMost },
  countersinkMils: { least: limit.countersinkLeast, most: limit.countersinkMost },
  overlapPercent: limit.overlapPercent,
  lidPlateMils: limit.lidPlate,
  bodyPlateMils: limit.bodyPlate,
});

/**
 * Good checks of later serials count for nothing once an earlier one is found bad. A can that was closed only to try the
 * machine stands good for what the line had closed by then.
 */
async function findWindow(
  tx: Tx,
  storehouseId: string,
  { wish, closed }: { wish: CheckWish; closed: number },
) {
  const upTo = wish.serial ?? Number.POSITIVE_INFINITY;
  const good = (await listChecks(tx, storehouseId, wish.sessionId))
    .filter(
      ({ passed, line, sealMachineId, how }) =>
        passed && line === wish.line && sealMachineId === wish.machineId && VOUCHES[wish.how]?.includes(how),
    )
    .map(({ serial, closedThrough }) => ({ serial: serial ?? closedThrough, passed: true }))
    .filter(({ serial }) => serial > 0 && serial < upTo);
  return suspectWindow(
    good.toSorted((a, b) => a.serial - b.serial),
    closed,
  );
}

async function holdWindow(
  tx: Tx,
  machine: SealMachineRow,
  { storehouseId, sealCheckId, packingSessionId: sessionId, line }: SealCheckRow,
  window: { readonly fromSerial: number; readonly toSerial: number },
): Promise<void> {
  const closed = await listClosed(tx, storehouseId, { sessionId, line, ...window });
  const held = new Set((await listSealHolds(tx, storehouseId, 'open')).map(({ hold }) => hold.containerId));
  const free = closed.filter(
    ({ containerId, kindCode }) =>
      !held.has(containerId) && closesKind(machine.kind as SealMachineKind, kindCode),
  );
  await insertHolds(
    tx,
    free.map(({ containerId }) => ({ storehouseId, containerId, sealCheckId })),
  );
}

/**
 * Whether the machine is out after this check: a fault stops it, three good ones in a row since let it run. What was closed
 * before it stopped says nothing about how it closes now, neither good nor bad.
 */
async function judgeMachine(tx: Tx, machine: SealMachineRow, check: SealCheckRow): Promise<Date | null> {
  const { outSince } = machine;
  if (!check.passed) {
    if (outSince === null) await updateMachine(tx, machine, check.checkedAt);
    return outSince ?? check.checkedAt;
  }
  if (outSince === null) return null;
  const how = checkOf(machine.kind);
  const checks = await listChecksSince(tx, machine, outSince);
  const since = checks
    .slice(checks.findIndex(({ passed }) => !passed) + 1)
    .filter((one) => isTrial(one) && (!one.passed || one.how === how));
  if (!isClearedToRun(since.map(({ passed }) => ({ serial: 0, passed })))) return outSince;
  await updateMachine(tx, machine, null);
  return null;
}

const holdsOf = async (tx: Tx, { storehouseId, sealCheckId }: SealCheckRow) =>
  (await listSealHolds(tx, storehouseId, 'open')).filter(({ hold }) => hold.sealCheckId === sealCheckId);

/** The checks of a session, for its log. */
export function readChecks(context: Context, sessionId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadSession(tx, storehouseId, sessionId);
    return listChecks(tx, storehouseId, sessionId);
  });
}

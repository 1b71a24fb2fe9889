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
import { assert } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadContainerKind } from '../container-kind/queries.ts';
import { loadSession, lockSession } from '../packing-session/queries.ts';
import { lastSerial } from '../pour-log/queries.ts';
import {
  findLastChecked,
  insertCheck,
  insertHolds,
  insertMachine,
  listChecks,
  listChecksSince,
  listClosed,
  listHeldSince,
  listLimits,
  listMachines,
  listOpenHolds,
  lockMachine,
  lockMachinesForShare,
  settleHolds,
  updateMachine,
  upsertLimit,
} from './queries.ts';
import type { CheckWish, LimitWish, MachineWish, Settling } from './schema.ts';

/** What stands good for what came before it: a look at a seam says nothing of what a teardown finds. */
const VOUCHES: Readonly<Record<CheckWish['how'], readonly string[]>> = {
  teardown: ['teardown'],
  visual: ['visual', 'teardown'],
  squeeze: ['squeeze'],
};

/** The machines, the limits of each kind of can, and what is still in doubt. */
export function readSeals(context: Context) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => ({
    machines: await listMachines(tx, storehouseId),
    limits: await listLimits(tx, storehouseId),
    holds: await listOpenHolds(tx, storehouseId),
  }));
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
    return { check, machine: { ...machine, outSince }, holds: await holdsOf(tx, check) };
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
        passed && line === wish.line && sealMachineId === wish.machineId && VOUCHES[wish.how].includes(how),
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
  const held = new Set((await listOpenHolds(tx, storehouseId)).map(({ hold }) => hold.containerId));
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
  const { outSince, kind } = machine;
  if (!check.passed) {
    if (outSince === null) await updateMachine(tx, machine, check.checkedAt);
    return outSince ?? check.checkedAt;
  }
  if (outSince === null) return null;
  const how = kind === 'can-seamer' ? 'teardown' : 'squeeze';
  const held = new Set((await listHeldSince(tx, machine, outSince)).map(placeOf));
  const checks = await listChecksSince(tx, machine, outSince);
  const since = checks
    .slice(checks.findIndex(({ passed }) => !passed) + 1)
    .filter((one) => !held.has(placeOf(one)) && (!one.passed || one.how === how));
  if (!isClearedToRun(since.map(({ serial, passed }) => ({ serial: serial ?? 0, passed })))) return outSince;
  await updateMachine(tx, machine, null);
  return null;
}

const placeOf = ({
  packingSessionId,
  line,
  serial,
}: Pick<SealCheckRow, 'packingSessionId' | 'line' | 'serial'>) =>
  `${packingSessionId} ${line} ${serial ?? 'trial'}`;

/** What stops a line: its machine, and the check that holds what it closed before. */
export type Stop = {
  readonly machine: SealMachineRow;
  readonly outSince: Date;
  readonly checkId: string | null;
};

/**
 * The machine that closes such a container on a line, if it is out: the one that was checked there last, or the only ones
 * there are. The caller is alone with the session, so no check of it can fail meanwhile.
 */
export async function findStop(
  tx: Tx,
  storehouseId: string,
  { sessionId, line, kindCode }: { sessionId: string; line: number; kindCode: string },
): Promise<Stop | null> {
  const able = (await lockMachinesForShare(tx, storehouseId)).filter(({ kind }) =>
    closesKind(kind as SealMachineKind, kindCode),
  );
  if (able.every(({ outSince }) => outSince === null)) return null;
  const machineIds = able.map(({ sealMachineId }) => sealMachineId);
  const last = await findLastChecked(tx, storehouseId, { sessionId, line, machineIds });
  const machine =
    able.find(({ sealMachineId }) => sealMachineId === last) ?? able.find(({ outSince }) => outSince);
  const canRun = last === undefined && able.some(({ outSince }) => outSince === null);
  if (!machine || machine.outSince === null || canRun) return null;
  const failed = (await listChecksSince(tx, machine, machine.outSince)).find(
    (check) => !check.passed && check.packingSessionId === sessionId && check.line === line,
  );
  return { machine, outSince: machine.outSince, checkId: failed?.sealCheckId ?? null };
}

/**
 * Refuses a container that is said to be closed after its machine went out. One that was closed before, and whose word was
 * on its way, is there and in doubt: it is logged and held with the rest.
 */
export function refuseStopped({ machine, outSince, checkId }: Stop, line: number, pouredAt: Date): void {
  if (pouredAt < outSince && checkId !== null) return;
  const says = `${machine.name} is out since its check failed. Nothing more is closed on line ${line} until three checks in a row have passed.`;
  throw fieldProblem('line-is-stopped', 'line', says);
}

/** Holds containers that were closed before their machine was stopped, and logged after it. */
export function holdLate(tx: Tx, { machine, checkId }: Stop, containerIds: readonly string[]): Promise<void> {
  assert(checkId, 'a pour without a check to be held by was refused');
  return insertHolds(
    tx,
    containerIds.map((containerId) => ({
      ...{ storehouseId: machine.storehouseId, containerId, sealCheckId: checkId },
    })),
  );
}

const holdsOf = async (tx: Tx, { storehouseId, sealCheckId }: SealCheckRow) =>
  (await listOpenHolds(tx, storehouseId)).filter(({ hold }) => hold.sealCheckId === sealCheckId);

/** The checks of a session, for its log. */
export function readChecks(context: Context, sessionId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await loadSession(tx, storehouseId, sessionId);
    return listChecks(tx, storehouseId, sessionId);
  });
}

/** Answers for containers in doubt. They are let go as good only while their machine runs again. */
export function settleSuspects(context: Context, { containerIds, disposition, note }: Settling) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const open = (await listOpenHolds(tx, storehouseId)).filter(({ hold }) =>
      containerIds.includes(hold.containerId),
    );
    const found = new Set(open.map(({ hold }) => hold.containerId));
    if (containerIds.some((id) => !found.has(id))) throw new Problem('thing-not-found', { thing: 'hold' });
    const out = new Set(
      (await listMachines(tx, storehouseId))
        .filter(({ outSince }) => outSince !== null)
        .map((row) => row.sealMachineId),
    );
    if (disposition === 'release' && open.some(({ check }) => out.has(check.sealMachineId)))
      throw new Problem('machine-is-out');
    const answer = { disposition, note, settledBy: personId, settledAt: context.now() };
    const settled = await settleHolds(tx, storehouseId, [...found], answer);
    return { settled, holds: await listOpenHolds(tx, storehouseId) };
  });
}

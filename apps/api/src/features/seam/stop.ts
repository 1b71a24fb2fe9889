import type { Tx } from '@sheafbook/db';
import type { SealMachineRow } from '@sheafbook/db/tables';
import { closesKind, type SealMachineKind } from '@sheafbook/packing';
import { fieldProblem } from '../../platform/problem.ts';
import { findLastChecked, listChecksSince, lockMachinesForShare } from './queries.ts';

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

/** Whether something was closed before its machine stopped, so that the check which stopped it says what becomes of it. */
export const wasClosedBefore = ({ outSince, checkId }: Stop, closedAt: Date): boolean =>
  closedAt < outSince && checkId !== null;

/**
 * Refuses a container that is said to be closed after its machine went out. One that was closed before, and whose word was
 * on its way, is there: it is logged, and held with the rest where the check puts it in doubt.
 */
export function refuseStopped(stop: Stop, line: number, pouredAt: Date): void {
  if (wasClosedBefore(stop, pouredAt)) return;
  const { machine } = stop;
  const says = `${machine.name} is out since its check failed. Nothing more is closed on line ${line} until three checks in a row have passed.`;
  throw fieldProblem('line-is-stopped', 'line', says);
}

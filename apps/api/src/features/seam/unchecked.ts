import type { Tx } from '@sheafbook/db';
import type { SealCheckRow, SealMachineRow } from '@sheafbook/db/tables';
import { closesKind, listUnvouched, type SealMachineKind } from '@sheafbook/packing';
import { Problem } from '../../platform/problem.ts';
import { type Closed, listChecks, listClosedOfSession, listMachines, listSealHolds } from './queries.ts';
import { checkOf } from './windows.ts';

/** Serials of a line that no good check stands behind, and by which machines they may have been closed. */
export type Unchecked = {
  readonly line: number;
  readonly machines: readonly string[];
  readonly wasChecked: boolean;
  readonly fromSerial: number;
  readonly toSerial: number;
};

/**
 * What the lines of a session closed and nobody vouches for. What is held, or was and is answered for, is not among it; nor
 * is what none of the storehouse's machines closes.
 */
export async function listUnchecked(tx: Tx, storehouseId: string, sessionId: string): Promise<Unchecked[]> {
  const machines = await listMachines(tx, storehouseId);
  if (machines.length === 0) return [];
  const checks = await listChecks(tx, storehouseId, sessionId);
  const held = new Set(
    (await listSealHolds(tx, storehouseId, { sessionId })).map(({ hold }) => hold.containerId),
  );
  const closed = (await listClosedOfSession(tx, storehouseId, sessionId)).filter(
    ({ containerId }) => !held.has(containerId),
  );
  return groupByMachines(closed, machines).flatMap(({ line, able, serials }) => {
    const ofLine = checks.filter((check) => check.line === line && able.has(check.sealMachineId));
    const nameOf = (id: string) => able.get(id)?.name ?? '';
    return listUnvouched(
      serials,
      ofLine.map((check) => toLineCheck(check, able)),
    ).map(({ machineId, ...span }) => ({
      ...{ line, ...span, wasChecked: machineId !== null },
      machines: machineId === null ? [...able.keys()].map(nameOf) : [nameOf(machineId)],
    }));
  });
}

type Able = ReadonlyMap<string, SealMachineRow>;

/** A good check stands for what was closed up to its container, or up to its moment when it was a trial. */
const toLineCheck = (check: SealCheckRow, able: Able) => {
  const isJudging = check.how === checkOf(able.get(check.sealMachineId)?.kind ?? '');
  return {
    ...{ machineId: check.sealMachineId, closedThrough: check.closedThrough },
    goodThrough: check.passed && isJudging ? (check.serial ?? check.closedThrough) : null,
  };
};

/** What each line closed, by the machines that can close it. */
function groupByMachines(closed: readonly Closed[], machines: readonly SealMachineRow[]) {
  const groups = new Map<string, { line: number; able: Able; serials: number[] }>();
  for (const { line, serial, kindCode } of closed) {
    const able = machines.filter(({ kind }) => closesKind(kind as SealMachineKind, kindCode));
    if (able.length === 0) continue;
    const key = JSON.stringify([line, able.map(({ sealMachineId }) => sealMachineId)]);
    const byId = new Map(able.map((machine) => [machine.sealMachineId, machine]));
    const group = groups.get(key) ?? { line, able: byId, serials: [] };
    groups.set(key, { ...group, serials: [...group.serials, serial] });
  }
  return [...groups.values()];
}

/**
 * Refuses to sign while a seal waits for its last good check. There is no reason that lets it pass: whoever can't check it
 * writes it down as failed, and then what it leaves in doubt is held and the day can be signed.
 */
export function refuseUnchecked(unchecked: readonly Unchecked[]): void {
  const [first] = unchecked;
  if (!first) return;
  const { line, wasChecked, fromSerial, toSerial } = first;
  const machines = first.machines.join(', ');
  throw new Problem('cannot-sign', {
    detail: wasChecked
      ? `Numbers ${fromSerial} to ${toSerial} of line ${line} were closed since the last good check of ${machines}. Check the last one, or one closed for trial. If that can’t be done, write it down as failed: they are held, and the day can be signed.`
      : `Numbers ${fromSerial} to ${toSerial} of line ${line} were closed, and no seal of ${machines} was checked. Check the last one, or one closed for trial. If that can’t be done, write it down as failed: they are held, and the day can be signed.`,
    unchecked,
  });
}

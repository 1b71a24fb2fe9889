import type { Tx } from '@sheafbook/db';
import type { SealCheckRow, SealMachineRow } from '@sheafbook/db/tables';
import { closesKind, listUnvouched, type SealMachineKind, standsFor, standsUpTo } from '@sheafbook/packing';
import { Problem } from '../../platform/problem.ts';
import { checkOf, momentOf, timed } from './moments.ts';
import {
  type Closed,
  type EverClosed,
  listChecks,
  listClosedOfSession,
  listEverClosed,
  listMachines,
  listSealHolds,
} from './queries.ts';

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
  const runs = new Map<number, readonly EverClosed[]>();
  for (const line of new Set(closed.map((one) => one.line)))
    runs.set(line, await listEverClosed(tx, storehouseId, { sessionId, line }));
  return groupByMachines(closed, machines).flatMap(({ line, able, serials }) => {
    const run = inTime(runs.get(line) ?? []);
    const placeOf = (serial: number) => run.findIndex((one) => one.serial === serial) + 1;
    const ofLine = checks.filter((check) => check.line === line && able.has(check.sealMachineId));
    const nameOf = (id: string) => able.get(id)?.name ?? '';
    return listUnvouched(
      serials.map(placeOf).toSorted((a, b) => a - b),
      ofLine.map((check) => toLineCheck(check, able, run)),
    ).map(({ machineId, fromSerial, toSerial }) => {
      const numbers = serials.filter((one) => placeOf(one) >= fromSerial && placeOf(one) <= toSerial);
      return {
        ...{ line, wasChecked: machineId !== null },
        ...{ fromSerial: Math.min(...numbers), toSerial: Math.max(...numbers) },
        machines: machineId === null ? [...able.keys()].map(nameOf) : [nameOf(machineId)],
      };
    });
  });
}

/** In the order in which they were closed: a number says when it was written down. */
const inTime = (run: readonly EverClosed[]) =>
  run.toSorted((a, b) => a.closedAt.getTime() - b.closedAt.getTime() || a.serial - b.serial);

type Able = ReadonlyMap<string, SealMachineRow>;

/** In places of the line's run: what it had closed by a check, and up to where a good one stands. */
const toLineCheck = (row: SealCheckRow, able: Able, run: readonly EverClosed[]) => {
  const check = timed(row);
  const isJudging = check.how === checkOf(able.get(check.machineId)?.kind ?? '');
  const countOf = (isIn: (one: EverClosed) => boolean) => run.filter(isIn).length;
  return {
    machineId: check.machineId,
    closedThrough: countOf((one) => standsFor(standsUpTo(check, null), momentOf(one))),
    goodThrough: check.passed && isJudging ? countOf((one) => standsFor(check, momentOf(one))) : null,
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

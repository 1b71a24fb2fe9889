import type { Tx } from '@sheafbook/db';
import type { SealCheckRow, SealMachineRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadSession } from '../packing-session/queries.ts';
import {
  listCheckers,
  listChecks,
  listClosedOfSession,
  listLimits,
  listMachines,
  listSealHolds,
  type SealHeld,
} from './queries.ts';
import { listReCanned } from './queries-re-can.ts';
import { watchLine, windowsOf } from './windows.ts';

/** Each household sees who looked at what it has in doubt. */
export const noteOwnersRead = (tx: Tx, context: Context, holds: readonly SealHeld[]) =>
  notePrivateRead(tx, context, {
    householdIds: holds.map(({ household }) => household.householdId),
    ...{ what: 'bags and containers at a session', purpose: 'seals in doubt' },
  });

/** The seals of a running day: when each line's machine is due, every check, and the windows that failed checks left. */
export function readWatch(context: Context, sessionId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const session = await loadSession(tx, storehouseId, sessionId);
    const checks = await listChecks(tx, storehouseId, sessionId);
    const holds = await listSealHolds(tx, storehouseId, { sessionId });
    await noteOwnersRead(tx, context, holds);
    const moved = await listReCanned(
      tx,
      storehouseId,
      holds.map(({ hold }) => hold.containerId),
    );
    const machines = await listMachines(tx, storehouseId);
    const closed = await listClosedOfSession(tx, storehouseId, sessionId);
    const now = context.now();
    const isOver = session.stage !== 'open' && session.stage !== 'running';
    const lines = Array.from({ length: session.lines }, (_, at) => at + 1).flatMap((line) =>
      machinesAt(line, machines, checks).map((machine) =>
        watchLine(machine, { line, closed, checks, isOver, now }),
      ),
    );
    return {
      ...{ session, checks, lines, machines, moved, windows: windowsOf(holds, checks, machines) },
      ...{
        limits: await listLimits(tx, storehouseId),
        names: await listCheckers(tx, storehouseId, sessionId),
      },
    };
  });
}
export type WatchReading = Awaited<ReturnType<typeof readWatch>>;

/** The machines that were checked at a line, unless one of the same kind took over. */
function machinesAt(
  line: number,
  machines: readonly SealMachineRow[],
  checks: readonly SealCheckRow[],
): SealMachineRow[] {
  const ofLine = checks.filter((check) => check.line === line);
  const lastAt = (machine: SealMachineRow) =>
    ofLine.findLastIndex(({ sealMachineId }) => sealMachineId === machine.sealMachineId);
  return machines.filter(
    (machine) =>
      lastAt(machine) >= 0 &&
      machines.every((other) => other.kind !== machine.kind || lastAt(other) <= lastAt(machine)),
  );
}

import type { SealCheckRow, SealMachineRow } from '@sheafbook/db/tables';
import {
  type ClosedAt,
  type ClosedBy,
  closesKind,
  compareChecks,
  isPutInDoubt,
  type SealMachineKind,
  stopsOf,
  type TimedCheck,
} from '@sheafbook/packing';

/** What stands good for what came before it: a look at a seam says nothing of what a teardown finds. */
export const VOUCHES: Readonly<Record<string, readonly string[]>> = {
  teardown: ['teardown'],
  visual: ['visual', 'teardown'],
  squeeze: ['squeeze'],
};

/** The check by which a machine is judged: a seam is torn down, a heat seal or a vacuum is tugged and squeezed. */
export const checkOf = (kind: string) => (kind === 'can-seamer' ? 'teardown' : 'squeeze');

/** A can that is closed for the check alone: only such tell how a machine closes now that is out. */
export const isTrial = ({ serial }: { readonly serial: number | null }): boolean => serial === null;

export const timed = (check: SealCheckRow): TimedCheck => ({
  ...{ id: check.sealCheckId, machineId: check.sealMachineId, line: check.line, how: check.how },
  ...{ passed: check.passed, isTrial: isTrial(check), atMs: check.checkedAt.getTime() },
  ...{ isLive: check.recordedAt.getTime() === check.checkedAt.getTime(), closedThrough: check.closedThrough },
  ...{ goodMs: check.goodUntil.getTime(), goodSerial: check.goodSerial },
});

/** In the order in which they were made, whenever they arrived. */
export const inTheirOrder = (checks: readonly SealCheckRow[]): SealCheckRow[] =>
  checks
    .map((row) => ({ row, check: timed(row) }))
    .toSorted((a, b) => compareChecks(a.check, b.check))
    .map(({ row }) => row);

type ClosedRow = { readonly serial: number; readonly closedAt: Date; readonly kindCode: string };

export const momentOf = ({ serial, closedAt }: Omit<ClosedRow, 'kindCode'>): ClosedAt => ({
  ...{ closedMs: closedAt.getTime(), serial },
});

const closedBy = (row: ClosedRow, machines: readonly SealMachineRow[]): ClosedBy => ({
  ...momentOf(row),
  machineIds: machines
    .filter(({ kind }) => closesKind(kind as SealMachineKind, row.kindCode))
    .map(({ sealMachineId }) => sealMachineId),
});

/** The failed checks of a line in their order, each with what it puts in doubt. `checks` are those of the session. */
export function doubtsAt(line: number, checks: readonly SealCheckRow[], machines: readonly SealMachineRow[]) {
  const all = inTheirOrder(checks);
  const clearedBy = new Map(
    machines.flatMap(({ sealMachineId, kind }) => {
      const own = all.filter((check) => check.sealMachineId === sealMachineId);
      return [...stopsOf(own.map(timed), checkOf(kind)).clearedBy];
    }),
  );
  const ofLine = all.filter((check) => check.line === line);
  const moments = ofLine.map(timed);
  return ofLine
    .filter(({ passed }) => !passed)
    .map((check) => {
      const about = {
        ...{ checks: moments, vouchers: VOUCHES[check.how] ?? [] },
        clearedBy: clearedBy.get(check.sealCheckId) ?? null,
      };
      const failed = timed(check);
      return { check, has: (row: ClosedRow) => isPutInDoubt(closedBy(row, machines), failed, about) };
    });
}

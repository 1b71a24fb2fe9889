import type { Tx } from '@sheafbook/db';
import {
  accounts,
  containerKinds,
  containers,
  households,
  lineClosed,
  packingSessions,
  persons,
  type SealCheckRow,
  type SealMachineRow,
  type SeamLimitRow,
  sealChecks,
  sealHolds,
  sealMachines,
  seamLimits,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, gt, gte, inArray, isNull } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import { gramsLeft, ownAccount } from '../container/queries.ts';
import { inTheirOrder } from './moments.ts';

export async function listMachines(tx: Tx, storehouseId: string): Promise<SealMachineRow[]> {
  return tx
    .select()
    .from(sealMachines)
    .where(eq(sealMachines.storehouseId, storehouseId))
    .orderBy(asc(sealMachines.name));
}

export async function insertMachine(
  tx: Tx,
  machine: typeof sealMachines.$inferInsert,
): Promise<SealMachineRow> {
  const [row] = await tx.insert(sealMachines).values(machine).returning();
  assert(row, 'an insert returns its row');
  return row;
}

/** The machines, none of which goes out or comes back while the caller's transaction lasts. */
export async function lockMachinesForShare(tx: Tx, storehouseId: string): Promise<SealMachineRow[]> {
  return tx
    .select()
    .from(sealMachines)
    .where(eq(sealMachines.storehouseId, storehouseId))
    .orderBy(asc(sealMachines.sealMachineId))
    .for('share');
}

/** Alone with a machine, so that two checks can't both decide whether it runs. */
export async function lockMachine(tx: Tx, storehouseId: string, machineId: string): Promise<SealMachineRow> {
  const [row] = await tx
    .select()
    .from(sealMachines)
    .where(and(eq(sealMachines.storehouseId, storehouseId), eq(sealMachines.sealMachineId, machineId)))
    .for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'machine' });
  return row;
}

export async function updateMachine(tx: Tx, machine: SealMachineRow, outSince: Date | null): Promise<void> {
  await tx
    .update(sealMachines)
    .set({ outSince, version: machine.version + 1 })
    .where(
      and(
        eq(sealMachines.storehouseId, machine.storehouseId),
        eq(sealMachines.sealMachineId, machine.sealMachineId),
      ),
    );
}

export async function listLimits(tx: Tx, storehouseId: string): Promise<SeamLimitRow[]> {
  return tx
    .select()
    .from(seamLimits)
    .where(eq(seamLimits.storehouseId, storehouseId))
    .orderBy(asc(seamLimits.containerKindId));
}

export async function upsertLimit(tx: Tx, row: SeamLimitRow): Promise<void> {
  const { storehouseId: _, containerKindId: __, ...set } = row;
  await tx
    .insert(seamLimits)
    .values(row)
    .onConflictDoUpdate({ target: [seamLimits.storehouseId, seamLimits.containerKindId], set });
}

/** The checks of a session in the order in which they were made. */
export async function listChecks(tx: Tx, storehouseId: string, sessionId: string): Promise<SealCheckRow[]> {
  const rows = await tx
    .select()
    .from(sealChecks)
    .where(and(eq(sealChecks.storehouseId, storehouseId), eq(sealChecks.packingSessionId, sessionId)))
    .orderBy(asc(sealChecks.sealCheckId));
  return inTheirOrder(rows);
}

export async function findCheck(
  tx: Tx,
  storehouseId: string,
  checkId: string,
): Promise<SealCheckRow | undefined> {
  const [row] = await tx
    .select()
    .from(sealChecks)
    .where(and(eq(sealChecks.storehouseId, storehouseId), eq(sealChecks.sealCheckId, checkId)));
  return row;
}

export async function loadCheck(tx: Tx, storehouseId: string, checkId: string): Promise<SealCheckRow> {
  const row = await findCheck(tx, storehouseId, checkId);
  if (!row) throw new Problem('thing-not-found', { thing: 'check' });
  return row;
}

/** Who made the checks of a session. */
export async function listCheckers(
  tx: Tx,
  storehouseId: string,
  sessionId: string,
): Promise<ReadonlyMap<string, string>> {
  const rows = await tx
    .selectDistinct({ personId: persons.personId, name: persons.name })
    .from(sealChecks)
    .innerJoin(persons, joinOn(persons, sealChecks, 'personId', 'checkedBy'))
    .where(and(eq(sealChecks.storehouseId, storehouseId), eq(sealChecks.packingSessionId, sessionId)));
  return new Map(rows.map(({ personId, name }) => [personId, name]));
}

/** What was checked on a machine since a moment, wherever it stood. */
export async function listChecksSince(
  tx: Tx,
  { storehouseId, sealMachineId }: SealMachineRow,
  since: Date,
): Promise<SealCheckRow[]> {
  const rows = await tx
    .select()
    .from(sealChecks)
    .where(
      and(
        eq(sealChecks.storehouseId, storehouseId),
        eq(sealChecks.sealMachineId, sealMachineId),
        gte(sealChecks.checkedAt, since),
      ),
    )
    .orderBy(asc(sealChecks.sealCheckId));
  return inTheirOrder(rows);
}

export async function insertCheck(tx: Tx, check: typeof sealChecks.$inferInsert): Promise<SealCheckRow> {
  const [row] = await tx.insert(sealChecks).values(check).returning();
  assert(row, 'an insert returns its row');
  return row;
}

/** The machine that was last checked on a line of a session, among some. */
export async function findLastChecked(
  tx: Tx,
  storehouseId: string,
  { sessionId, line, machineIds }: { sessionId: string; line: number; machineIds: readonly string[] },
): Promise<string | undefined> {
  const [row] = await tx
    .select({ machineId: sealChecks.sealMachineId })
    .from(sealChecks)
    .where(
      and(
        eq(sealChecks.storehouseId, storehouseId),
        eq(sealChecks.packingSessionId, sessionId),
        eq(sealChecks.line, line),
        inArray(sealChecks.sealMachineId, [...machineIds]),
      ),
    )
    .orderBy(desc(sealChecks.checkedAt), desc(sealChecks.sealCheckId))
    .limit(1);
  return row?.machineId;
}

/** What a line ever closed, by serial, with what was put back: its numbers and moments stay. */
export async function listEverClosed(
  tx: Tx,
  storehouseId: string,
  { sessionId, line }: { sessionId: string; line: number },
) {
  const rows = await tx
    .select({
      containerId: lineClosed.containerId,
      serial: lineClosed.serial,
      closedAt: lineClosed.closedAt,
      undoneEntryId: lineClosed.undoneEntryId,
      kindCode: containerKinds.kindCode,
    })
    .from(lineClosed)
    .innerJoin(containers, joinOn(containers, lineClosed, 'containerId'))
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .where(
      and(
        eq(lineClosed.storehouseId, storehouseId),
        eq(lineClosed.packingSessionId, sessionId),
        eq(lineClosed.line, line),
      ),
    )
    .orderBy(asc(lineClosed.serial));
  return rows.map(({ undoneEntryId, ...row }) => ({ ...row, isUndone: undoneEntryId !== null }));
}
export type EverClosed = Awaited<ReturnType<typeof listEverClosed>>[number];

export async function insertHolds(tx: Tx, rows: readonly (typeof sealHolds.$inferInsert)[]): Promise<void> {
  if (rows.length > 0) await tx.insert(sealHolds).values([...rows]);
}

/**
 * The containers in doubt with whose they are, in the order of their serials: those that nobody has answered for, or all of a
 * session. What was put back into its bag is in no container any more.
 */
export async function listSealHolds(tx: Tx, storehouseId: string, of: { sessionId: string } | 'open') {
  return tx
    .select({
      hold: sealHolds,
      check: sealChecks,
      code: containers.containerCode,
      containerKindId: containers.containerKindId,
      lotId: containers.lotId,
      kindCode: containerKinds.kindCode,
      serial: lineClosed.serial,
      closedAt: lineClosed.closedAt,
      grams: lineClosed.grams,
      household: { householdId: households.householdId, name: households.name, seat: households.seat },
      sessionName: packingSessions.name,
    })
    .from(sealHolds)
    .innerJoin(sealChecks, joinOn(sealChecks, sealHolds, 'sealCheckId'))
    .innerJoin(packingSessions, joinOn(packingSessions, sealChecks, 'packingSessionId'))
    .innerJoin(containers, joinOn(containers, sealHolds, 'containerId'))
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .innerJoin(lineClosed, joinOn(lineClosed, sealHolds, 'containerId'))
    .innerJoin(households, joinOn(households, lineClosed, 'householdId'))
    .where(
      and(
        eq(sealHolds.storehouseId, storehouseId),
        of === 'open' ? isNull(sealHolds.disposition) : eq(sealChecks.packingSessionId, of.sessionId),
        isNull(lineClosed.undoneEntryId),
      ),
    )
    .orderBy(asc(sealHolds.sealCheckId), asc(lineClosed.serial));
}
export type SealHeld = Awaited<ReturnType<typeof listSealHolds>>[number];

/** What a session's lines closed, by line and serial, without what was put back. */
export async function listClosedOfSession(tx: Tx, storehouseId: string, sessionId: string) {
  return tx
    .select({
      containerId: lineClosed.containerId,
      line: lineClosed.line,
      serial: lineClosed.serial,
      closedAt: lineClosed.closedAt,
      containerKindId: containers.containerKindId,
      kindCode: containerKinds.kindCode,
    })
    .from(lineClosed)
    .innerJoin(containers, joinOn(containers, lineClosed, 'containerId'))
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .where(
      and(
        eq(lineClosed.storehouseId, storehouseId),
        eq(lineClosed.packingSessionId, sessionId),
        isNull(lineClosed.undoneEntryId),
      ),
    )
    .orderBy(asc(lineClosed.line), asc(lineClosed.serial));
}
export type Closed = Awaited<ReturnType<typeof listClosedOfSession>>[number];

/** What some containers hold of their households now. */
export async function listContents(tx: Tx, storehouseId: string, containerIds: readonly string[]) {
  return tx
    .select({
      containerId: containers.containerId,
      lotId: containers.lotId,
      householdId: containers.householdId,
      grams: gramsLeft,
    })
    .from(containers)
    .innerJoin(accounts, ownAccount)
    .where(
      and(
        eq(containers.storehouseId, storehouseId),
        inArray(containers.containerId, [...containerIds]),
        gt(accounts.inflow, accounts.outflow),
      ),
    )
    .orderBy(asc(containers.containerId));
}

/** Gives how many were still open. */
export async function settleHolds(
  tx: Tx,
  storehouseId: string,
  containerIds: readonly string[],
  answer: { disposition: string; settledBy: string; settledAt: Date; note: string },
): Promise<number> {
  const rows = await tx
    .update(sealHolds)
    .set(answer)
    .where(
      and(
        eq(sealHolds.storehouseId, storehouseId),
        inArray(sealHolds.containerId, [...containerIds]),
        isNull(sealHolds.disposition),
      ),
    )
    .returning({ containerId: sealHolds.containerId });
  return new Set(rows.map(({ containerId }) => containerId)).size;
}

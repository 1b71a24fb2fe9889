import type { Tx } from '@sheafbook/db';
import {
  containers,
  packingSessions,
  type ReCanRow,
  reCans,
  sealChecks,
  sealHolds,
} from '@sheafbook/db/tables';
import { and, asc, eq, inArray, isNull } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

const into = alias(containers, 'into');

/** Where what was in these containers is now, as far as it went into new ones. */
export async function listReCanned(tx: Tx, storehouseId: string, containerIds: readonly string[]) {
  return tx
    .select({ reCan: reCans, newCode: into.containerCode })
    .from(reCans)
    .innerJoin(
      into,
      and(eq(into.storehouseId, reCans.storehouseId), eq(into.containerId, reCans.newContainerId)),
    )
    .where(
      and(
        eq(reCans.storehouseId, storehouseId),
        inArray(reCans.oldContainerId, [...containerIds]),
        isNull(reCans.undoneEntryId),
      ),
    )
    .orderBy(asc(reCans.reCanId));
}
export type ReCanned = Awaited<ReturnType<typeof listReCanned>>[number];

/** What was in doubt of these containers, with what was answered and the check that failed. */
export async function listHoldsOf(tx: Tx, storehouseId: string, containerIds: readonly string[]) {
  return tx
    .select({ hold: sealHolds, check: sealChecks, sessionName: packingSessions.name })
    .from(sealHolds)
    .innerJoin(sealChecks, joinOn(sealChecks, sealHolds, 'sealCheckId'))
    .innerJoin(packingSessions, joinOn(packingSessions, sealChecks, 'packingSessionId'))
    .where(and(eq(sealHolds.storehouseId, storehouseId), inArray(sealHolds.containerId, [...containerIds])))
    .orderBy(asc(sealHolds.sealCheckId));
}

export async function insertReCan(tx: Tx, row: typeof reCans.$inferInsert): Promise<void> {
  await tx.insert(reCans).values(row);
}

/** Alone with the record, so that it is taken back once. */
export async function lockReCan(tx: Tx, storehouseId: string, reCanId: string): Promise<ReCanRow> {
  const [row] = await tx
    .select()
    .from(reCans)
    .where(and(eq(reCans.storehouseId, storehouseId), eq(reCans.reCanId, reCanId)))
    .for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 're-canning' });
  return row;
}

export async function markReCanUndone(
  tx: Tx,
  { storehouseId, reCanId }: ReCanRow,
  undoneEntryId: string,
): Promise<void> {
  await tx
    .update(reCans)
    .set({ undoneEntryId })
    .where(and(eq(reCans.storehouseId, storehouseId), eq(reCans.reCanId, reCanId)));
}

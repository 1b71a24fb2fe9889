import type { Tx } from '@sheafbook/db';
import { storehouses, type WorkRow, works } from '@sheafbook/db/tables';
import { and, eq, sql } from 'drizzle-orm';

export type WorkId = { readonly storehouseId: string; readonly workId: string };

const isWaiting = ({ storehouseId, workId }: WorkId) =>
  and(eq(works.storehouseId, storehouseId), eq(works.workId, workId), eq(works.state, 'waiting'));

/** Counts the try before it is made: so one that ends the process each time is counted too. */
export async function updateTriesCounted(tx: Tx, of: WorkId): Promise<WorkRow | undefined> {
  const [row] = await tx
    .update(works)
    .set({ tries: sql`${works.tries} + 1` })
    .where(isWaiting(of))
    .returning();
  return row;
}

/** Alone with work that still waits and was not asked for anew meanwhile. */
export async function lockWaiting(tx: Tx, of: WorkId & { version: number }): Promise<WorkRow | undefined> {
  const [row] = await tx
    .select()
    .from(works)
    .where(and(isWaiting(of), eq(works.version, of.version)))
    .for('update');
  return row;
}

export async function updateDone(tx: Tx, of: WorkId, endedAt: Date): Promise<void> {
  await tx.update(works).set({ state: 'done', endedAt }).where(isWaiting(of));
}

export async function updateDead(tx: Tx, of: WorkId, as: { reason: string; endedAt: Date }): Promise<void> {
  await tx
    .update(works)
    .set({ state: 'dead', lastReason: as.reason, endedAt: as.endedAt })
    .where(isWaiting(of));
}

export async function updateLater(
  tx: Tx,
  of: WorkId & { version: number },
  as: { reason: string; dueAt: Date },
): Promise<void> {
  await tx
    .update(works)
    .set({ lastReason: as.reason, dueAt: as.dueAt })
    .where(and(isWaiting(of), eq(works.version, of.version)));
}

export async function findStorehouse(tx: Tx, storehouseId: string) {
  const [row] = await tx
    .select({ currency: storehouses.currency, timeZone: storehouses.timeZone })
    .from(storehouses)
    .where(eq(storehouses.storehouseId, storehouseId));
  return row;
}

import type { Tx } from '@sheafbook/db';
import { type PackingQueueRow, packingQueues } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq } from 'drizzle-orm';

/** More words than anybody says while ten containers are closed. */
const MOST = 200;

/** The last words about the queues of a session, in the order in which they were said. */
export async function listQueues(
  tx: Tx,
  storehouseId: string,
  sessionId: string,
): Promise<PackingQueueRow[]> {
  const rows = await tx
    .select()
    .from(packingQueues)
    .where(and(eq(packingQueues.storehouseId, storehouseId), eq(packingQueues.packingSessionId, sessionId)))
    .orderBy(desc(packingQueues.saidAt), desc(packingQueues.packingQueueId))
    .limit(MOST);
  return rows.toReversed();
}

export async function insertQueue(tx: Tx, row: typeof packingQueues.$inferInsert): Promise<PackingQueueRow> {
  const [queue] = await tx.insert(packingQueues).values(row).returning();
  assert(queue, 'an insert returns its row');
  return queue;
}

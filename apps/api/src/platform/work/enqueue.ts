import type { Tx } from '@sheafbook/db';
import { works } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, sql } from 'drizzle-orm';

export type WorkWish = {
  /** A name in `worker/tasks.ts`. */
  readonly task: string;
  /** Ids rather than facts: what is true when the work is done may differ from what was true when it was asked for. */
  readonly payload?: Readonly<Record<string, unknown>>;
  /** Not before this instant; left out: at once. */
  readonly runAt?: Date;
  /** Of work that waits under one key, the later wish replaces the earlier: so a moved reminder is told once. */
  readonly jobKey?: string;
  /** Whom it is for. If it fails for good, the coordinator sees this name, the task and the reason, and nothing else. */
  readonly personId?: string;
};

/**
 * Asks for work in the background, in the transaction of what it follows from: either both are kept or neither. Returns
 * the id of the work. `storehouseId` is the one of the transaction; another is refused by the database.
 */
export async function enqueue(tx: Tx, storehouseId: string, wish: WorkWish): Promise<string> {
  const [row] = await tx.execute<{ work_id: string }>(sql`
    select book.enqueue_work(${storehouseId}, ${wish.task}, ${JSON.stringify(wish.payload ?? {})}::jsonb,
      ${wish.runAt?.toISOString() ?? null}::timestamptz, ${wish.jobKey ?? null}, ${wish.personId ?? null}) as work_id`);
  assert(row, 'a function of one value returns one row');
  return row.work_id;
}

/** Takes back the work that waits under a key, if there is any; what is being done at this moment is done first. */
export async function cancelWork(tx: Tx, storehouseId: string, jobKey: string): Promise<void> {
  await tx
    .delete(works)
    .where(and(eq(works.storehouseId, storehouseId), eq(works.jobKey, jobKey), eq(works.state, 'waiting')));
}

import type { Tx } from '@sheafbook/db';
import { persons, works } from '@sheafbook/db/tables';
import { and, desc, eq, isNotNull, or, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** What is unfinished and has failed at least once, the dead first: what just waits for its time is no one's worry. */
export function listTroubled(tx: Tx, storehouseId: string) {
  return tx
    .select({
      workId: works.workId,
      task: works.task,
      state: works.state,
      tries: works.tries,
      lastReason: works.lastReason,
      madeAt: works.madeAt,
      dueAt: works.dueAt,
      endedAt: works.endedAt,
      personName: persons.name,
    })
    .from(works)
    .leftJoin(persons, joinOn(persons, works, 'personId'))
    .where(
      and(
        eq(works.storehouseId, storehouseId),
        or(eq(works.state, 'dead'), and(eq(works.state, 'waiting'), isNotNull(works.lastReason))),
      ),
    )
    .orderBy(sql`${works.state} = 'dead' desc`, desc(works.endedAt), works.workId);
}
export type TroubledRow = Awaited<ReturnType<typeof listTroubled>>[number];

export type WorkCounts = { readonly dead: number; readonly waiting: number };

export async function countUnfinished(tx: Tx, storehouseId: string): Promise<WorkCounts> {
  const count = (state: string) =>
    sql`count(*) filter (where ${works.state} = ${state})`.mapWith(Number) as ReturnType<typeof sql<number>>;
  const [row] = await tx
    .select({ dead: count('dead'), waiting: count('waiting') })
    .from(works)
    .where(and(eq(works.storehouseId, storehouseId), sql`${works.state} in ('dead', 'waiting')`));
  return row ?? { dead: 0, waiting: 0 };
}

/** From the start once more; false when there is no such dead work here. */
export async function retryDead(tx: Tx, workId: string): Promise<boolean> {
  const [row] = await tx.execute<{ retried: boolean }>(sql`select book.retry_work(${workId}) as retried`);
  return row?.retried ?? false;
}

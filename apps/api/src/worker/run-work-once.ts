import { sql } from 'drizzle-orm';
import type { Outside } from '../platform/context.ts';
import { carryOut, type Outcome, type Workshop } from './carry-out.ts';

type DueRow = { storehouse_id: string; work_id: string };

/**
 * Does what is due at the outside's clock, over all storehouses, with what follows from it, and says how it ended. For a
 * server without a worker, and for tests, whose clock stands still: what failed is not due again before it moves.
 */
export async function runWorkOnce(workshop: Workshop): Promise<Record<Outcome, number>> {
  const ended = { done: 0, gone: 0, later: 0, dead: 0 };
  for (;;) {
    const due = await listDue(workshop.outside);
    if (due.length === 0) return ended;
    for (const { storehouse_id: storehouseId, work_id: workId } of due)
      ended[await carryOut(workshop, { storehouseId, workId })] += 1;
  }
}

const listDue = (outside: Outside): Promise<DueRow[]> =>
  outside.db.execute<DueRow>(sql`select * from book.due_work(${outside.now().toISOString()}::timestamptz)`);

/** Asks for one periodic task in every storehouse; where it still waits, not again. */
export async function enqueueEverywhere(outside: Outside, task: string): Promise<void> {
  await outside.db.execute(sql`select book.enqueue_everywhere(${task})`);
}

import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { countUnfinished, listTroubled, retryDead } from './queries.ts';

/** What goes wrong in the background: for whom, why and since when, but never what it would have said. */
export function readWork(context: Context) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => ({
    counts: await countUnfinished(tx, storehouseId),
    troubled: await listTroubled(tx, storehouseId),
  }));
}

/** Has dead work tried once more. What is waiting by now, or done, is not dead. */
export function retryWork(context: Context, workId: string): Promise<void> {
  return withTx(context, async (tx) => {
    if (!(await retryDead(tx, workId))) throw new Problem('thing-not-found', { thing: 'work' });
  });
}

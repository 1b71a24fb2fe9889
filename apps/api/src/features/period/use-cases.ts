import type { Context } from '../../platform/context.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { refuseFutureDay } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { insertPeriodClose, listPeriodCloses, loadClosedThrough, updateClosedThrough } from './queries.ts';
import type { PeriodEnd } from './schema.ts';

/**
 * Closes the books through a day, for good. Posting takes the lock of the same row, so no entry of the period can
 * slip in behind the closing (ledger-notes 6.5).
 */
export function closePeriod(context: Context, { throughOn }: PeriodEnd) {
  const { storehouseId, personId } = context.actor;
  refuseFutureDay(context, { field: 'throughOn', on: throughOn });
  return withTx(context, async (tx) => {
    const closed = await updateClosedThrough(tx, throughOn);
    if (closed === null)
      throw fieldProblem(
        'period-closed',
        'throughOn',
        `The books are closed through ${await loadClosedThrough(tx, storehouseId)} already, and stay so.`,
      );
    await insertPeriodClose(tx, {
      storehouseId,
      closedThrough: throughOn,
      closedBy: personId,
      closedAt: context.now(),
    });
    return { closedThrough: closed, closes: await listPeriodCloses(tx, storehouseId) };
  });
}

export function listPeriods(context: Context) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => ({
    closedThrough: await loadClosedThrough(tx, storehouseId),
    closes: await listPeriodCloses(tx, storehouseId),
  }));
}

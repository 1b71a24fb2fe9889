import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import type { PageQuery } from '../../platform/paging.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadOwnHousehold } from '../household/use-cases.ts';
import { type LooksRow, listPrivateReads, type MonthOfLooks, sumLooks, sumLooksByMonth } from './queries.ts';
import type { ReviewQuery } from './schema.ts';

export function readPrivateReads(context: Context, householdId: string, page: PageQuery) {
  const { storehouseId } = context.actor;
  const { after, limit } = page;
  return withTx(context, async (tx) => {
    await loadOwnHousehold(tx, context, householdId);
    return listPrivateReads(tx, { storehouseId, householdId }, { after, limit });
  });
}

/** Says who looked how often in which month, and what for, without naming whose things were looked at. */
export function reviewMonthsOfLooks(
  context: Context,
  span: Omit<ReviewQuery, 'format'>,
): Promise<MonthOfLooks[]> {
  return withTx(context, (tx) => readMonthsOfLooks(tx, context, span));
}

function readMonthsOfLooks(
  tx: Tx,
  { actor }: Context,
  { from, to }: Omit<ReviewQuery, 'format'>,
): Promise<MonthOfLooks[]> {
  if (from !== undefined && to !== undefined && from > to)
    throw fieldProblem('invalid-input', 'to', 'The last day lies before the first.');
  return sumLooksByMonth(tx, actor.storehouseId, { from, to, timeZone: actor.timeZone });
}

/** Says how often each duty looked, and why, without naming whose things were looked at. */
export function reviewLooks(context: Context, { from, to }: ReviewQuery): Promise<LooksRow[]> {
  const { storehouseId, timeZone } = context.actor;
  if (from !== undefined && to !== undefined && from > to)
    throw fieldProblem('invalid-input', 'to', 'The last day lies before the first.');
  return withTx(context, (tx) => sumLooks(tx, storehouseId, { from, to, timeZone }));
}

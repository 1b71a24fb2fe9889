import type { BuyRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { writeNotice } from '../notice/use-cases.ts';
import { noticeOfLanding } from './move-notice.ts';
import { presentBuy } from './present.ts';
import { lockBuyForUpdate, requireStage, updateBuy } from './queries.ts';
import type { LandingPlanEdit } from './schema.ts';

/**
 * Moves the day on which a buy lands, or its place, once its plan is closed: suppliers and lorries slip, a hall is let to
 * others. Those who pledged are told in the same transaction; reminders and calendars read day and place themselves. An
 * order that was sent keeps the place that it was sent with.
 */
export function moveLanding(context: Context, buyId: string, edit: LandingPlanEdit): Promise<BuyRow> {
  const { version, ...plan } = edit;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, context.actor.storehouseId, buyId);
    requireStage(buy, 'fixed', 'ordered');
    if (buy.version !== version) throw new Problem('stale-version', { newer: presentBuy(buy) });
    refuseImpossibleDay(buy, plan.landingOn, todayOf(context));
    const moved = await updateBuy(tx, buy, plan);
    const notice = noticeOfLanding(buy, moved);
    if (notice) await writeNotice(tx, context, notice);
    return moved;
  });
}

/** An order may have gone out before its planned day, so once it did only today counts. */
function refuseImpossibleDay({ stage, orderOn }: BuyRow, landingOn: string | null, todayOn: string): void {
  if (landingOn === null) return;
  if (landingOn < todayOn)
    throw fieldProblem('invalid-input', 'landingOn', 'This day is over; nothing can land on it any more.');
  if (stage === 'fixed' && landingOn < orderOn)
    throw fieldProblem('invalid-input', 'landingOn', 'The food can’t land before it is ordered.');
}

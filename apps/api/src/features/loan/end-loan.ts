import { lateFee, missingParts, settleDeposit } from '@sheafbook/booking';
import type { Tx } from '@sheafbook/db';
import type { BookingRow, EquipmentItemRow, LoanPartRow, LoanRow } from '@sheafbook/db/tables';
import {
  equipmentFeeCharged,
  loanDepositApplied,
  loanDepositReturned,
  type MovementDraft,
  partCharged,
} from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { todayOf } from '../../platform/today.ts';
import { findNextOnUnit, listWaiting, updateBooking } from '../booking/queries.ts';
import { listParts, loadUnit, replaceMissing, updateUnit } from '../equipment/queries.ts';
import { accountName } from './open-loan.ts';
import { checkTicksIn, lackingOf, piecesOf, type Tick } from './parts.ts';
import { listLoanParts, updateLoan, updatePartBack } from './queries.ts';
import type { Money } from './schema.ts';

const MINUTE = 60_000;

export type Coming = {
  readonly item: EquipmentItemRow;
  readonly booking: BookingRow;
  readonly loan: LoanRow;
  readonly at: Date;
  readonly parts: readonly Tick[];
  readonly broughtBy: string;
  readonly condition: 'ready' | 'dirty' | 'broken';
  readonly note: string;
  readonly uses: number;
  readonly damageMinorUnits: number;
  readonly refundTo: Money;
  /** It goes straight on to whoever comes next, so no time is kept after it. */
  readonly isRelayed: boolean;
};

/** What a loan costs when it ends now: its fee, what is late, what is missing; nothing late where nobody was waiting. */
async function reckonCosts(tx: Tx, coming: Coming) {
  const { item, loan, parts: ticks } = coming;
  const rows = await listLoanParts(tx, loan.storehouseId, [loan.loanId]);
  checkTicksIn(rows, ticks);
  const { minorUnits: partsMinorUnits } = missingParts(rows.map((part) => toLoanPart(part, ticks)));
  const [dueMs, backMs] = [loan.dueAt.getTime(), coming.at.getTime()];
  const full = lateFee({ dueMs, backMs }, item.lateFeeMinorUnits);
  const isLateWaived = full > 0 && !(await wasWaitedFor(tx, coming));
  const costs = {
    lateMinorUnits: isLateWaived ? 0 : full,
    partsMinorUnits,
    damageMinorUnits: coming.damageMinorUnits,
  };
  const { refundMinorUnits, keptMinorUnits } = settleDeposit(loan.depositMinorUnits, costs);
  const feeMinorUnits = item.feeMinorUnits;
  return { rows, ...costs, isLateWaived, feeMinorUnits, refundMinorUnits, keptMinorUnits };
}

type Costs = Awaited<ReturnType<typeof reckonCosts>>;

const toLoanPart = (part: LoanPartRow, ticks: readonly Tick[]) => ({
  partId: part.equipmentPartId,
  out: part.outPieces,
  back: piecesOf(ticks, part.equipmentPartId),
  minorUnits: part.valueMinorUnits,
  isCritical: part.isCritical,
});

/** Whether anybody had booked the piece, or waits for the thing, while it was late (job map 8). */
async function wasWaitedFor(tx: Tx, { booking, loan, item, at }: Coming): Promise<boolean> {
  const next = await findNextOnUnit(tx, booking);
  if (next && next.blockedFrom.getTime() < at.getTime() + item.postMinutes * MINUTE) return true;
  const waiting = await listWaiting(tx, booking.storehouseId, { itemId: item.equipmentItemId });
  return waiting.some(({ wish }) => wish.startsAt < at && wish.endsAt > loan.dueAt);
}

/**
 * A piece comes back: its parts are ticked, what is missing, late or damaged is charged, and the deposit pays towards it;
 * the rest goes back. The time that was booked and not needed is free again.
 */
export async function endLoan(tx: Tx, context: Context, coming: Coming): Promise<LoanRow> {
  const { item, booking, loan, parts: ticks } = coming;
  const { storehouseId } = loan;
  const costs = await reckonCosts(tx, coming);
  await postCosts(tx, context, coming, costs);
  for (const part of costs.rows) await updatePartBack(tx, part, piecesOf(ticks, part.equipmentPartId));
  const parts = await listParts(tx, storehouseId, [item.equipmentItemId]);
  const wentOut = parts.filter((part) =>
    costs.rows.some(({ equipmentPartId }) => equipmentPartId === part.equipmentPartId),
  );
  await replaceMissing(tx, booking, lackingOf(wentOut, ticks));
  const unit = await loadUnit(tx, storehouseId, booking.equipmentUnitId);
  if (unit.condition !== coming.condition)
    await updateUnit(tx, unit, { condition: coming.condition, conditionNote: coming.note });
  await updateBooking(tx, booking, {
    ...(await timesAfter(tx, coming)),
    ...{ state: 'returned', uses: coming.uses },
  });
  const { rows: _, ...figures } = costs;
  return updateLoan(tx, loan, {
    ...figures,
    ...{ inAt: coming.at, takenBackBy: context.actor.personId, broughtBy: coming.broughtBy },
    ...{ conditionIn: coming.condition, noteIn: coming.note, refundTo: accountName(coming.refundTo) },
  });
}

/** Early, it holds its piece no longer than it was out; late, it takes of the time after it what is nobody's yet. */
async function timesAfter(tx: Tx, { booking, item, isRelayed, at }: Coming) {
  const backMs = at.getTime();
  const postMs = isRelayed ? 0 : item.postMinutes * MINUTE;
  if (backMs < booking.endsAt.getTime()) {
    const endsMs = Math.max(backMs, booking.startsAt.getTime() + MINUTE);
    const blockedMs = Math.min(endsMs + postMs, booking.blockedTo.getTime());
    return { endsAt: new Date(endsMs), blockedTo: new Date(Math.max(endsMs, blockedMs)) };
  }
  if (isRelayed) return {};
  const next = await findNextOnUnit(tx, booking);
  const most = next ? Math.min(backMs + postMs, next.blockedFrom.getTime()) : backMs + postMs;
  return { blockedTo: new Date(Math.max(booking.blockedTo.getTime(), most)) };
}

async function postCosts(tx: Tx, context: Context, coming: Coming, costs: Costs): Promise<void> {
  const { loan, item, refundTo } = coming;
  const { householdId, loanId } = loan;
  const itemId = item.equipmentItemId;
  const drafts: MovementDraft[] = [];
  for (const amountMinorUnits of [costs.feeMinorUnits, costs.lateMinorUnits])
    if (amountMinorUnits > 0) drafts.push(...equipmentFeeCharged({ householdId, itemId, amountMinorUnits }));
  for (const amountMinorUnits of [costs.partsMinorUnits, costs.damageMinorUnits])
    if (amountMinorUnits > 0) drafts.push(...partCharged({ householdId, itemId, amountMinorUnits }));
  const kept = { householdId, loanId, amountMinorUnits: costs.keptMinorUnits };
  if (kept.amountMinorUnits > 0) drafts.push(...loanDepositApplied(kept));
  const refund = { householdId, loanId, amountMinorUnits: costs.refundMinorUnits };
  if (refund.amountMinorUnits > 0)
    drafts.push(
      ...(refundTo === 'balance'
        ? loanDepositApplied(refund)
        : loanDepositReturned({ ...refund, till: refundTo === 'cash' ? 'cash_tin' : 'bank' })),
    );
  if (drafts.length === 0) return;
  await postEntry(tx, context, {
    ...{ what: 'loan-back', onDay: todayOf(context), drafts, subjectId: loanId, note: item.name },
    ...(context.actor.householdId === householdId ? {} : { enteredFor: householdId }),
  });
}

import type { Tx } from '@sheafbook/db';
import type { BookingRow, EquipmentItemRow, LoanRow } from '@sheafbook/db/tables';
import { loanDepositFromBalance, loanDepositReceived, type MovementDraft } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { updateBooking } from '../booking/queries.ts';
import { listParts, replaceMissing } from '../equipment/queries.ts';
import { listUnitStates } from '../equipment/use-cases.ts';
import { checkTicksOut, lackingOf, piecesOf, type Tick } from './parts.ts';
import { insertLoan, insertLoanParts } from './queries.ts';
import type { Money } from './schema.ts';

export type Going = {
  readonly item: EquipmentItemRow;
  readonly booking: BookingRow;
  readonly householdId: string;
  readonly at: Date;
  readonly parts: readonly Tick[];
  readonly takenBy: string;
  readonly depositFrom: Money;
  readonly note: string;
  readonly relayedFromId?: string;
};

/**
 * A piece goes out: its parts are ticked, its deposit is taken. Fewer parts than the book has are written down as missing
 * before this loan, so that whoever takes it now answers for what they got. Never without a critical part, never broken,
 * dirty or due for service.
 */
export async function openLoan(tx: Tx, context: Context, going: Going): Promise<LoanRow> {
  const { item, booking, householdId, parts: ticks } = going;
  const { storehouseId, personId } = context.actor;
  const parts = await listParts(tx, storehouseId, [item.equipmentItemId]);
  checkTicksOut(parts, ticks);
  await refuseUnfit(tx, context, going);
  const lacking = lackingOf(parts, ticks);
  const isCrippled = lacking.some(({ partId }) =>
    parts.some((part) => part.equipmentPartId === partId && part.isCritical),
  );
  if (isCrippled) throw new Problem('equipment-unfit', { blockers: ['critical-part-missing'] });
  await replaceMissing(tx, { storehouseId, equipmentUnitId: booking.equipmentUnitId }, lacking);
  const loan = await insertLoan(tx, {
    ...{ storehouseId, loanId: newId(context), bookingId: booking.bookingId, householdId },
    ...{ equipmentUnitId: booking.equipmentUnitId, outAt: going.at, dueAt: booking.endsAt },
    ...{ handedOutBy: personId, takenBy: going.takenBy, noteOut: going.note },
    ...{ depositMinorUnits: item.depositMinorUnits, depositFrom: accountName(going.depositFrom) },
    relayedFromId: going.relayedFromId ?? null,
  });
  await insertLoanParts(
    tx,
    parts.map(({ equipmentPartId, name, isCritical, valueMinorUnits }) => ({
      ...{ storehouseId, loanId: loan.loanId, equipmentPartId, name, isCritical, valueMinorUnits },
      outPieces: piecesOf(ticks, equipmentPartId),
    })),
  );
  await updateBooking(tx, booking, { state: 'out' });
  await takeDeposit(tx, context, going, loan);
  return loan;
}

async function refuseUnfit(tx: Tx, context: Context, { item, booking, relayedFromId }: Going): Promise<void> {
  const states = await listUnitStates(tx, context, [item]);
  const state = states.find(({ unit }) => unit.equipmentUnitId === booking.equipmentUnitId);
  if (!state) return;
  const isFound = (blocker: string) => blocker !== 'critical-part-missing'; // the parts are counted now
  const blockers: string[] = state.blockers.filter(isFound);
  if (state.unit.condition === 'dirty') blockers.push('dirty');
  if (state.dueBackAt && relayedFromId === undefined) blockers.push('out');
  if (blockers.length > 0) throw new Problem('equipment-unfit', { blockers });
}

async function takeDeposit(tx: Tx, context: Context, going: Going, loan: LoanRow): Promise<void> {
  const { depositMinorUnits: amountMinorUnits, householdId, loanId } = loan;
  if (amountMinorUnits === 0) return;
  const of = { householdId, loanId, amountMinorUnits };
  const { depositFrom } = going;
  const drafts: MovementDraft[] =
    depositFrom === 'balance'
      ? loanDepositFromBalance(of)
      : loanDepositReceived({ ...of, till: depositFrom === 'cash' ? 'cash_tin' : 'bank' });
  await postEntry(tx, context, {
    ...{ what: 'loan-out', onDay: todayOf(context), drafts, subjectId: loanId, note: going.item.name },
    ...(context.actor.householdId === householdId ? {} : { enteredFor: householdId }),
  });
}

/** As the columns of a loan have it. */
export function accountName(money: Money): 'bank' | 'cash_tin' | 'household' {
  if (money === 'balance') return 'household';
  return money === 'cash' ? 'cash_tin' : 'bank';
}

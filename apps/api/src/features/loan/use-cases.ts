import type { Tx } from '@sheafbook/db';
import type { BookingRow, EquipmentItemRow, LoanRow } from '@sheafbook/db/tables';
import { tillAccount } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBooking, updateBooking } from '../booking/queries.ts';
import {
  findOtherPiece,
  listNextTimes,
  lockBooking,
  offerFreedTimes,
  refuseUnless,
  startNow,
} from '../booking/use-cases.ts';
import { loadItem, loadUnit, lockItem } from '../equipment/queries.ts';
import { loadBalance } from '../money/queries.ts';
import { lookAtDesk } from './desk.ts';
import { endLoan } from './end-loan.ts';
import { momentOf } from './moment.ts';
import { openLoan } from './open-loan.ts';
import { mayHandle, mayTakeMoney, seesDesk } from './policy.ts';
import { findOpenLoan, listLoans, loadLoan } from './queries.ts';
import type { HandOnWish, HandOutWish, LoanQuery, Money, SwapWish, TakeBackWish } from './schema.ts';

/** Hands out what is booked: parts ticked by whoever takes it, deposit taken or left on the balance. */
export function handOut(context: Context, bookingId: string, wish: HandOutWish) {
  return withTx(context, async (tx) => {
    const booking = await lockBooking(tx, context, bookingId);
    const { householdId } = booking;
    if (!mayHandle(context.actor, householdId)) throw new Problem('not-your-household');
    refuseUnless(booking, 'booked');
    if (booking.purpose !== 'loan' || householdId === null) throw new Problem('booking-not-open');
    const item = await loadItem(tx, context.actor.storehouseId, booking.equipmentItemId);
    const at = momentOf(context, wish.happenedAt, booking.bookedAt);
    if (booking.endsAt <= at)
      throw new Problem('booking-not-open', { detail: 'The time of this booking is over. Book anew.' });
    refuseMoney(context, 'depositFrom', item.depositMinorUnits > 0 ? wish.depositFrom : 'balance');
    await refuseStillOut(tx, context, booking);
    const started = await startNow(tx, context, booking, at);
    const { loanId } = await openLoan(tx, context, { ...wish, item, at, booking: started, householdId });
    return readLoanInside(tx, context, loanId);
  });
}

/** Only the keeper takes money over the counter; the balance needs nobody. */
function refuseMoney({ actor }: Context, field: string, money: Money): void {
  if (money === 'balance' || mayTakeMoney(actor)) return;
  const message = 'Only the keeper takes or gives money. Let it stand on your balance.';
  throw new Problem('duty-missing', { detail: message, fields: [{ field, message }] });
}

/** The one before has it still: whoever comes next is shown another piece, or the next free times. */
async function refuseStillOut(tx: Tx, context: Context, booking: BookingRow): Promise<void> {
  const open = await findOpenLoan(tx, booking.storehouseId, booking.equipmentUnitId);
  if (!open) return;
  const instead = await swapFor(tx, context, booking);
  throw new Problem('equipment-unfit', {
    detail:
      instead.swap || instead.freeTimes.length > 0
        ? 'Whoever has it has not brought it back yet. Another one, or the next free times, are listed.'
        : 'Whoever has it has not brought it back yet, and nobody knows when it comes. Ask the keeper.',
    ...{ blockers: ['out'], ...instead },
  });
}

async function swapFor(tx: Tx, context: Context, booking: BookingRow) {
  const other = await findOtherPiece(tx, context, booking);
  const times = await listNextTimes(tx, context, booking);
  return {
    swap: other && { unitId: other.equipmentUnitId, unitNo: other.unitNo, code: other.unitCode },
    freeTimes: times.map(({ startsAt, endsAt, unitNo }) => ({
      ...{ startsAt: startsAt.toISOString(), endsAt: endsAt.toISOString(), unitNo },
    })),
  };
}

/** What a booking can be exchanged for while its piece is still out or unfit. */
export function readSwap(context: Context, bookingId: string) {
  return withTx(context, async (tx) => {
    const booking = await loadBooking(tx, context.actor.storehouseId, bookingId);
    if (!mayHandle(context.actor, booking.householdId)) throw new Problem('not-your-household');
    return swapFor(tx, context, booking);
  });
}

/** Exchanges a booking's piece for another of the same kind that is free at its time. */
export function swapPiece(context: Context, bookingId: string, { version }: SwapWish) {
  return withTx(context, async (tx) => {
    const booking = await lockBooking(tx, context, bookingId);
    if (!mayHandle(context.actor, booking.householdId)) throw new Problem('not-your-household');
    if (booking.version !== version)
      throw new Problem('stale-version', { newer: { version: booking.version } });
    refuseUnless(booking, 'booked');
    const other = await findOtherPiece(tx, context, booking);
    if (!other) throw new Problem('equipment-taken', await swapFor(tx, context, booking));
    const { equipmentUnitId } = other;
    return updateBooking(tx, booking, { equipmentUnitId, relayFromId: null, relayAgreedAt: null });
  });
}

/** Takes back what is out: parts ticked, costs charged, deposit settled. */
export function takeBack(context: Context, loanId: string, wish: TakeBackWish) {
  return withTx(context, async (tx) => {
    const { loan, item, booking } = await lockLoan(tx, context, loanId);
    if (!mayHandle(context.actor, loan.householdId)) throw new Problem('not-your-household');
    refuseMoney(context, 'refundTo', wish.refundTo);
    if (wish.damageMinorUnits > 0 && !mayTakeMoney(context.actor))
      throw fieldProblem('duty-missing', 'damageMinorUnits', 'Only the keeper says what damage costs.');
    await refuseEmptyTin(tx, context, wish, loan);
    const at = momentOf(context, wish.happenedAt, loan.outAt);
    await endLoan(tx, context, { ...wish, loan, item, booking, at, isRelayed: false });
    await offerFreedTimes(tx, context, item);
    return readLoanInside(tx, context, loanId);
  });
}

async function refuseEmptyTin(
  tx: Tx,
  { actor }: Context,
  { refundTo }: TakeBackWish,
  loan: LoanRow,
): Promise<void> {
  if (refundTo !== 'cash') return;
  const inTin = await loadBalance(tx, actor.storehouseId, tillAccount('cash_tin'));
  if (inTin < loan.depositMinorUnits)
    throw fieldProblem('not-enough-left', 'refundTo', 'The tin holds less than the deposit.');
}

/** A loan that is out, under the lock of its thing. */
async function lockLoan(tx: Tx, context: Context, loanId: string) {
  const { storehouseId } = context.actor;
  const { equipmentUnitId } = await loadLoan(tx, storehouseId, loanId);
  const { equipmentItemId } = await loadUnit(tx, storehouseId, equipmentUnitId);
  const item: EquipmentItemRow = await lockItem(tx, storehouseId, equipmentItemId);
  const loan = await loadLoan(tx, storehouseId, loanId);
  if (loan.inAt !== null) throw new Problem('not-out');
  return { loan, item, booking: await loadBooking(tx, storehouseId, loan.bookingId) };
}

/**
 * One borrower hands straight to the next: the one loan ends and the other begins in one act, with the parts ticked by
 * whoever takes it. Deposits go by the balances, since nobody stands at the till.
 */
export function handOn(context: Context, bookingId: string, wish: HandOnWish) {
  const { actor } = context;
  return withTx(context, async (tx) => {
    const to = await lockBooking(tx, context, bookingId);
    if (!mayHandle(actor, to.householdId)) throw new Problem('not-your-household');
    refuseUnless(to, 'booked');
    if (to.relayFromId === null || to.relayAgreedAt === null || to.householdId === null)
      throw new Problem('relay-refused', { detail: 'The two have not agreed to hand it on.' });
    const from = await loadBooking(tx, actor.storehouseId, to.relayFromId);
    const open = await findOpenLoan(tx, actor.storehouseId, to.equipmentUnitId);
    if (!open || open.bookingId !== from.bookingId) throw new Problem('not-out');
    const item = await loadItem(tx, actor.storehouseId, to.equipmentItemId);
    const { parts, takenBy, broughtBy, note, uses } = wish;
    const at = momentOf(context, wish.happenedAt, open.outAt);
    await endLoan(tx, context, {
      ...{ item, booking: from, loan: open, at, parts, broughtBy, note, uses },
      ...{ condition: 'ready', damageMinorUnits: 0, refundTo: 'balance', isRelayed: true },
    });
    const { loanId } = await openLoan(tx, context, {
      ...{ item, at, booking: await startNow(tx, context, to, at), householdId: to.householdId },
      ...{ parts, takenBy, depositFrom: 'balance', note, relayedFromId: open.loanId },
    });
    return readLoanInside(tx, context, loanId);
  });
}

export async function readLoanInside(tx: Tx, { actor }: Context, loanId: string) {
  const [row] = await listLoans(tx, actor.storehouseId, { loanId });
  if (!row) throw new Problem('thing-not-found', { thing: 'loan' });
  return row;
}
export type LoanRead = Awaited<ReturnType<typeof readLoanInside>>;

/** One loan: its own household's, or for those who see the desk. */
export function readLoan(context: Context, loanId: string) {
  return withTx(context, async (tx) => {
    const row = await readLoanInside(tx, context, loanId);
    const { householdId } = row.loan;
    if (!seesDesk(context.actor) && context.actor.householdId !== householdId)
      throw new Problem('not-your-household');
    await noteLook(tx, context, [row]);
    return row;
  });
}

/** A household's own loans; all of them for those who see the desk and belong to none. */
export function readOwnLoans(context: Context, { state }: LoanQuery) {
  const { storehouseId, householdId } = context.actor;
  if (householdId === null) throw new Problem('household-needed');
  return withTx(context, (tx) => listLoans(tx, storehouseId, { householdId, isOut: state === 'out' }));
}

/** Every loan of a thing, for those who see the desk; a member sees its own. */
export function readLoansOfItem(context: Context, itemId: string) {
  const { storehouseId, householdId } = context.actor;
  const own = seesDesk(context.actor) ? undefined : (householdId ?? context.actor.personId);
  return withTx(context, async (tx) => {
    await loadItem(tx, storehouseId, itemId);
    const rows = await listLoans(tx, storehouseId, { itemId, householdId: own });
    await noteLook(tx, context, rows);
    return rows;
  });
}

/** Every loan that is out, for those who see the desk. */
export async function listLoansOut(tx: Tx, context: Context) {
  const rows = await listLoans(tx, context.actor.storehouseId, { isOut: true });
  await noteLook(tx, context, rows);
  return rows;
}

const noteLook = (tx: Tx, context: Context, rows: readonly LoanRead[]) =>
  notePrivateRead(tx, context, {
    householdIds: rows.map(({ loan }) => loan.householdId),
    what: 'loans',
    purpose: 'looking after equipment',
  });

/**
 * What is out and due, what is late and whom it holds up, who comes next, what is dirty, broken, incomplete or due for
 * service, and who waits.
 */
export const readDesk = (context: Context) => withTx(context, (tx) => lookAtDesk(tx, context));

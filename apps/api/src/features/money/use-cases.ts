import type { Tx } from '@sheafbook/db';
import type { MovementDraft } from '@sheafbook/ledger';
import * as ledger from '@sheafbook/ledger';
import { formatMoney } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForShare, requireStage } from '../buy/queries.ts';
import { refuseClosedDay } from '../period/queries.ts';
import { loadSupplier } from '../supplier/queries.ts';
import { mayReadAmounts } from './policy.ts';
import type { Posted } from './present.ts';
import {
  findSamePayment,
  listDepositsOfBuy,
  listYearAccounts,
  loadBalance,
  loadInvoice,
  lockHousehold,
  refuseUnknownItem,
  sumFund,
} from './queries.ts';
import type {
  Deposit,
  DepositRefund,
  FundSpending,
  HardshipCover,
  OpeningBalance,
  Payment,
  PlainMoney,
  Refund,
  SupplierPayment,
  TillMoney,
  YearEndWish,
} from './schema.ts';

export { isSettled as isDepositSettled, presentPosted } from './present.ts';

/** A household pays, in part or beyond what it owes. The same receipt twice within two days is asked about first. */
export function receivePayment(context: Context, wish: Payment): Promise<Posted> {
  return withTx(context, (tx) => receivePaymentIn(tx, context, wish));
}

/** The same in a transaction that runs already, such as a bank line's that becomes the payment. */
export async function receivePaymentIn(tx: Tx, context: Context, wish: Payment): Promise<Posted> {
  const onDay = checkedDay(context, wish);
  const { householdId, minorUnits } = wish;
  const drafts = ledger.paymentReceived({ householdId, amountMinorUnits: minorUnits, till: tillOf(wish) });
  // Sent together down one connection, in this order: the look for a twin comes after the lock, posting after both.
  const [, , posted] = await Promise.all([
    lockHousehold(tx, context.actor.storehouseId, householdId),
    wish.isKnownDuplicate ? undefined : refuseSamePayment(tx, context, { ...wish, onDay }),
    postMoney(tx, context, { ...wish, what: 'payment-received', onDay, drafts }),
  ]);
  return posted;
}

/** A household's credit is paid out, never more than there is. */
export function refundCredit(context: Context, wish: Refund): Promise<Posted> {
  return withTx(context, (tx) => refundCreditIn(tx, context, wish));
}

export async function refundCreditIn(tx: Tx, context: Context, wish: Refund): Promise<Posted> {
  const onDay = checkedDay(context, wish);
  const { householdId } = await lockHousehold(tx, context.actor.storehouseId, wish.householdId);
  await refuseEmptyTin(tx, context, wish);
  const drafts = ledger.paymentRefunded({
    householdId,
    amountMinorUnits: wish.minorUnits,
    till: tillOf(wish),
  });
  const posted = await postMoney(tx, context, { ...wish, what: 'payment-refunded', onDay, drafts });
  await refuseSpentCredit(tx, context, householdId);
  return posted;
}

export function chargeBank(context: Context, wish: PlainMoney): Promise<Posted> {
  return withTx(context, (tx) => chargeBankIn(tx, context, wish));
}

export async function chargeBankIn(tx: Tx, context: Context, wish: PlainMoney): Promise<Posted> {
  const onDay = checkedDay(context, wish);
  const drafts = ledger.bankCharge({ amountMinorUnits: wish.minorUnits });
  return postMoney(tx, context, { ...wish, what: 'bank-charge', onDay, drafts });
}

/** Cash goes to the bank; the tin can't give what it hasn't got. */
export function bankCash(context: Context, wish: PlainMoney): Promise<Posted> {
  return withTx(context, (tx) => bankCashIn(tx, context, wish));
}

export async function bankCashIn(tx: Tx, context: Context, wish: PlainMoney): Promise<Posted> {
  const onDay = checkedDay(context, wish);
  const drafts = ledger.cashBanked({ amountMinorUnits: wish.minorUnits });
  await refuseEmptyTin(tx, context, { ...wish, till: 'cash' });
  return postMoney(tx, context, { ...wish, what: 'cash-banked', onDay, drafts });
}

export function receiveFund(context: Context, wish: TillMoney): Promise<Posted> {
  return withTx(context, (tx) => receiveFundIn(tx, context, wish));
}

export async function receiveFundIn(tx: Tx, context: Context, wish: TillMoney): Promise<Posted> {
  const onDay = checkedDay(context, wish);
  const drafts = ledger.fundReceived({ amountMinorUnits: wish.minorUnits, till: tillOf(wish) });
  return postMoney(tx, context, { ...wish, what: 'fund-received', onDay, drafts });
}

export function spendFund(context: Context, wish: FundSpending): Promise<Posted> {
  return withTx(context, (tx) => spendFundIn(tx, context, wish));
}

/** Pays for repairs and parts; where it names a thing, what that thing cost can be told. */
export async function spendFundIn(tx: Tx, context: Context, wish: FundSpending): Promise<Posted> {
  const onDay = checkedDay(context, wish);
  const { minorUnits, itemId } = wish;
  if (itemId !== undefined) await refuseUnknownItem(tx, context.actor.storehouseId, itemId);
  const drafts = ledger.fundSpent({ amountMinorUnits: minorUnits, till: tillOf(wish), itemId });
  await refuseEmptyTin(tx, context, wish);
  return postMoney(tx, context, { ...wish, what: 'fund-spent', onDay, drafts });
}

/** The store fund takes over what a household can't pay: never more than it owes, never more than the fund holds. */
export function coverHardship(context: Context, wish: HardshipCover): Promise<Posted> {
  const { storehouseId } = context.actor;
  const onDay = checkedDay(context, wish);
  return withTx(context, async (tx) => {
    const { householdId } = await lockHousehold(tx, storehouseId, wish.householdId);
    const drafts = ledger.hardshipCovered({ householdId, amountMinorUnits: wish.minorUnits });
    const entry = { ...wish, what: 'hardship-covered', note: wish.reason, onDay, drafts };
    const posted = await postMoney(tx, context, entry);
    await refuseSettledDebt(tx, context, householdId);
    if ((await sumFund(tx, storehouseId)) < 0)
      throw fieldProblem('not-enough-left', 'minorUnits', 'The store fund holds less than that.');
    return posted;
  });
}

/** Pays a supplier what it is owed; more only where the treasurer says that it is paid before its bill. */
export function paySupplier(context: Context, wish: SupplierPayment): Promise<Posted> {
  return withTx(context, (tx) => paySupplierIn(tx, context, wish));
}

export async function paySupplierIn(tx: Tx, context: Context, wish: SupplierPayment): Promise<Posted> {
  const { storehouseId } = context.actor;
  const onDay = checkedDay(context, wish);
  const { supplierId } = await loadSupplier(tx, storehouseId, wish.supplierId);
  const invoice =
    wish.invoiceId === undefined ? undefined : await loadInvoice(tx, storehouseId, wish.invoiceId);
  if (invoice && invoice.supplierId !== supplierId)
    throw fieldProblem('invalid-input', 'invoiceId', 'This bill came from another supplier.');
  if (invoice) await lockBuyForShare(tx, storehouseId, invoice.buyId);
  await refuseEmptyTin(tx, context, wish);
  const drafts = ledger.supplierPaid({
    supplierId,
    amountMinorUnits: wish.minorUnits,
    till: tillOf(wish),
  });
  const about = { buyId: invoice?.buyId, subjectId: invoice?.invoiceId };
  const posted = await postMoney(tx, context, { ...wish, ...about, what: 'supplier-paid', onDay, drafts });
  const balance = await loadBalance(tx, storehouseId, ledger.supplierAccount(supplierId));
  if (balance > 0 && !wish.isPrepayment)
    throw fieldProblem(
      'not-enough-left',
      'minorUnits',
      'This supplier is owed less than that. Say that it is a prepayment if it is one.',
    );
  return posted;
}

/** A balance brought over from the book kept before this one, against the store fund. */
export function openBalance(context: Context, wish: OpeningBalance): Promise<Posted> {
  const { storehouseId } = context.actor;
  const onDay = checkedDay(context, wish);
  const balanceMinorUnits = wish.balanceMinorUnits;
  return withTx(context, async (tx) => {
    if (wish.householdId) await lockHousehold(tx, storehouseId, wish.householdId);
    if (wish.supplierId) await loadSupplier(tx, storehouseId, wish.supplierId);
    if (wish.of === 'cash' && balanceMinorUnits < 0)
      await refuseEmptyTin(tx, context, {
        till: 'cash',
        minorUnits: -balanceMinorUnits,
        field: 'balanceMinorUnits',
      });
    const drafts = ledger.openingBalance({ account: openedAccount(wish), balanceMinorUnits });
    const entry = {
      what: 'opening-balance',
      minorUnits: balanceMinorUnits,
      note: wish.reason,
      onDay,
      drafts,
    };
    return postMoney(tx, context, entry);
  });
}

function openedAccount(wish: OpeningBalance): ledger.AccountKey {
  if (wish.householdId) return ledger.householdAccount(wish.householdId);
  if (wish.supplierId) return ledger.supplierAccount(wish.supplierId);
  return ledger.tillAccount(wish.of === 'cash' ? 'cash_tin' : 'bank');
}

/** Income and expenses through a day end in the store fund; what was carried before is not carried again. */
export function endYear(context: Context, { throughOn, note }: YearEndWish): Promise<Posted> {
  const { storehouseId } = context.actor;
  refuseFutureDay(context, { field: 'throughOn', on: throughOn });
  return withTx(context, async (tx) => {
    await refuseClosedDay(tx, storehouseId, { field: 'throughOn', on: throughOn });
    const accounts = (await listYearAccounts(tx, storehouseId, throughOn)).map(
      ({ kind, causeId, balance }) => ({
        key: ledger.moneyAccount(kind, { causeId }),
        balanceMinorUnits: balance,
      }),
    );
    if (accounts.length === 0)
      throw fieldProblem(
        'nothing-to-post',
        'throughOn',
        'Nothing came in or went out that is not carried yet.',
      );
    const minorUnits = -accounts.reduce((sum, account) => sum + account.balanceMinorUnits, 0);
    const drafts = ledger.yearEnd({ accounts });
    return postMoney(tx, context, { what: 'year-end', onDay: throughOn, minorUnits, note, drafts });
  });
}

/** What `endYear` would carry through a day, before anything is posted. */
export function previewYearEnd(context: Context, throughOn: string) {
  const { storehouseId, currency } = context.actor;
  return withTx(context, async (tx) => ({
    currency,
    throughOn,
    accounts: await listYearAccounts(tx, storehouseId, throughOn),
  }));
}

/** A household leaves a deposit on a buy: in money, or by letting its credit stand for it. It needs no ask. */
export function takeDeposit(context: Context, buyId: string, wish: Deposit): Promise<Posted> {
  return withTx(context, (tx) => takeDepositIn(tx, context, { ...wish, buyId }));
}

export async function takeDepositIn(
  tx: Tx,
  context: Context,
  { buyId, ...wish }: Deposit & { buyId: string },
): Promise<Posted> {
  const onDay = checkedDay(context, wish);
  const { householdId } = await lockOpenBuyAndHousehold(tx, context, { buyId, ...wish });
  const of = { householdId, buyId, amountMinorUnits: wish.minorUnits };
  const drafts =
    wish.till === undefined
      ? ledger.depositFromBalance(of)
      : ledger.depositReceived({ ...of, till: tillOf({ till: wish.till }) });
  const what = wish.fromBalance ? 'deposit-from-balance' : 'deposit-received';
  const posted = await postMoney(tx, context, { ...wish, buyId, what, onDay, drafts });
  if (wish.fromBalance) await refuseSpentCredit(tx, context, householdId);
  return posted;
}

/**
 * A deposit goes back, in money or on the household's balance; never more than is held. Also one that a buy still holds
 * after it ended, which is a mistake to mend.
 */
export function refundDeposit(context: Context, buyId: string, wish: DepositRefund): Promise<Posted> {
  const { storehouseId } = context.actor;
  const onDay = checkedDay(context, wish);
  return withTx(context, async (tx) => {
    await lockBuyForShare(tx, storehouseId, buyId);
    const { householdId } = await lockHousehold(tx, storehouseId, wish.householdId);
    const held = -(await loadBalance(tx, storehouseId, ledger.depositAccount({ householdId, buyId })));
    if (held < wish.minorUnits)
      throw fieldProblem('not-enough-left', 'minorUnits', 'The deposit on this buy is smaller than that.');
    if (wish.till) await refuseEmptyTin(tx, context, { ...wish, till: wish.till });
    const to = wish.till === undefined ? ('household' as const) : tillOf({ till: wish.till });
    const drafts = ledger.depositRefunded({ householdId, buyId, amountMinorUnits: wish.minorUnits, to });
    return postMoney(tx, context, { ...wish, buyId, what: 'deposit-refunded', onDay, drafts });
  });
}

async function lockOpenBuyAndHousehold(
  tx: Tx,
  { actor }: Context,
  of: { buyId: string; householdId: string },
) {
  const buy = await lockBuyForShare(tx, actor.storehouseId, of.buyId);
  const household = await lockHousehold(tx, actor.storehouseId, of.householdId);
  requireStage(buy, 'planning', 'gathering', 'fixed', 'ordered', 'landed', 'shared-out');
  return household;
}

/** Who has a deposit on a buy: amounts for the treasurer and the reviewer, yes or no for the coordinator. */
export function listDeposits(context: Context, buyId: string) {
  const { storehouseId } = context.actor;
  const showsAmounts = mayReadAmounts(context.actor);
  return withTx(context, async (tx) => {
    await loadBuy(tx, storehouseId, buyId);
    const rows = await listDepositsOfBuy(tx, storehouseId, buyId);
    const householdIds = showsAmounts ? rows.map((row) => row.householdId) : [];
    await notePrivateRead(tx, context, { householdIds, what: 'deposits', purpose: 'deposits of a buy' });
    return { rows, showsAmounts };
  });
}

type MoneyEntry = {
  readonly what: string;
  readonly onDay: string;
  readonly minorUnits: number;
  readonly note?: string;
  readonly buyId?: string | undefined;
  readonly subjectId?: string | undefined;
  readonly drafts: readonly MovementDraft[];
};

/** Posts one money entry in the caller's transaction, on a day of an open period. */
export async function postMoney(tx: Tx, context: Context, entry: MoneyEntry): Promise<Posted> {
  const { storehouseId, currency } = context.actor;
  const { what, onDay, minorUnits } = entry;
  const { note, buyId, subjectId, drafts } = entry;
  const [, posted] = await Promise.all([
    refuseClosedDay(tx, storehouseId, { field: 'onDay', on: onDay }),
    postEntry(tx, context, { what, onDay, note, buyId, subjectId, drafts }),
  ]);
  return { ...posted, what, onDay, minorUnits, currency };
}

/** The day of a money command: today unless it says another, which must have come. Its currency is the book's own. */
export function checkedDay(
  context: Context,
  wish: { onDay?: string | undefined; currency?: string | undefined },
) {
  const { currency } = context.actor;
  if (wish.currency !== undefined && wish.currency !== currency)
    throw fieldProblem(
      'currency-mixed',
      'currency',
      `This book is kept in ${currency}. Enter what was paid in ${currency}, and the foreign price in the note.`,
    );
  if (wish.onDay !== undefined) refuseFutureDay(context, { field: 'onDay', on: wish.onDay });
  return wish.onDay ?? todayOf(context);
}

const tillOf = ({ till }: { till: 'bank' | 'cash' }): ledger.Till => (till === 'cash' ? 'cash_tin' : 'bank');

async function refuseSamePayment(tx: Tx, { actor }: Context, payment: Payment & { onDay: string }) {
  const same = await findSamePayment(tx, actor.storehouseId, payment);
  if (same)
    throw new Problem('looks-like-a-duplicate', {
      detail: `Entry ${same.entryNo} of ${same.onDay} has the same amount from the same household. Send isKnownDuplicate if both were paid.`,
      fields: [{ field: 'isKnownDuplicate', message: 'Say so if this is a second payment.' }],
      entryNo: same.entryNo,
      onDay: same.onDay,
    });
}

export async function refuseEmptyTin(
  tx: Tx,
  { actor }: Context,
  spending: { till: 'bank' | 'cash'; minorUnits: number; field?: string },
): Promise<void> {
  if (spending.till !== 'cash') return;
  const held = await loadBalance(tx, actor.storehouseId, ledger.tillAccount('cash_tin'));
  if (held < spending.minorUnits)
    throw fieldProblem(
      'not-enough-left',
      spending.field ?? 'minorUnits',
      `The cash tin holds ${formatMoney(held, actor.currency, 'en')} ${actor.currency}.`,
    );
}

/**
 * Looked at after posting, which holds the account's lock: a charge that comes in meanwhile waits, so the credit can't
 * be paid out and charged away at once. The amount itself is not told, since a refusal leaves no trace of the look.
 */
async function refuseSpentCredit(tx: Tx, { actor }: Context, householdId: string): Promise<void> {
  const balance = await loadBalance(tx, actor.storehouseId, ledger.householdAccount(householdId));
  if (balance > 0)
    throw fieldProblem('not-enough-left', 'minorUnits', 'The household’s credit is smaller than that.');
}

/** The other way round, for what lessens a debt: it can't turn into a credit. Looked at after posting, too. */
export async function refuseSettledDebt(tx: Tx, { actor }: Context, householdId: string): Promise<void> {
  const balance = await loadBalance(tx, actor.storehouseId, ledger.householdAccount(householdId));
  if (balance < 0) throw fieldProblem('not-enough-left', 'minorUnits', 'The household owes less than that.');
}

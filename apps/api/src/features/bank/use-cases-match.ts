import type { Tx } from '@sheafbook/db';
import type { BankLineRow, BankMatchRow } from '@sheafbook/db/tables';
import { questionReceipt } from '@sheafbook/ledger';
import { formatMoney } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { lockBook } from '../../platform/lock-book.ts';
import { reverseEntry } from '../../platform/post-entry.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { refusing } from '../../platform/to-problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockBuyForShare, lockBuyForUpdate } from '../buy/queries.ts';
import { listDepositsOfBuy, lockHousehold } from '../money/queries.ts';
import {
  bankCashIn,
  chargeBankIn,
  paySupplierIn,
  receiveFundIn,
  receivePaymentIn,
  refundCreditIn,
  spendFundIn,
  takeDepositIn,
} from '../money/use-cases.ts';
import { refuseClosedDay } from '../period/queries.ts';
import { findMatch, findMatchOfEntry, insertMatch, loadLine, updateUndone } from './queries.ts';
import { listEntriesAtBank, listReceipts, loadAbout } from './queries-book.ts';
import type { MatchWish, PostWish, SetAsideWish, UndoWish } from './schema.ts';

/** A line of the bank is an entry that the book has already: the same amount, still standing, and no other line's. */
export function matchLine(
  context: Context,
  bankLineId: string,
  { entryId }: MatchWish,
): Promise<BankMatchRow> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await lockBook(tx); // an entry can't be taken back while its line is matched
    const line = await loadOpenLine(tx, storehouseId, bankLineId);
    const entry = (await listEntriesAtBank(tx, storehouseId)).find(
      (candidate) => candidate.entryId === entryId,
    );
    if (!entry)
      throw fieldProblem(
        'thing-not-found',
        'entryId',
        'No entry of the bank’s account that stands is this one.',
      );
    if (await findMatchOfEntry(tx, storehouseId, entryId)) throw new Problem('entry-already-matched');
    if (entry.minorUnits !== line.minorUnits)
      throw fieldProblem(
        'does-not-add-up',
        'entryId',
        `The line says ${say(context, line.minorUnits)}, the entry ${say(context, entry.minorUnits)}.`,
      );
    return insertMatch(tx, { ...matchOf(context, line), how: 'in-book', entryId });
  });
}

/** A line of the bank that the book does not have yet is posted, and matched with what it became, in one go. */
export function postLine(context: Context, bankLineId: string, wish: PostWish): Promise<BankMatchRow> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const line = await loadOpenLine(tx, storehouseId, bankLineId);
    refuseWrongWay(line, wish);
    const { entryId } = await post(tx, context, { line, wish });
    return insertMatch(tx, { ...matchOf(context, line), how: 'posted', entryId, reason: wish.answer });
  });
}

/** A line that is none of the book's: another account's, or one that the bank took back itself. */
export function setLineAside(
  context: Context,
  bankLineId: string,
  { reason }: SetAsideWish,
): Promise<BankMatchRow> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const line = await loadOpenLine(tx, storehouseId, bankLineId);
    return insertMatch(tx, { ...matchOf(context, line), how: 'set-aside', reason });
  });
}

/** Lets a line go, so that it is open again. What it was posted as stays in the book unless that is taken back, too. */
export function undoLine(context: Context, bankLineId: string, wish: UndoWish): Promise<BankMatchRow> {
  const { storehouseId, personId } = context.actor;
  const onDay = todayOf(context);
  const work = async (tx: Tx) => {
    await loadLine(tx, storehouseId, bankLineId);
    const match = await findMatch(tx, storehouseId, bankLineId);
    if (!match)
      throw new Problem('thing-not-found', { thing: 'match', detail: 'This line is open already.' });
    if (wish.takesBack && match.how !== 'posted')
      throw fieldProblem(
        'cannot-reverse',
        'takesBack',
        'This line was matched with an entry that was there before. Take that back in the book, if it is wrong.',
      );
    const about = await loadAbout(tx, storehouseId, match);
    if (wish.takesBack && about.buyId) await lockBuyForUpdate(tx, storehouseId, about.buyId);
    const set = { undoneBy: personId, undoneAt: context.now(), undoneBecause: wish.reason };
    const undone = await updateUndone(tx, match, set);
    if (!undone) throw new Problem('busy-retry');
    if (!wish.takesBack || match.entryId === null) return undone;
    await refuseClosedDay(tx, storehouseId, { field: 'takesBack', on: onDay });
    await reverseEntry(tx, context, {
      what: 'reversal',
      onDay,
      reversesId: match.entryId,
      note: wish.reason,
      ...about,
    });
    return undone;
  };
  return withTx(context, work).catch(refusing(GUARDS, (cause) => new Problem('cannot-reverse', { cause })));
}

/** What it moved has moved on: a deposit was applied, a buy closed. */
const GUARDS = new Set(['account_never_below_zero', 'account_never_above_zero', 'account_closed_at_zero']);

async function loadOpenLine(tx: Tx, storehouseId: string, bankLineId: string): Promise<BankLineRow> {
  const line = await loadLine(tx, storehouseId, bankLineId);
  if (await findMatch(tx, storehouseId, bankLineId)) throw new Problem('line-already-matched');
  return line;
}

const matchOf = ({ actor, now }: Context, { bankLineId }: BankLineRow) => ({
  ...{ storehouseId: actor.storehouseId, bankLineId, matchedBy: actor.personId, matchedAt: now() },
});

const say = ({ actor }: Context, minorUnits: number): string =>
  `${formatMoney(minorUnits, actor.currency, 'en')} ${actor.currency}`;

const CAME_IN: readonly PostWish['as'][] = ['payment', 'deposit', 'gift', 'cash-banked'];

function refuseWrongWay(line: BankLineRow, { as }: PostWish): void {
  const cameIn = line.minorUnits > 0;
  if (CAME_IN.includes(as) === cameIn) return;
  throw fieldProblem(
    'invalid-input',
    'as',
    cameIn ? 'This line came in, and that goes out.' : 'This line went out, and that comes in.',
  );
}

type Posting = { readonly line: BankLineRow; readonly wish: PostWish };

async function post(tx: Tx, context: Context, { line, wish }: Posting): Promise<{ entryId: string }> {
  const { householdId, buyId, supplierId, isPrepayment } = wish;
  const money = {
    ...{ minorUnits: Math.abs(line.minorUnits), onDay: wish.onDay ?? line.onDay, note: line.words },
    till: 'bank' as const,
  };
  if (householdId !== null) {
    if (wish.as === 'refund') return refundCreditIn(tx, context, { ...money, householdId });
    const receipt = { line, wish, householdId };
    if (buyId !== null) await lockBuyForShare(tx, context.actor.storehouseId, buyId);
    await lockHousehold(tx, context.actor.storehouseId, householdId);
    await questionSecond(tx, context, receipt);
    return buyId === null
      ? receivePaymentIn(tx, context, { ...money, householdId, isKnownDuplicate: true })
      : takeDepositIn(tx, context, { ...money, householdId, buyId, fromBalance: false });
  }
  if (supplierId !== null) return paySupplierIn(tx, context, { ...money, supplierId, isPrepayment });
  if (wish.as === 'gift') return receiveFundIn(tx, context, money);
  if (wish.as === 'repairs') return spendFundIn(tx, context, money);
  const { till, ...plain } = money;
  return wish.as === 'cash-banked' ? bankCashIn(tx, context, plain) : chargeBankIn(tx, context, plain);
}

/**
 * Asks before a receipt is posted that looks like the second for one thing: the same household paid the same amount
 * within a month, or the deposit on this buy is paid. A written answer lets it through. Looked at under the household's
 * lock, so that two hands can't both post the first.
 */
async function questionSecond(
  tx: Tx,
  context: Context,
  { line, wish, householdId }: Posting & { householdId: string },
): Promise<void> {
  if (wish.answer !== '') return;
  const { storehouseId } = context.actor;
  const receipts = await listReceipts(tx, storehouseId, { householdId, minorUnits: line.minorUnits });
  const question = questionReceipt(line, receipts);
  const booked = receipts.find(({ entryId }) => entryId === question?.entryId);
  if (question && booked) {
    const of = booked.buy === null ? '' : ` as the deposit on ${booked.buy}`;
    const advice = booked.isInTin ? IN_TIN : booked.isAtBank ? AT_BANK : WAITS;
    throw second(
      `Entry ${booked.entryNo} of ${booked.onDay} has ${say(context, line.minorUnits)} from this household${of} already. ${advice}`,
      {
        because: question.because,
        entryId: booked.entryId,
        entryNo: booked.entryNo,
        mayBeThis: !booked.isInTin && !booked.isAtBank,
      },
    );
  }
  if (wish.buyId === null) return;
  const asked = (await listDepositsOfBuy(tx, storehouseId, wish.buyId)).find(
    (row) => row.householdId === householdId,
  );
  if (asked && asked.heldMinorUnits > 0 && asked.heldMinorUnits >= (asked.askedMinorUnits ?? 0))
    throw second(
      `The deposit of this household on this buy is paid: ${say(context, asked.heldMinorUnits)} is held.`,
      {
        because: 'deposit-already-paid',
        entryId: null,
      },
    );
}

const IN_TIN = 'It came into the cash tin.';
const AT_BANK = 'Another line of the bank is matched with it.';
const WAITS = 'No line of the bank is matched with it yet: match this line with it if it is the same money.';

const second = (detail: string, facts: Record<string, unknown>): Problem =>
  new Problem('second-receipt', {
    detail,
    fields: [{ field: 'answer', message: 'Say why this is not a second receipt for the same thing.' }],
    ...facts,
  });

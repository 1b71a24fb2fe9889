import type { Tx } from '@sheafbook/db';
import { storeFundAccount } from '@sheafbook/ledger';
import { formatMoney } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { lockBook } from '../../platform/lock-book.ts';
import { newId } from '../../platform/new-id.ts';
import { type PageQuery, pageOf } from '../../platform/paging.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBalance, refuseUnknownItem, sumFund } from '../money/queries.ts';
import { checkedDay, spendFundIn } from '../money/use-cases.ts';
import {
  type FundPromiseReading,
  findSpending,
  insertFundPromise,
  listFundPromises,
  loadFundPromise,
  lockFundPromise,
  sumPromised,
  updateFundPromise,
} from './queries.ts';
import type { Fulfilment, FundPromiseWish, PromiseWithdrawal, promisePayment } from './schema.ts';

/** What is in the store fund and what of it is free (job map 3.2, question 9). */
export type FundStand = {
  /** The store fund's own account, as the last year's end left it and what was booked to it since. */
  readonly heldMinorUnits: number;
  /** Income less expenses that the year's end has still to carry into it; below zero more was spent. */
  readonly yearMinorUnits: number;
  readonly promisedMinorUnits: number;
  readonly freeMinorUnits: number;
};

/**
 * A repair that is paid counts at once, or a promise that is fulfilled would be free again until the year's end.
 */
export async function standOfFund(tx: Tx, storehouseId: string): Promise<FundStand> {
  const heldMinorUnits = -(await loadBalance(tx, storehouseId, storeFundAccount()));
  const withYear = await sumFund(tx, storehouseId);
  const promisedMinorUnits = await sumPromised(tx, storehouseId);
  return {
    heldMinorUnits,
    yearMinorUnits: withYear - heldMinorUnits,
    promisedMinorUnits,
    freeMinorUnits: withYear - promisedMinorUnits,
  };
}

export function readFund(context: Context, { after, limit }: PageQuery) {
  const { storehouseId, currency } = context.actor;
  return withTx(context, async (tx) => {
    const rows = await listFundPromises(tx, storehouseId, { after, limit });
    const stand = await standOfFund(tx, storehouseId);
    return { stand, currency, ...pageOf(rows, limit, ({ promise }) => promise.fundPromiseId) };
  });
}

/** Promises an amount for a purpose; more than is free only with a reason, which stands among the exceptions. */
export function promiseFund(context: Context, wish: FundPromiseWish): Promise<FundPromiseReading> {
  const { storehouseId, personId, currency } = context.actor;
  checkedDay(context, wish);
  return withTx(context, async (tx) => {
    if (wish.itemId !== undefined) await refuseUnknownItem(tx, storehouseId, wish.itemId);
    await lockBook(tx); // two promises at once would both find the same money free
    const { freeMinorUnits } = await standOfFund(tx, storehouseId);
    const isTooMuch = wish.minorUnits > freeMinorUnits;
    if (isTooMuch && wish.overrideReason === undefined)
      throw fieldProblem(
        'not-enough-left',
        'minorUnits',
        `The store fund has ${formatMoney(Math.max(0, freeMinorUnits), currency, 'en')} free. Say why it is promised all the same, or promise less.`,
      );
    const { fundPromiseId } = await insertFundPromise(tx, {
      storehouseId,
      fundPromiseId: newId(context),
      minorUnits: wish.minorUnits,
      purpose: wish.purpose,
      equipmentItemId: wish.itemId ?? null,
      overrideReason: isTooMuch ? wish.overrideReason : '',
      approvedBy: personId,
      approvedAt: context.now(),
    });
    return loadFundPromise(tx, storehouseId, fundPromiseId);
  });
}

/** Pays what was promised: the entry and the promise's end are one. What it came to may differ from the promise. */
export function payPromise(
  context: Context,
  fundPromiseId: string,
  wish: ReturnType<typeof promisePayment.parse>,
): Promise<FundPromiseReading> {
  return withTx(context, async (tx) => {
    const { promise } = await lockOpen(tx, context, fundPromiseId);
    const itemId = promise.equipmentItemId ?? undefined;
    const note = wish.note === '' ? promise.purpose : wish.note;
    const { entryId } = await spendFundIn(tx, context, { ...wish, note, itemId });
    await updateFundPromise(tx, promise, { entryId });
    return loadFundPromise(tx, promise.storehouseId, fundPromiseId);
  });
}

/** Names the entry that fulfilled a promise, such as one that a line of the bank became or a write-off. */
export function fulfilPromise(
  context: Context,
  fundPromiseId: string,
  { entryNo }: Fulfilment,
): Promise<FundPromiseReading> {
  return withTx(context, async (tx) => {
    const { promise } = await lockOpen(tx, context, fundPromiseId);
    const entry = await findSpending(tx, promise.storehouseId, entryNo);
    if (!entry) throw fieldProblem('thing-not-found', 'entryNo', 'There is no entry of that number.');
    if (entry.isUndone) throw fieldProblem('invalid-input', 'entryNo', 'That entry was taken back.');
    if (entry.minorUnits <= 0)
      throw fieldProblem('invalid-input', 'entryNo', 'That entry takes nothing out of the store fund.');
    await updateFundPromise(tx, promise, { entryId: entry.entryId });
    return loadFundPromise(tx, promise.storehouseId, fundPromiseId);
  });
}

export function withdrawPromise(
  context: Context,
  fundPromiseId: string,
  { reason }: PromiseWithdrawal,
): Promise<FundPromiseReading> {
  return withTx(context, async (tx) => {
    const { promise } = await lockOpen(tx, context, fundPromiseId);
    await updateFundPromise(tx, promise, {
      entryId: null, // one that was taken back names nothing that counts
      withdrawnBy: context.actor.personId,
      withdrawnAt: context.now(),
      withdrawnBecause: reason,
    });
    return loadFundPromise(tx, promise.storehouseId, fundPromiseId);
  });
}

async function lockOpen(tx: Tx, context: Context, fundPromiseId: string): Promise<FundPromiseReading> {
  const { storehouseId } = context.actor;
  await lockFundPromise(tx, storehouseId, fundPromiseId);
  const found = await loadFundPromise(tx, storehouseId, fundPromiseId);
  if (found.promise.withdrawnAt !== null)
    throw new Problem('already-there', { detail: 'This promise was withdrawn already.' });
  if (found.isFulfilled)
    throw new Problem('already-there', { detail: 'This promise was fulfilled already.' });
  return found;
}

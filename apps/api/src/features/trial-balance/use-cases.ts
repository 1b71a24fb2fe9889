import { trialBalance } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy } from '../buy/queries.ts';
import { mayReadBooks } from './policy.ts';
import {
  listClearingParts,
  listHeldDeposits,
  listHeldLoanDeposits,
  listMoneyTotals,
  listOpenClaims,
  listSupplierStandings,
} from './queries.ts';

/** The books by chart number. Sums over all households tell nothing about one, so nothing is written down. */
export function readTrialBalance(context: Context, throughOn?: string) {
  const { storehouseId, currency } = context.actor;
  return withTx(context, async (tx) => ({
    currency,
    throughOn: throughOn ?? null,
    balance: trialBalance(await listMoneyTotals(tx, storehouseId, throughOn)),
  }));
}

/** A buy's clearing account on its way down to nothing. Notes may name a household, so not everyone reads them. */
export function readClearing(context: Context, buyId: string) {
  const { storehouseId, currency } = context.actor;
  return withTx(context, async (tx) => ({
    buy: await loadBuy(tx, storehouseId, buyId),
    parts: await listClearingParts(tx, storehouseId, buyId),
    showsNotes: mayReadBooks(context.actor),
    currency,
  }));
}

/** What is held for buys and for equipment that is out: accounts 2100 and 2150, household by household. */
export function readHeldDeposits(context: Context) {
  const { storehouseId, currency } = context.actor;
  return withTx(context, async (tx) => {
    const deposits = await listHeldDeposits(tx, storehouseId);
    const loanDeposits = await listHeldLoanDeposits(tx, storehouseId);
    const householdIds = [...deposits, ...loanDeposits].map(({ householdId }) => householdId);
    await notePrivateRead(tx, context, { householdIds, what: 'deposits', purpose: 'list of deposits held' });
    return { deposits, loanDeposits, currency };
  });
}

export function readOpenClaims(context: Context) {
  const { storehouseId, currency } = context.actor;
  const todayOn = todayOf(context);
  return withTx(context, async (tx) => ({
    claims: await listOpenClaims(tx, storehouseId),
    currency,
    todayOn,
  }));
}

/** Whom we buy from: what each billed, credited and was paid, what we owe it, and what we claim of it. */
export function readSupplierStandings(context: Context) {
  const { storehouseId, currency } = context.actor;
  return withTx(context, async (tx) => ({
    suppliers: await listSupplierStandings(tx, storehouseId),
    currency,
  }));
}

import type { AccountKey, MoneyKind } from './account-key.ts';

/** Where money is taken in or paid out: the bank or the cash tin. Units: none. Errors: none. */
export type Till = 'bank' | 'cash_tin';

/**
 * Builds the key of a money account from its kind, owner and cause.
 * Units: none. Errors: none.
 */
export function moneyAccount(
  kind: MoneyKind,
  keptApart: { readonly ownerId?: string; readonly causeId?: string | null } = {},
): AccountKey {
  return { kind, vesselId: null, ownerId: keptApart.ownerId ?? null, causeId: keptApart.causeId ?? null };
}

/** The bank or the cash tin. Units: minor units. Errors: none. */
export const tillAccount = (till: Till): AccountKey => moneyAccount(till);

/** A household's balance; above zero it owes. Units: minor units. Errors: none. */
export const householdAccount = (householdId: string): AccountKey =>
  moneyAccount('household', { ownerId: householdId });

/** What a supplier or a carrier is owed; below zero we owe. Units: minor units. Errors: none. */
export const supplierAccount = (supplierId: string): AccountKey =>
  moneyAccount('supplier', { ownerId: supplierId });

/** A claim against a supplier. Units: minor units. Errors: none. */
export const claimAccount = (claim: { readonly supplierId: string; readonly claimId: string }): AccountKey =>
  moneyAccount('supplier_claim', { ownerId: claim.supplierId, causeId: claim.claimId });

/** A household's deposit on a buy; below zero we hold it. Units: minor units. Errors: none. */
export const depositAccount = (deposit: {
  readonly householdId: string;
  readonly buyId: string;
}): AccountKey => moneyAccount('buy_deposit', { ownerId: deposit.householdId, causeId: deposit.buyId });

/** A household's deposit on a loan; below zero we hold it. Units: minor units. Errors: none. */
export const loanDepositAccount = (deposit: {
  readonly householdId: string;
  readonly loanId: string;
}): AccountKey => moneyAccount('loan_deposit', { ownerId: deposit.householdId, causeId: deposit.loanId });

/** A buy's clearing account: costs in, charges out. Units: minor units. Errors: none. */
export const clearingAccount = (buyId: string): AccountKey =>
  moneyAccount('buy_clearing', { causeId: buyId });

/** A packing session's clearing account: costs in, charges out. Units: minor units. Errors: none. */
export const sessionAccount = (sessionId: string): AccountKey =>
  moneyAccount('session_clearing', { causeId: sessionId });

/** Common food stock at cost, kept apart by lot where it is known, else by buy. Units: minor units. Errors: none. */
export const commonStockAccount = (causeId: string): AccountKey => moneyAccount('common_stock', { causeId });

/** The store fund; below zero it holds. Units: minor units. Errors: none. */
export const storeFundAccount = (): AccountKey => moneyAccount('store_fund');

import {
  clearingAccount,
  depositAccount,
  householdAccount,
  type Till,
  tillAccount,
} from '../money-accounts.ts';
import { debitCredit, type MovementDraft } from '../movement-draft.ts';

/** A household's deposit on a buy, and how much of it is meant. Units: minor units. Errors: none. */
export type DepositAmount = {
  readonly householdId: string;
  readonly buyId: string;
  readonly amountMinorUnits: number;
};

/**
 * A household pays a deposit on a buy. Dr 1000 or 1010, Cr 2100.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function depositReceived(event: DepositAmount & { readonly till: Till }): MovementDraft[] {
  return [
    debitCredit({
      debit: tillAccount(event.till),
      credit: depositAccount(event),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A household lets its balance stand as a deposit. Dr 1100, Cr 2100.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function depositFromBalance(event: DepositAmount): MovementDraft[] {
  return [
    debitCredit({
      debit: householdAccount(event.householdId),
      credit: depositAccount(event),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A deposit goes back, because the pledge was dropped or the buy called off. Dr 2100, Cr 1000 or 1010, or 1100 when
 * the household keeps it on its balance.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function depositRefunded(event: DepositAmount & { readonly to: Till | 'household' }): MovementDraft[] {
  const credit = event.to === 'household' ? householdAccount(event.householdId) : tillAccount(event.to);
  return [debitCredit({ debit: depositAccount(event), credit, amountMinorUnits: event.amountMinorUnits })];
}

/**
 * A deposit pays towards the household's charge. Dr 2100, Cr 1100. What it has above the charge stands on the balance.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function depositApplied(event: DepositAmount): MovementDraft[] {
  return [
    debitCredit({
      debit: depositAccount(event),
      credit: householdAccount(event.householdId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A household withdrew after ordering: of its deposit, the cost of what nobody took stays with the buy. Dr 2100,
 * Cr 2200.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function depositForfeited(event: DepositAmount): MovementDraft[] {
  return [
    debitCredit({
      debit: depositAccount(event),
      credit: clearingAccount(event.buyId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

import {
  householdAccount,
  loanDepositAccount,
  moneyAccount,
  type Till,
  tillAccount,
} from '../money-accounts.ts';
import { debitCredit, type MovementDraft } from '../movement-draft.ts';
import type { HouseholdShare } from './charge-events.ts';

/**
 * A household owes a fee for lent equipment, or for bringing it late. Dr 1100, Cr 4010.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function equipmentFeeCharged(event: HouseholdShare & { readonly itemId: string }): MovementDraft[] {
  const fees = moneyAccount('equipment_fees', { causeId: event.itemId });
  return [
    debitCredit({
      debit: householdAccount(event.householdId),
      credit: fees,
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A household leaves a deposit for a loan. Dr 1000 or 1010, Cr 2150.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function loanDepositReceived(
  event: HouseholdShare & { readonly loanId: string; readonly till: Till },
): MovementDraft[] {
  return [
    debitCredit({
      debit: tillAccount(event.till),
      credit: loanDepositAccount(event),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A loan's deposit goes back. Dr 2150, Cr 1000 or 1010.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function loanDepositReturned(
  event: HouseholdShare & { readonly loanId: string; readonly till: Till },
): MovementDraft[] {
  return [
    debitCredit({
      debit: loanDepositAccount(event),
      credit: tillAccount(event.till),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A household lets its balance stand as the deposit for a loan. Dr 1100, Cr 2150.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function loanDepositFromBalance(event: HouseholdShare & { readonly loanId: string }): MovementDraft[] {
  return [
    debitCredit({
      debit: householdAccount(event.householdId),
      credit: loanDepositAccount(event),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A loan's deposit goes on the household's balance: it pays towards what the loan is charged, or comes back that way.
 * Dr 2150, Cr 1100.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function loanDepositApplied(event: HouseholdShare & { readonly loanId: string }): MovementDraft[] {
  return [
    debitCredit({
      debit: loanDepositAccount(event),
      credit: householdAccount(event.householdId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

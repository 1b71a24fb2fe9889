import {
  householdAccount,
  moneyAccount,
  storeFundAccount,
  type Till,
  tillAccount,
} from '../money-accounts.ts';
import { debitCredit, type MovementDraft } from '../movement-draft.ts';
import type { HouseholdShare } from './charge-events.ts';

/**
 * A household pays. Dr 1000 or 1010, Cr 1100. More than it owes is allowed and stands on its balance.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function paymentReceived(event: HouseholdShare & { readonly till: Till }): MovementDraft[] {
  return [
    debitCredit({
      debit: tillAccount(event.till),
      credit: householdAccount(event.householdId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A household's surplus is paid out. Dr 1100, Cr 1000 or 1010.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function paymentRefunded(event: HouseholdShare & { readonly till: Till }): MovementDraft[] {
  return [
    debitCredit({
      debit: householdAccount(event.householdId),
      credit: tillAccount(event.till),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * The bank takes a charge. Dr 5010, Cr 1000.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function bankCharge(event: { readonly amountMinorUnits: number }): MovementDraft[] {
  return [
    debitCredit({
      debit: moneyAccount('bank_charges'),
      credit: tillAccount('bank'),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * Cash from the tin is paid into the bank. Dr 1000, Cr 1010.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function cashBanked(event: { readonly amountMinorUnits: number }): MovementDraft[] {
  return [
    debitCredit({
      debit: tillAccount('bank'),
      credit: tillAccount('cash_tin'),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * The cash tin was counted and holds something else than the book says. Too little is a loss: Dr 5000, Cr 1010. Too much
 * is a gift of nobody known: Dr 1010, Cr 4020. Nothing for a count that agrees.
 * Units: minor units, counted less expected. Errors: AssertionError for a difference that is not whole.
 * Source: the accounts are the job map's (4.4); which of them is common practice, no source.
 */
export function tinDiffers(event: { readonly differenceMinorUnits: number }): MovementDraft[] {
  const { differenceMinorUnits } = event;
  const tin = tillAccount('cash_tin');
  if (differenceMinorUnits === 0) return [];
  return differenceMinorUnits > 0
    ? [
        debitCredit({
          debit: tin,
          credit: moneyAccount('cash_gifts'),
          amountMinorUnits: differenceMinorUnits,
        }),
      ]
    : [debitCredit({ debit: moneyAccount('losses'), credit: tin, amountMinorUnits: -differenceMinorUnits })];
}

/**
 * A household's debt is written off. Dr 5030, Cr 1100. The loss account names no household.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function debtWrittenOff(event: HouseholdShare): MovementDraft[] {
  return [
    debitCredit({
      debit: moneyAccount('debt_written_off'),
      credit: householdAccount(event.householdId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * The store fund covers a household in hardship. Dr 3000, Cr 1100.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function hardshipCovered(event: HouseholdShare): MovementDraft[] {
  return [
    debitCredit({
      debit: storeFundAccount(),
      credit: householdAccount(event.householdId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

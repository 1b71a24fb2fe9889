import {
  householdAccount,
  moneyAccount,
  sessionAccount,
  supplierAccount,
  type Till,
  tillAccount,
} from '../money-accounts.ts';
import { debitCredit, type MovementDraft, withoutZeroShares } from '../movement-draft.ts';
import type { HouseholdShare } from './charge-events.ts';

/**
 * Supplies are bought on a bill. Dr 1300, Cr 2000.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function suppliesBought(event: {
  readonly supplyId: string;
  readonly supplierId: string;
  readonly amountMinorUnits: number;
}): MovementDraft[] {
  const supplies = moneyAccount('supplies', { causeId: event.supplyId });
  return [
    debitCredit({
      debit: supplies,
      credit: supplierAccount(event.supplierId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * Supplies are used up in a session, at average cost. Dr 2300, Cr 1300.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function suppliesUsed(event: {
  readonly sessionId: string;
  readonly supplyId: string;
  readonly amountMinorUnits: number;
}): MovementDraft[] {
  const supplies = moneyAccount('supplies', { causeId: event.supplyId });
  return [
    debitCredit({
      debit: sessionAccount(event.sessionId),
      credit: supplies,
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * Line time is charged into a session. Dr 2300, Cr 4000.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function lineTimeCharged(event: {
  readonly sessionId: string;
  readonly amountMinorUnits: number;
}): MovementDraft[] {
  const fees = moneyAccount('line_fees', { causeId: event.sessionId });
  return [
    debitCredit({
      debit: sessionAccount(event.sessionId),
      credit: fees,
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A session's costs are shared out. Dr 1100, Cr 2300. Shares of nothing are left out.
 * Units: minor units. Errors: AssertionError when an amount is not whole and ≥ 0.
 */
export function sessionSharedOut(event: {
  readonly sessionId: string;
  readonly charges: readonly HouseholdShare[];
}): MovementDraft[] {
  return withoutZeroShares(event.charges).map(({ householdId, amountMinorUnits }) =>
    debitCredit({
      debit: householdAccount(householdId),
      credit: sessionAccount(event.sessionId),
      amountMinorUnits,
    }),
  );
}

/**
 * A missing part is charged to whoever lost it. Dr 1100, Cr 5020.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function partCharged(event: HouseholdShare & { readonly itemId: string }): MovementDraft[] {
  const repairs = moneyAccount('repairs', { causeId: event.itemId });
  return [
    debitCredit({
      debit: householdAccount(event.householdId),
      credit: repairs,
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A missing part is bought again. Dr 5020, Cr 1000 or 1010.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function partReplaced(event: {
  readonly itemId: string;
  readonly amountMinorUnits: number;
  readonly till: Till;
}): MovementDraft[] {
  const repairs = moneyAccount('repairs', { causeId: event.itemId });
  return [
    debitCredit({
      debit: repairs,
      credit: tillAccount(event.till),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

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
 * A thing of the storehouse's was used at a session for a fee. Dr 2300, Cr 4010.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function equipmentUsed(event: {
  readonly sessionId: string;
  readonly itemId: string;
  readonly amountMinorUnits: number;
}): MovementDraft[] {
  const { sessionId, itemId, amountMinorUnits } = event;
  const credit = moneyAccount('equipment_fees', { causeId: itemId });
  return [debitCredit({ debit: sessionAccount(sessionId), credit, amountMinorUnits })];
}

/**
 * What a session cost besides, paid by the bank, the tin, or a household that is owed for it. Dr 2300, Cr 1000, 1010 or 1100.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 * Source: job map 4.6 names sundries; the accounts are common practice, no source.
 */
export function sessionSundry(event: {
  readonly sessionId: string;
  readonly paidBy: { readonly till: Till } | { readonly householdId: string };
  readonly amountMinorUnits: number;
}): MovementDraft[] {
  const { sessionId, paidBy, amountMinorUnits } = event;
  const credit = 'till' in paidBy ? tillAccount(paidBy.till) : householdAccount(paidBy.householdId);
  return [debitCredit({ debit: sessionAccount(sessionId), credit, amountMinorUnits })];
}

/**
 * The storehouse bears what a machine spoilt. Dr 5000, Cr 2300.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive. Source: job map 7.9.
 */
export function sessionLossBorne(event: {
  readonly sessionId: string;
  readonly amountMinorUnits: number;
}): MovementDraft[] {
  const { sessionId, amountMinorUnits } = event;
  const debit = moneyAccount('losses', { causeId: sessionId });
  return [debitCredit({ debit, credit: sessionAccount(sessionId), amountMinorUnits })];
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

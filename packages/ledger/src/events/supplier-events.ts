import {
  claimAccount,
  clearingAccount,
  moneyAccount,
  storeFundAccount,
  supplierAccount,
  type Till,
  tillAccount,
} from '../money-accounts.ts';
import { debitCredit, type MovementDraft } from '../movement-draft.ts';

/** A claim against a supplier, and how much of it is meant. Units: minor units. Errors: none. */
export type ClaimAmount = {
  readonly supplierId: string;
  readonly claimId: string;
  readonly amountMinorUnits: number;
};

/**
 * A supplier or a carrier bills a buy. Dr 2200, Cr 2000.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function supplierInvoiced(event: {
  readonly buyId: string;
  readonly supplierId: string;
  readonly amountMinorUnits: number;
}): MovementDraft[] {
  return [
    debitCredit({
      debit: clearingAccount(event.buyId),
      credit: supplierAccount(event.supplierId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * A short or damage is claimed. Dr 1200, Cr 2200, so that the households are charged the net cost.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function claimRaised(event: ClaimAmount & { readonly buyId: string }): MovementDraft[] {
  return [
    debitCredit({
      debit: claimAccount(event),
      credit: clearingAccount(event.buyId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * The supplier grants a claim: by a credit note (Dr 2000, Cr 1200), or in money when a till is named (Dr 1000 or 1010).
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function claimCredited(event: ClaimAmount & { readonly till?: Till }): MovementDraft[] {
  const debit = event.till ? tillAccount(event.till) : supplierAccount(event.supplierId);
  return [debitCredit({ debit, credit: claimAccount(event), amountMinorUnits: event.amountMinorUnits })];
}

/**
 * The supplier refuses a claim while the buy is open. Dr 2200, Cr 1200; the households are charged again by the
 * same weights.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function claimRefusedWhileOpen(event: ClaimAmount & { readonly buyId: string }): MovementDraft[] {
  return [
    debitCredit({
      debit: clearingAccount(event.buyId),
      credit: claimAccount(event),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * The supplier refuses a claim after the buy is closed. Dr 5000, Cr 1200: a closed buy charges nobody again. The
 * cause keeps losses of one kind apart.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function claimRefusedAfterClose(
  event: ClaimAmount & { readonly causeId?: string | null },
): MovementDraft[] {
  const losses = moneyAccount('losses', { causeId: event.causeId ?? null });
  return [
    debitCredit({ debit: losses, credit: claimAccount(event), amountMinorUnits: event.amountMinorUnits }),
  ];
}

/**
 * A supplier is paid. Dr 2000, Cr 1000 or 1010.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function supplierPaid(event: {
  readonly supplierId: string;
  readonly amountMinorUnits: number;
  readonly till: Till;
}): MovementDraft[] {
  return [
    debitCredit({
      debit: supplierAccount(event.supplierId),
      credit: tillAccount(event.till),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * The store fund bears what a supplier bills for a buy that was called off. Dr 3000, Cr 2200.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive. Source: job map 4.7.
 */
export function cancellationCovered(event: {
  readonly buyId: string;
  readonly amountMinorUnits: number;
}): MovementDraft[] {
  return [
    debitCredit({
      debit: storeFundAccount(),
      credit: clearingAccount(event.buyId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

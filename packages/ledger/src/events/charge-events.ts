import { assert, assertWhole } from '@sheafbook/units';
import type { AccountKey } from '../account-key.ts';
import {
  clearingAccount,
  commonStockAccount,
  householdAccount,
  storeFundAccount,
  supplierAccount,
  type Till,
  tillAccount,
} from '../money-accounts.ts';
import { debitCredit, type MovementDraft, withoutZeroShares } from '../movement-draft.ts';

/** What one household bears or gets. Units: minor units. Errors: none. */
export type HouseholdShare = { readonly householdId: string; readonly amountMinorUnits: number };

/** What common stock of one lot (or, where no lot is known, of one buy) bears. Units: minor units. Errors: none. */
export type CommonStockShare = { readonly causeId: string; readonly amountMinorUnits: number };

/**
 * A buy's costs are shared out. Dr 1100 for each household, Dr 1400 for what common stock took, all Cr 2200; the levy
 * voted for the store fund is a cost of the buy: Dr 2200, Cr 3000. Shares of nothing are left out.
 * Units: minor units. Errors: AssertionError when an amount is not whole and ≥ 0.
 */
export function sharedOut(event: {
  readonly buyId: string;
  readonly charges: readonly HouseholdShare[];
  readonly commonStock?: readonly CommonStockShare[];
  readonly levyMinorUnits?: number;
}): MovementDraft[] {
  const clearing = clearingAccount(event.buyId);
  const levies = withoutZeroShares([{ amountMinorUnits: event.levyMinorUnits ?? 0 }]);
  return [
    ...levies.map((levy) =>
      debitCredit({ debit: clearing, credit: storeFundAccount(), amountMinorUnits: levy.amountMinorUnits }),
    ),
    ...bearers(event).map(({ account, amountMinorUnits }) =>
      debitCredit({ debit: account, credit: clearing, amountMinorUnits }),
    ),
  ];
}

/**
 * Common stock takes unfilled or orphaned mass at its share of the landed cost. Dr 1400, Cr 2200.
 * Units: minor units. Errors: AssertionError unless the amount is whole and positive.
 */
export function commonStockTaken(event: {
  readonly buyId: string;
  readonly causeId: string;
  readonly amountMinorUnits: number;
}): MovementDraft[] {
  return [
    debitCredit({
      debit: commonStockAccount(event.causeId),
      credit: clearingAccount(event.buyId),
      amountMinorUnits: event.amountMinorUnits,
    }),
  ];
}

/**
 * Money comes back for a buy that is already shared out, or a late bill arrives for it, and goes to those who bore
 * the line, by the same weights. The clearing account is left alone, so a closed buy stays at nothing.
 * Above zero (a credit): Dr 2000, 1000 or 1010, Cr 1100 (and 1400, 3000 for what the storehouse bore itself).
 * Below zero (a charge): the other way. `amountMinorUnits` carries the sign; the shares carry none.
 * Units: minor units. Errors: AssertionError when the amount is zero, a share is not whole and ≥ 0, or the shares do
 * not add up to the amount. Source: job map 4.7.
 */
export function lateCredit(event: {
  readonly from: Till | { readonly supplierId: string };
  readonly amountMinorUnits: number;
  readonly shares: readonly HouseholdShare[];
  readonly commonStock?: readonly CommonStockShare[];
  readonly storeFundMinorUnits?: number;
}): MovementDraft[] {
  const isCredit = event.amountMinorUnits > 0;
  const payer =
    typeof event.from === 'string' ? tillAccount(event.from) : supplierAccount(event.from.supplierId);
  const fund = withoutZeroShares([{ amountMinorUnits: event.storeFundMinorUnits ?? 0 }]);
  const parts = [
    ...bearers({ charges: event.shares, commonStock: event.commonStock ?? [] }),
    ...fund.map(({ amountMinorUnits }) => ({ account: storeFundAccount(), amountMinorUnits })),
  ];
  const sharedMinorUnits = parts.reduce((sum, part) => sum + part.amountMinorUnits, 0);
  assertWhole(Math.abs(event.amountMinorUnits), 'amountMinorUnits');
  assert(event.amountMinorUnits !== 0, 'a late credit needs an amount other than zero');
  assert(sharedMinorUnits === Math.abs(event.amountMinorUnits), 'the shares must add up to the late credit');
  return parts.map(({ account, amountMinorUnits }) =>
    isCredit
      ? debitCredit({ debit: payer, credit: account, amountMinorUnits })
      : debitCredit({ debit: account, credit: payer, amountMinorUnits }),
  );
}

function bearers(event: {
  readonly charges: readonly HouseholdShare[];
  readonly commonStock?: readonly CommonStockShare[];
}): { account: AccountKey; amountMinorUnits: number }[] {
  return [
    ...withoutZeroShares(event.charges).map(({ householdId, amountMinorUnits }) => ({
      account: householdAccount(householdId),
      amountMinorUnits,
    })),
    ...withoutZeroShares(event.commonStock ?? []).map(({ causeId, amountMinorUnits }) => ({
      account: commonStockAccount(causeId),
      amountMinorUnits,
    })),
  ];
}

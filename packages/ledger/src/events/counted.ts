import type { AccountKey } from '../account-key.ts';
import { debitCredit, type MovementDraft } from '../movement-draft.ts';

/**
 * A count found other than the book says: what is missing is a loss, what is over takes a loss back. Nothing when the
 * difference is worth less than a minor unit.
 * Units: minor units, below zero when something is missing. Errors: AssertionError unless the amount is whole.
 */
export function countedOtherwise(
  accounts: { readonly stock: AccountKey; readonly losses: AccountKey },
  differenceMinorUnits: number,
): MovementDraft[] {
  const { stock, losses } = accounts;
  if (differenceMinorUnits === 0) return [];
  return differenceMinorUnits < 0
    ? [debitCredit({ debit: losses, credit: stock, amountMinorUnits: -differenceMinorUnits })]
    : [debitCredit({ debit: stock, credit: losses, amountMinorUnits: differenceMinorUnits })];
}

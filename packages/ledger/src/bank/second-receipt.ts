import { compareText, daysBetween } from '@sheafbook/units';

/**
 * A receipt that stands in the book: of a household, on its balance or as the deposit on a buy. `isAtBank` says whether
 * a line of the bank is matched with it already.
 * Units: minor units. Errors: none.
 */
export type BookedReceipt = {
  readonly entryId: string;
  readonly onDay: string;
  readonly minorUnits: number;
  readonly what: 'payment' | 'deposit';
  readonly isAtBank: boolean;
};

/**
 * How long two equal receipts of a household are asked about: a household that pays in the tin and by bank for the same
 * charge does so within a month.
 * Units: days. Errors: none. Source: common practice, no source.
 */
export const ASKED_WITHIN_DAYS = 31;

/** Why a receipt is asked about before it posts. Units: none. Errors: none. */
export type ReceiptQuestion = {
  readonly entryId: string;
  readonly because: 'in-book-without-line' | 'in-book-with-line' | 'deposit-already-paid';
};

/**
 * Asks whether a receipt would be the second for one thing: the same household paid the same amount within a month. One
 * that waits for its line of the bank comes first, since it is most likely this very money; then the nearest day.
 * Units: minor units, days. Errors: AssertionError for a text that is no day.
 */
export function questionReceipt(
  receipt: { readonly onDay: string; readonly minorUnits: number },
  booked: readonly BookedReceipt[],
): ReceiptQuestion | undefined {
  const near = booked
    .filter(({ minorUnits }) => minorUnits === receipt.minorUnits)
    .map((entry) => ({ ...entry, days: Math.abs(daysBetween(entry.onDay, receipt.onDay)) }))
    .filter(({ days }) => days <= ASKED_WITHIN_DAYS)
    .toSorted(
      (a, b) =>
        Number(a.isAtBank) - Number(b.isAtBank) || a.days - b.days || compareText(a.entryId, b.entryId),
    );
  const [first] = near;
  if (!first) return undefined;
  if (first.what === 'deposit') return { entryId: first.entryId, because: 'deposit-already-paid' };
  return { entryId: first.entryId, because: first.isAtBank ? 'in-book-with-line' : 'in-book-without-line' };
}

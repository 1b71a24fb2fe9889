import { compareText, daysBetween } from '@sheafbook/units';

/**
 * A receipt that stands in the book: of a household, on its balance or as the deposit on a buy. `isAtBank` says whether
 * a line of the bank is matched with it already, `isInTin` that it came into the cash tin, so that no line can be it.
 * Units: minor units. Errors: none.
 */
export type BookedReceipt = {
  readonly entryId: string;
  readonly onDay: string;
  readonly minorUnits: number;
  readonly what: 'payment' | 'deposit';
  readonly isAtBank: boolean;
  readonly isInTin: boolean;
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
  readonly because: 'in-book-without-line' | 'in-book-with-line' | 'in-tin' | 'deposit-already-paid';
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
        Number(isPlaced(a)) - Number(isPlaced(b)) || a.days - b.days || compareText(a.entryId, b.entryId),
    );
  const [first] = near;
  if (!first) return undefined;
  if (first.what === 'deposit') return { entryId: first.entryId, because: 'deposit-already-paid' };
  if (first.isInTin) return { entryId: first.entryId, because: 'in-tin' };
  return { entryId: first.entryId, because: first.isAtBank ? 'in-book-with-line' : 'in-book-without-line' };
}

/** No further line of the bank can be it. */
const isPlaced = ({ isAtBank, isInTin }: BookedReceipt): boolean => isAtBank || isInTin;

import { sumOf } from '@sheafbook/units';

/** An entry that moved the bank's account, and the day of the line it is matched with. Units: minor units. Errors: none. */
export type BankEntry = {
  readonly entryId: string;
  readonly onDay: string;
  readonly minorUnits: number;
  readonly clearedOn: string | null;
  /** It brought over what the bank held already, or stands before the first line that the bank gave. */
  readonly isBeforeLines: boolean;
};

/** A line of the bank that no entry is matched with. Units: minor units. Errors: none. */
export type OpenLine = { readonly lineId: string; readonly onDay: string; readonly minorUnits: number };

/**
 * How the bank's word and the book's agree at the end of a day: what the bank says, less what the book says, less what
 * the bank has and the book has not, plus what the book has and the bank has not yet. Zero is agreement.
 * Units: minor units. Errors: none.
 */
export type Reconciliation = {
  readonly statementMinorUnits: number;
  readonly bookMinorUnits: number;
  /** In the book by that day, and not at the bank by then. */
  readonly uncleared: readonly BankEntry[];
  readonly unclearedMinorUnits: number;
  /** At the bank by that day, in the book on a later one. */
  readonly bookedLater: readonly BankEntry[];
  readonly bookedLaterMinorUnits: number;
  /** At the bank by that day, and in no entry. */
  readonly notInBook: readonly OpenLine[];
  readonly notInBookMinorUnits: number;
  readonly differenceMinorUnits: number;
};

/**
 * Reconciles the bank's balance at the end of a day with the book.
 * Units: minor units. Errors: none. Source: job map 3.2, question 5.
 */
export function reconcileBank(input: {
  readonly throughOn: string;
  readonly statementMinorUnits: number;
  readonly entries: readonly BankEntry[];
  readonly openLines: readonly OpenLine[];
}): Reconciliation {
  const { throughOn, statementMinorUnits } = input;
  const isBooked = (entry: BankEntry) => entry.onDay <= throughOn;
  const isCleared = (entry: BankEntry) =>
    entry.clearedOn === null ? entry.isBeforeLines : entry.clearedOn <= throughOn;
  const amounts = (rows: readonly { readonly minorUnits: number }[]) =>
    sumOf(rows.map((row) => row.minorUnits));
  const uncleared = input.entries.filter((entry) => isBooked(entry) && !isCleared(entry));
  const bookedLater = input.entries.filter((entry) => !isBooked(entry) && isCleared(entry));
  const notInBook = input.openLines.filter((line) => line.onDay <= throughOn);
  const bookMinorUnits = amounts(input.entries.filter(isBooked));
  const [unclearedMinorUnits, bookedLaterMinorUnits] = [amounts(uncleared), amounts(bookedLater)];
  const notInBookMinorUnits = amounts(notInBook);
  const expected = bookMinorUnits - unclearedMinorUnits + bookedLaterMinorUnits + notInBookMinorUnits;
  return {
    ...{ statementMinorUnits, bookMinorUnits, uncleared, unclearedMinorUnits },
    ...{ bookedLater, bookedLaterMinorUnits, notInBook, notInBookMinorUnits },
    differenceMinorUnits: statementMinorUnits - expected,
  };
}

import { readBankAmount } from './bank-amount.ts';
import type { BankColumns } from './bank-columns.ts';
import { readBankDay } from './bank-day.ts';

/**
 * One line of a bank's statement. Above zero came in, below zero went out; `occurrence` tells equal lines of a day apart.
 * Units: minor units. Errors: none.
 */
export type BankLine = {
  readonly rowNo: number;
  readonly onDay: string;
  readonly minorUnits: number;
  readonly words: string;
  readonly balanceMinorUnits: number | null;
  readonly fingerprint: string;
  readonly occurrence: number;
};

/** A row that could not be read, and the column that is why; `rowNo` counts from 1. Units: none. Errors: none. */
export type BankRowProblem = {
  readonly rowNo: number;
  readonly column: number;
  readonly cell: string;
  readonly because: 'no-day' | 'no-amount' | 'two-amounts';
};

const MOST_WORDS = 500;

/**
 * Reads the rows of a bank's file by its columns. Rows without a day and without an amount are none of the statement's
 * (a total, a footer) and are passed over; rows that move nothing, too. A row with one of the two only is a problem.
 * Units: minor units of a currency with `exponent` decimals. Errors: none.
 */
export function readBankRows(
  rows: readonly (readonly string[])[],
  columns: BankColumns,
  exponent: number,
): { readonly lines: BankLine[]; readonly problems: BankRowProblem[] } {
  const problems: BankRowProblem[] = [];
  const seen = new Map<string, number>();
  const lines = rows.slice(columns.firstRow).flatMap((row, position): BankLine[] => {
    const read = readRow(row, { rowNo: columns.firstRow + position + 1, columns, exponent });
    if (read === undefined) return [];
    if ('because' in read) {
      problems.push(read);
      return [];
    }
    const fingerprint = bankFingerprint(read);
    const occurrence = (seen.get(fingerprint) ?? 0) + 1;
    seen.set(fingerprint, occurrence);
    return [{ ...read, fingerprint, occurrence }];
  });
  return { lines, problems };
}

/**
 * What is the same for one line in two overlapping files of a bank: its day, its amount and its words, however they are
 * spaced or capitalised.
 * Units: minor units. Errors: none.
 */
export function bankFingerprint(line: Pick<BankLine, 'onDay' | 'minorUnits' | 'words'>): string {
  const words = line.words
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
  return `${line.onDay} ${line.minorUnits} ${words}`;
}

/**
 * What the bank held after the last line of a file, by its own column: the file may run forwards or backwards in time.
 * Undefined where there is no such column, or where its balances do not follow from its amounts.
 * Units: minor units. Errors: none.
 */
export function closingBalanceOf(
  lines: readonly BankLine[],
): { readonly onDay: string; readonly minorUnits: number } | undefined {
  const told = lines.flatMap((line) =>
    line.balanceMinorUnits === null ? [] : [{ ...line, balance: line.balanceMinorUnits }],
  );
  if (told.length === 0 || told.length < lines.length) return undefined;
  const follows = (order: typeof told) =>
    order.every(
      ({ balance, minorUnits }, at) => at === 0 || balance === (order[at - 1]?.balance ?? 0) + minorUnits,
    );
  const backwards = told.toReversed();
  const isBackwards = told.length > 1 && !follows(told) && follows(backwards);
  const order = isBackwards ? backwards : told;
  const last = order.at(-1);
  return last && follows(order) ? { onDay: last.onDay, minorUnits: last.balance } : undefined;
}

type Read = Omit<BankLine, 'fingerprint' | 'occurrence'>;
type Reading = { readonly rowNo: number; readonly columns: BankColumns; readonly exponent: number };

function readRow(row: readonly string[], reading: Reading): Read | BankRowProblem | undefined {
  const { rowNo, columns } = reading;
  const dayText = cellOf(row, columns.dayColumn);
  const onDay = readBankDay(dayText, columns.dayOrder);
  const amount = readAmounts(row, reading);
  if (onDay === undefined) {
    const isOfNone = dayText === '' || (typeof amount !== 'number' && amount.cell === '');
    return isOfNone ? undefined : { rowNo, column: columns.dayColumn, cell: dayText, because: 'no-day' };
  }
  if (typeof amount !== 'number') return { rowNo, ...amount };
  if (amount === 0) return undefined;
  const words = columns.wordColumns.map((column) => cellOf(row, column)).filter((cell) => cell !== '');
  return {
    rowNo,
    onDay,
    minorUnits: amount,
    words: [...words.join(' · ').replaceAll(/\s+/g, ' ')].slice(0, MOST_WORDS / 2).join(''),
    balanceMinorUnits: readCell(row, columns.balanceColumn, reading) ?? null,
  };
}

const cellOf = (row: readonly string[], column: number | null): string =>
  column === null ? '' : (row[column]?.trim() ?? '');

function readCell(row: readonly string[], column: number | null, { columns, exponent }: Reading) {
  return readBankAmount(cellOf(row, column), { decimalMark: columns.decimalMark, exponent });
}

type AmountProblem = Pick<BankRowProblem, 'column' | 'cell' | 'because'>;

function readAmounts(row: readonly string[], reading: Reading): number | AmountProblem {
  const { amountColumn, inColumn, outColumn } = reading.columns;
  if (amountColumn !== null) {
    const cell = cellOf(row, amountColumn);
    return readCell(row, amountColumn, reading) ?? { column: amountColumn, cell, because: 'no-amount' };
  }
  const [inText, outText] = [cellOf(row, inColumn), cellOf(row, outColumn)];
  const [came, went] = [readCell(row, inColumn, reading), readCell(row, outColumn, reading)];
  if (inText !== '' && came === undefined)
    return { column: inColumn ?? 0, cell: inText, because: 'no-amount' };
  if (outText !== '' && went === undefined)
    return { column: outColumn ?? 0, cell: outText, because: 'no-amount' };
  if (came === undefined && went === undefined)
    return { column: inColumn ?? outColumn ?? 0, cell: '', because: 'no-amount' };
  if (came && went) return { column: outColumn ?? 0, cell: outText, because: 'two-amounts' };
  // Some banks write what went out with a minus, some without.
  return came ? Math.abs(came) : -Math.abs(went ?? 0) + 0;
}

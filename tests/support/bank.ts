import type { Caller } from './app.ts';
import { bodyOf } from './buy.ts';

/** Columns of the files that these tests give: a day, words, one signed amount. */
export const BANK_COLUMNS = {
  ...{ firstRow: 1, dayColumn: 0, dayOrder: 'ymd', amountColumn: 2, wordColumns: [1], decimalMark: '.' },
} as const;

export type ToldLine = readonly [onDay: string, words: string, amount: string];

export const bankText = (lines: readonly ToldLine[]): string =>
  [['Date', 'Description', 'Amount'], ...lines].map((cells) => `${cells.join(',')}\n`).join('');

/** Takes a bank's file in, and gives the lines of the book's bank account as they are listed then, by their words. */
export async function giveBankLines(treasurer: Caller, path: string, lines: readonly ToldLine[]) {
  const file = { name: 'bank.csv', text: bankText(lines), columns: BANK_COLUMNS };
  bodyOf(await treasurer.post(`${path}/bank/files`, file), 201);
  return readLines(treasurer, path);
}

/** The lines that are listed for a query, by their words. */
export async function readLines(treasurer: Caller, path: string, query = 'state=all') {
  const { lines } = bodyOf(await treasurer.get(`${path}/bank/lines?limit=200&${query}`));
  // biome-ignore lint/suspicious/noExplicitAny: a test reads bodies freely; their shapes are what it asserts
  return Object.fromEntries<any>(lines.map((line: { words: string }) => [line.words, line]));
}

/** The id of one open line that nothing else knows of. */
export async function aBankLine(treasurer: Caller, path: string): Promise<string> {
  const lines = await giveBankLines(treasurer, path, [['2026-08-31', 'A LINE OF NOBODY', '3.33']]);
  return lines['A LINE OF NOBODY'].id;
}

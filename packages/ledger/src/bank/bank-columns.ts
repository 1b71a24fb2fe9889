import { type DecimalMark, guessDecimalMark, readBankAmount } from './bank-amount.ts';
import { type DayOrder, guessDayOrder, readBankDay } from './bank-day.ts';

/**
 * Which column of a bank's file holds what, counted from 0. Amounts stand in one signed column, or what came in and
 * what went out stand in two.
 * Units: none. Errors: none.
 */
export type BankColumns = {
  /** Rows above the first line of the statement: preamble and headings. */
  readonly firstRow: number;
  readonly dayColumn: number;
  readonly dayOrder: DayOrder;
  readonly amountColumn: number | null;
  readonly inColumn: number | null;
  readonly outColumn: number | null;
  readonly balanceColumn: number | null;
  readonly wordColumns: readonly number[];
  readonly decimalMark: DecimalMark;
};

const HEADINGS = {
  day: /\b(booking|posting|posted|transaction)? ?date\b|fecha|\bday\b|datum/i,
  in: /credit|deposit|paid in|money in|\bin\b|abono|haber|ingreso|entrada/i,
  out: /debit|withdraw|paid out|money out|\bout\b|cargo|\bdebe\b|retiro|salida/i,
  amount: /amount|importe|monto|betrag|cantidad|value/i,
  balance: /balance|saldo/i,
  words:
    /descri|detail|payee|payer|\bname|memo|reference|narrat|concepto|beneficiario|ordenante|referencia|texto|purpose|remark/i,
} as const;

const LOOKED_AT = 200;

/**
 * Guesses which column of a bank's file holds what, from its headings and from what stands in it. Nothing is decided by
 * it: the treasurer sees the guess and corrects it. Undefined where no row has both a day and an amount.
 * Units: none. Errors: none. Source: common practice, no source.
 */
export function guessBankColumns(rows: readonly (readonly string[])[]): BankColumns | undefined {
  const firstRow = rows.findIndex(isStatementRow);
  if (firstRow < 0) return undefined;
  const headings = firstRow > 0 ? (rows[firstRow - 1] ?? []) : [];
  const body = rows.slice(firstRow, firstRow + LOOKED_AT).filter(isStatementRow);
  const columns = Array.from({ length: Math.max(...body.map((row) => row.length)) }, (_, at) => ({
    at,
    heading: headings[at] ?? '',
    cells: body.map((row) => row[at]?.trim() ?? '').filter((cell) => cell !== ''),
  }));
  const day = columns.find((column) => column.cells.length > 0 && column.cells.every(isDayText));
  if (!day) return undefined;
  const numbers = columns.filter((column) => column !== day && isMoney(column));
  const money = placeMoney(numbers, body);
  if (!money) return undefined;
  const taken = new Set([day.at, money.amountColumn, money.inColumn, money.outColumn, money.balanceColumn]);
  const texts = columns.filter((column) => !taken.has(column.at) && !column.cells.every(isDayText));
  const named = texts.filter(({ heading }) => HEADINGS.words.test(heading));
  const used =
    named.length > 0 ? named : texts.filter(({ cells }) => cells.some((cell) => /\p{L}{3}/u.test(cell)));
  return {
    firstRow,
    dayColumn: day.at,
    dayOrder: guessDayOrder(day.cells),
    ...money,
    wordColumns: used.map(({ at }) => at),
    decimalMark: guessDecimalMark(numbers.flatMap(({ cells }) => cells)),
  };
}

type Column = { readonly at: number; readonly heading: string; readonly cells: readonly string[] };

const isDayText = (text: string): boolean =>
  readBankDay(text, 'dmy') !== undefined || readBankDay(text, 'mdy') !== undefined;

/** With either mark, and to four decimals, since it is not known yet which this bank writes. */
function looksLikeAmount(text: string): boolean {
  return (['.', ','] as const).some(
    (decimalMark) => readBankAmount(text, { decimalMark, exponent: 4 }) !== undefined,
  );
}

function isStatementRow(row: readonly string[]): boolean {
  return row.some(isDayText) && row.some((cell) => !isDayText(cell) && looksLikeAmount(cell.trim()));
}

/** A column of numbers that is called a reference or an account, or whose numbers are never written with cents, is none. */
function isMoney({ heading, cells }: Column): boolean {
  if (cells.length === 0 || !cells.every(looksLikeAmount)) return false;
  const isNamed = [HEADINGS.amount, HEADINGS.in, HEADINGS.out, HEADINGS.balance].some((word) =>
    word.test(heading),
  );
  return isNamed || (!HEADINGS.words.test(heading) && cells.some((cell) => /[.,]\d{1,2}\D*$/.test(cell)));
}

type Money = Pick<BankColumns, 'amountColumn' | 'inColumn' | 'outColumn' | 'balanceColumn'>;

function placeMoney(numbers: readonly Column[], body: readonly (readonly string[])[]): Money | undefined {
  const named = (word: RegExp) => numbers.find(({ heading }) => word.test(heading));
  const balance = named(HEADINGS.balance);
  const others = numbers.filter((column) => column !== balance);
  const [inward, outward] = [HEADINGS.in, HEADINGS.out].map((word) =>
    others.find(({ heading }) => word.test(heading) && !HEADINGS.amount.test(heading)),
  );
  const balanceColumn = balance?.at ?? null;
  if (inward && outward && inward !== outward)
    return { amountColumn: null, inColumn: inward.at, outColumn: outward.at, balanceColumn };
  const amount = others.find(({ heading }) => HEADINGS.amount.test(heading)) ?? others[0];
  if (!amount) return undefined;
  const second = others.find((column) => column !== amount);
  // Two columns of which each row fills one are in and out, whatever they are called; else the second is the balance.
  const isEitherOr =
    second &&
    body.every((row) => (row[amount.at]?.trim() ?? '') === '' || (row[second.at]?.trim() ?? '') === '');
  if (second && isEitherOr)
    return { amountColumn: null, inColumn: second.at, outColumn: amount.at, balanceColumn };
  return {
    amountColumn: amount.at,
    inColumn: null,
    outColumn: null,
    balanceColumn: balanceColumn ?? second?.at ?? null,
  };
}

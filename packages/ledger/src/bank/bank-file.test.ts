import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { readBankAmount } from './bank-amount.ts';
import { guessBankColumns } from './bank-columns.ts';
import { guessDayOrder, readBankDay } from './bank-day.ts';
import { closingBalanceOf, readBankRows } from './read-bank-rows.ts';

test.for([
  { text: '2026-09-15', order: 'dmy', day: '2026-09-15', because: 'an ISO day is one in any order' },
  { text: '20260915', order: 'mdy', day: '2026-09-15', because: 'packed' },
  { text: '15/09/2026', order: 'dmy', day: '2026-09-15', because: 'the day first' },
  { text: '9/15/26', order: 'mdy', day: '2026-09-15', because: 'the month first, a short year' },
  { text: '15.9.2026', order: 'dmy', day: '2026-09-15', because: 'points' },
  { text: '15 Sep 2026', order: 'ymd', day: '2026-09-15', because: 'a named month' },
  { text: 'September 15, 2026', order: 'ymd', day: '2026-09-15', because: 'the month written out' },
  { text: '15 de ago de 2026', order: 'ymd', day: '2026-08-15', because: 'in Spanish' },
  { text: '2026-09-15 10:31:07', order: 'ymd', day: '2026-09-15', because: 'a time is left out' },
  { text: '15/09/2026', order: 'mdy', day: undefined, because: 'there is no fifteenth month' },
  { text: '30/02/2026', order: 'dmy', day: undefined, because: 'there is no such day' },
  { text: '12345', order: 'dmy', day: undefined, because: 'a number is no day' },
  { text: '', order: 'dmy', day: undefined, because: 'nothing is no day' },
] as const)('reads the day “$text” in order $order: $because', ({ text, order, day }) => {
  expect(readBankDay(text, order)).toBe(day);
});

test.for([
  { texts: ['01/02/2026', '13/02/2026'], order: 'dmy', because: 'a thirteenth is a day' },
  { texts: ['01/02/2026', '02/13/2026'], order: 'mdy', because: 'a thirteenth is a day' },
  { texts: ['01/02/2026'], order: 'mdy', because: 'slashes without a word' },
  { texts: ['01.02.2026'], order: 'dmy', because: 'points without a word' },
  { texts: ['2026-02-01'], order: 'ymd', because: 'an ISO day' },
])('guesses the order of $texts as $order: $because', ({ texts, order }) => {
  expect(guessDayOrder(texts)).toBe(order);
});

test.for([
  { text: '1,234.50', mark: '.', minorUnits: 123_450 },
  { text: '1.234,5', mark: ',', minorUnits: 123_450 },
  { text: '-12.00', mark: '.', minorUnits: -1200 },
  { text: '−12,00', mark: ',', minorUnits: -1200 },
  { text: '(12.00)', mark: '.', minorUnits: -1200 },
  { text: '12.00-', mark: '.', minorUnits: -1200 },
  { text: '12.00 DR', mark: '.', minorUnits: -1200 },
  { text: '12.00 CR', mark: '.', minorUnits: 1200 },
  { text: '$ 1 234.5', mark: '.', minorUnits: 123_450 },
  { text: '-$12.00', mark: '.', minorUnits: -1200 },
  { text: 'USD 7', mark: '.', minorUnits: 700 },
  { text: '7 EUR', mark: ',', minorUnits: 700 },
  { text: '0.00', mark: '.', minorUnits: 0 },
  { text: '12.345', mark: '.', minorUnits: undefined },
  { text: '12,34', mark: '.', minorUnits: undefined },
  { text: '12.34', mark: ',', minorUnits: undefined },
  { text: '12a', mark: '.', minorUnits: undefined },
  { text: '', mark: '.', minorUnits: undefined },
  { text: '99999999999999999', mark: '.', minorUnits: undefined },
] as const)('reads the amount “$text” with “$mark” as $minorUnits', ({ text, mark, minorUnits }) => {
  expect(readBankAmount(text, { decimalMark: mark, exponent: 2 })).toBe(minorUnits);
});

// Three banks as they really differ: preamble, separators, one column of amounts or two, forwards or backwards in time.
const SIGNED = [
  ['Posted Date', 'Description', 'Amount', 'Running balance'],
  ['09/03/2026', 'TRANSFER ASHDOWN', '72.00', '572.00'],
  ['09/14/2026', 'MONTHLY SERVICE FEE', '-4.50', '567.50'],
];
const EUROPEAN = [
  ['Cuenta 12-34', '', '', '', ''],
  ['Fecha', 'Fecha valor', 'Concepto', 'Importe', 'Saldo'],
  ['14/09/2026', '14/09/2026', 'Comisión', '-4,50', '1.567,50'],
  ['03/09/2026', '04/09/2026', 'Transferencia', '1.072,00', '1.572,00'],
];
const TWO_COLUMNS = [
  ['Date', 'Check Number', 'Payee', 'Debit', 'Credit'],
  ['2026-09-03', '1001', 'Quarry Mill', '498.50', ''],
  ['2026-09-04', '', 'Dell', '', '23.00'],
  ['Total', '', '', '498.50', '23.00'],
];
const read = (rows: string[][]) => {
  const columns = guessBankColumns(rows);
  if (!columns) throw new Error('no guess');
  return { columns, ...readBankRows(rows, columns, 2) };
};

test('one signed column with a balance is read, and the balance after the last line is told', () => {
  const { lines, problems, columns } = read(SIGNED);
  expect(columns).toMatchObject({ firstRow: 1, amountColumn: 2, balanceColumn: 3, wordColumns: [1] });
  expect(lines.map(({ onDay, minorUnits, words }) => [onDay, minorUnits, words])).toEqual([
    ['2026-09-03', 7200, 'TRANSFER ASHDOWN'],
    ['2026-09-14', -450, 'MONTHLY SERVICE FEE'],
  ]);
  expect(problems).toEqual([]);
  expect(closingBalanceOf(lines)).toEqual({ onDay: '2026-09-14', minorUnits: 56_750 });
});

test('decimal commas, days first, a preamble, and the newest line on top', () => {
  const { lines, columns } = read(EUROPEAN);
  expect(columns).toMatchObject({ firstRow: 2, dayColumn: 0, dayOrder: 'dmy', decimalMark: ',' });
  expect(lines.map(({ onDay, minorUnits, words }) => [onDay, minorUnits, words])).toEqual([
    ['2026-09-14', -450, 'Comisión'],
    ['2026-09-03', 107_200, 'Transferencia'],
  ]);
  expect(closingBalanceOf(lines)).toEqual({ onDay: '2026-09-14', minorUnits: 156_750 });
});

test('debit and credit columns become one sign, and a row of totals is no line', () => {
  const { lines, problems, columns } = read(TWO_COLUMNS);
  expect(columns).toMatchObject({ amountColumn: null, outColumn: 3, inColumn: 4, balanceColumn: null });
  expect(lines.map(({ minorUnits, words }) => [minorUnits, words])).toEqual([
    [-49_850, 'Quarry Mill'],
    [2300, 'Dell'],
  ]);
  expect(problems.map(({ rowNo, because }) => [rowNo, because])).toEqual([[4, 'no-day']]);
  expect(closingBalanceOf(lines)).toBeUndefined();
});

test('a balance that does not follow from the amounts is not believed', () => {
  const wrong = SIGNED.map((row, at) => (at === 2 ? [...row.slice(0, 3), '560.00'] : row));
  expect(closingBalanceOf(read(wrong).lines)).toBeUndefined();
});

test('a file without any day is not guessed at', () => {
  expect(
    guessBankColumns([
      ['name', 'amount'],
      ['Dell', '1.00'],
    ]),
  ).toBeUndefined();
  expect(guessBankColumns([])).toBeUndefined();
});

test('a cell that is no amount is told with its row and column', () => {
  const { columns } = read(SIGNED);
  const rows = [...SIGNED, ['09/15/2026', 'Dell', 'twelve', '']];
  expect(readBankRows(rows, columns, 2).problems).toEqual([
    { rowNo: 4, column: 2, cell: 'twelve', because: 'no-amount' },
  ]);
});

test('two equal payments of a day stay two, and the same file twice is the same lines', () => {
  const rows = [...SIGNED, ['09/14/2026', 'Monthly  Service FEE', '-4.50', '563.00']];
  const keys = read(rows).lines.map(({ fingerprint, occurrence }) => `${fingerprint}#${occurrence}`);
  expect(new Set(keys).size).toBe(3);
  expect(read(rows).lines.map(({ fingerprint, occurrence }) => `${fingerprint}#${occurrence}`)).toEqual(keys);
});

test('what is written in a bank’s way is read back to the cent', () => {
  const exact = fc.integer({ min: -999_999_999, max: 999_999_999 });
  fc.assert(
    fc.property(exact, fc.constantFrom('.' as const, ',' as const), (minorUnits, mark) => {
      const [whole = '', cents = ''] = (Math.abs(minorUnits) / 100).toFixed(2).split('.');
      const grouped = whole.replaceAll(/\B(?=(\d{3})+$)/g, mark === '.' ? ',' : '.');
      const text = `${minorUnits < 0 ? '-' : ''}${grouped}${mark}${cents}`;
      expect(readBankAmount(text, { decimalMark: mark, exponent: 2 })).toBe(minorUnits);
    }),
  );
});

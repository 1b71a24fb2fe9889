import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { giveBankLines } from '../support/bank.ts';
import { bodyOf } from '../support/buy.ts';
import { type TestBooks, theBooks } from '../support/money-books.ts';

// What the database itself holds of the bank's lines, whatever code asks: written as its owner, past every policy.
let app: TestApp;
let books: TestBooks;
let lines: Record<string, { id: string }>;
let entries: Record<'bank' | 'cash' | 'other', string>;
beforeAll(async () => {
  app = await openTestApp('2026-09-30T15:00:00Z');
  books = await theBooks(app);
  const pay = async (wish: object) =>
    bodyOf(
      await books.treasurer.post(`${books.path}/payments`, { householdId: books.dell.householdId, ...wish }),
      201,
    ).entryId;
  entries = {
    bank: await pay({ minorUnits: 700, till: 'bank' }),
    cash: await pay({ minorUnits: 800, till: 'cash' }),
    other: await pay({ minorUnits: 900, till: 'bank' }),
  };
  lines = await giveBankLines(books.treasurer, books.path, [
    ['2026-09-01', 'SEVEN', '7.00'],
    ['2026-09-01', 'SEVEN AGAIN', '7.00'],
    ['2026-09-01', 'OUT', '-7.00'],
    ['2026-09-01', 'EIGHT', '8.00'],
    ['2026-09-01', 'NINE', '9.00'],
  ]);
});
afterAll(() => app.close());

const match = (words: string, entryId: string | null, how = 'in-book', reason = '') =>
  app.admin`insert into book.bank_match (storehouse_id, bank_line_id, how, entry_id, reason, matched_by, matched_at)
    values (${books.storehouseId}, ${lines[words]?.id ?? ''}, ${how}, ${entryId}, ${reason}, ${books.birchall.personId},
      now())`;
const broken = (work: PromiseLike<unknown>): Promise<string> =>
  Promise.resolve(work).then(
    () => 'nothing',
    (error: { constraint_name?: string; code?: string }) => error.constraint_name ?? error.code ?? '',
  );

test.for([
  { words: 'OUT', entry: 'bank', because: 'money that went out is none that came in' },
  { words: 'EIGHT', entry: 'bank', because: 'a cent more is another entry' },
  { words: 'EIGHT', entry: 'cash', because: 'the tin is not the bank' },
] as const)('a line has the amount of its entry: $because', async ({ words, entry }) => {
  expect(await broken(match(words, entries[entry]))).toBe('bank_match_same_amount');
});

test('a line and an entry have one open match each, and closed ones stay', async () => {
  await match('SEVEN', entries.bank);
  expect(await broken(match('SEVEN', null, 'set-aside', 'twice'))).toBe('bank_match_line_once');
  expect(await broken(match('SEVEN AGAIN', entries.bank))).toBe('bank_match_entry_once');
  await app.admin`update book.bank_match set undone_by = matched_by, undone_at = now(), undone_because = 'a slip'`;
  await match('SEVEN AGAIN', entries.bank);
});

test('an entry is not reversed under its line, nor matched once it is', async () => {
  const reversal = `${books.path}/entries/${entries.other}/reversal`;
  await match('NINE', entries.other);
  const [entry] = await app.admin`select * from book.entry where entry_id = ${entries.other}`;
  const undoing = { ...entry, entry_id: lines.OUT?.id ?? '', entry_no: 99, reverses_id: entries.other };
  expect(await broken(app.admin`insert into book.entry ${app.admin(undoing)}`)).toBe('entry_not_at_the_bank');
  await app.admin`update book.bank_match set undone_by = matched_by, undone_at = now(), undone_because = 'a slip'
    where entry_id = ${entries.other}`;
  bodyOf(await books.treasurer.post(reversal, { reason: 'typed twice' }), 201);
  expect(await broken(match('NINE', entries.other))).toBe('bank_match_entry_stands');
});

test.for([
  { how: 'set-aside', entry: false, reason: ' ', constraint: 'bank_match_set_aside_explained' },
  { how: 'posted', entry: false, reason: '', constraint: 'bank_match_entry_fits_how' },
  { how: 'guessed', entry: false, reason: '', constraint: 'bank_match_how_known' },
])('what became of a line is told whole: $constraint', async ({ how, reason, constraint }) => {
  const found = await broken(match('OUT', null, how, reason));
  expect(['bank_match_how_known', 'bank_match_entry_fits_how', constraint]).toContain(found);
  expect(found).not.toBe('nothing');
});

test('the app can’t change or remove what the bank said', async () => {
  const rights = await app.admin<{ right: string }[]>`select privilege_type as right
    from information_schema.role_table_grants where table_schema = 'book' and table_name = 'bank_line'
      and grantee = 'sheafbook_app' order by 1`;
  expect(rights.map(({ right }) => right)).toEqual(['INSERT', 'SELECT']);
});

test.for([
  { counted: 5, entry: null, reason: 'short', constraint: 'cash_count_difference_posted' },
  { counted: 10, entry: 'cash' as const, reason: '', constraint: 'cash_count_difference_posted' },
  { counted: 5, entry: 'cash' as const, reason: ' ', constraint: 'cash_count_difference_explained' },
])('a count of $counted against 10 keeps to $constraint', async ({ counted, entry, reason, constraint }) => {
  const found = await broken(app.admin`insert into book.cash_count (storehouse_id, cash_count_id, on_day,
      expected_minor_units, counted_minor_units, reason, entry_id, counted_by, counted_at)
    values (${books.storehouseId}, uuidv7(), '2026-09-30', 10, ${counted}, ${reason},
      ${entry === null ? null : entries[entry]}, ${books.birchall.personId}, now())`);
  expect(found).toBe(constraint);
});

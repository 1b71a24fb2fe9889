import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anOpeningBalance, type TestBooks, theBooks } from '../support/money-books.ts';

// Today is 2026-12-31. Dell owes 50.00 since 1 August (152 days), 20.00 since 30 November (31 days), 3.00 since the
// 20th, and has paid 60.00: August is settled, 10.00 of November is left. Corran has 12.00 to its credit.
let app: TestApp;
let books: TestBooks;
beforeAll(async () => {
  app = await openTestApp('2026-12-31T15:00:00Z');
  books = await theBooks(app);
  for (const [onDay, balanceMinorUnits] of [
    ['2026-08-01', 5000],
    ['2026-11-30', 2000],
    ['2026-12-20', 300],
  ] as const)
    await anOpeningBalance(books, books.dell, { balanceMinorUnits, onDay });
  await anOpeningBalance(books, books.corran, { balanceMinorUnits: -1200 });
  const paid = { householdId: books.dell.householdId, minorUnits: 6000, till: 'cash', onDay: '2026-12-24' };
  bodyOf(await books.treasurer.post(`${books.path}/payments`, paid), 201);
});
afterAll(() => app.close());

const read = (query = '') => books.treasurer.get(`${books.path}/balances${query}`);

test('payments settle the oldest first, and what is left says since when', async () => {
  const { balances } = bodyOf(await read());
  const row = (name: string) => balances.find(({ household }: { household: string }) => household === name);
  expect(row('Dell')).toMatchObject({
    ...{ balanceMinorUnits: 1300, days0To30MinorUnits: 300, days31To60MinorUnits: 1000 },
    ...{ days61To90MinorUnits: 0, over90DaysMinorUnits: 0, creditMinorUnits: 0, owesSinceOn: '2026-11-30' },
  });
  expect(row('Corran')).toMatchObject({
    balanceMinorUnits: -1200,
    creditMinorUnits: 1200,
    owesSinceOn: null,
  });
  expect(row('Ashdown')).toMatchObject({ balanceMinorUnits: 0, owesSinceOn: null });
});

test('a payment that is taken back leaves the debt as old as it was, and one put back settles it again', async () => {
  const sinceOf = async () => {
    const { balances } = bodyOf(await read());
    const row = balances.find(({ household }: { household: string }) => household === 'Dell');
    return [row.owesSinceOn, row.days0To30MinorUnits, row.days31To60MinorUnits];
  };
  const paid = { householdId: books.dell.householdId, minorUnits: 1000, till: 'bank' };
  const undo = async (entryId: string) =>
    bodyOf(await books.treasurer.post(`${books.path}/entries/${entryId}/reversal`, { reason: 'a slip' }), 201)
      .id;
  const { entryId } = bodyOf(await books.treasurer.post(`${books.path}/payments`, paid), 201);
  expect(await sinceOf()).toEqual(['2026-12-20', 300, 0]);
  const reversal = await undo(entryId);
  expect(await sinceOf()).toEqual(['2026-11-30', 300, 1000]);
  const again = await undo(reversal);
  expect(await sinceOf()).toEqual(['2026-12-20', 300, 0]);
  await undo(again);
  expect(await sinceOf()).toEqual(['2026-11-30', 300, 1000]);
});

test('every household has a word of its own to write on a transfer', async () => {
  const { balances } = bodyOf(await read());
  const words = balances.map(({ reference }: { reference: string }) => reference);
  expect(new Set(words).size).toBe(words.length);
  expect(words.every((word: string) => /^[a-z]{6}$/.test(word))).toBe(true);
});

test('the list of who owes comes as CSV', async () => {
  const { body } = await read('?owing=true&format=csv');
  const [head, ...rows] = body.trim().split('\r\n');
  expect(head).toContain('owesSinceOn');
  expect(rows).toHaveLength(1);
  expect(rows[0]).toContain('Dell');
});

test('the household on the list sees that it was read; who has no duty reads nothing', async () => {
  const path = `${books.path}/households/${books.dell.householdId}/private-reads`;
  const { privateReads: reads } = bodyOf(await books.dell.caller.get(path));
  expect(reads.map(({ what }: { what: string }) => what)).toContain('balance');
  const denied = await books.dell.caller.get(`${books.path}/balances`);
  expect([denied.status, denied.body.code]).toEqual([403, 'duty-missing']);
});

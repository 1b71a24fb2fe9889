import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anOpeningBalance, balanceOf, refusalOf, type TestBooks, theBooks } from '../support/money-books.ts';

// Ledger notes 6.17: a command counts once for each login and key.
let app: TestApp;
let books: TestBooks;
beforeAll(async () => {
  app = await openTestApp('2026-09-15T15:00:00Z');
  books = await theBooks(app);
});
afterAll(() => app.close());

const pay = (key: string, minorUnits: number, path = '/payments') =>
  books.treasurer.post(
    `${books.path}${path}`,
    { householdId: books.dell.householdId, minorUnits, till: 'bank' },
    { 'Idempotency-Key': key },
  );

test('the same key with the same body gets the first answer back, and the money moves once', async () => {
  const first = await pay('receipt-1', 1000);
  const again = await pay('receipt-1', 1000);
  expect([first.status, again.status]).toEqual([201, 201]);
  expect(again.body).toEqual(first.body);
  expect([first.headers.get('Idempotent-Replay'), again.headers.get('Idempotent-Replay')]).toEqual([
    null,
    'true',
  ]);
  expect(await balanceOf(books, books.dell)).toBe(-1000);
});

test('the same key with another body, or at another address, is refused', async () => {
  bodyOf(await pay('receipt-2', 2000), 201);
  for (const other of [() => pay('receipt-2', 2001), () => pay('receipt-2', 2000, '/refunds')])
    expect(await refusalOf(app, other)).toMatchObject({
      status: 409,
      code: 'idempotency-key-reused',
      isUnchanged: true,
    });
});

test('a key belongs to its login: two people may use the same words', async () => {
  const debt = { householdId: books.dell.householdId, minorUnits: 900, reason: 'moved away' };
  await anOpeningBalance(books, books.dell, { balanceMinorUnits: 9000 });
  const ask = await books.treasurer.post(`${books.path}/write-offs`, debt, { 'Idempotency-Key': 'today' });
  const agreement = `${books.path}/write-offs/${bodyOf(ask, 201).id}/agreement`;
  const agreed = await books.coordinator.post(agreement, undefined, { 'Idempotency-Key': 'today' });
  expect(bodyOf(agreed, 200).state).toBe('posted');
});

test('a refusal is not kept: the same key works once the reason is gone', async () => {
  const refund = () =>
    books.treasurer.post(
      `${books.path}/refunds`,
      { householdId: books.corran.householdId, minorUnits: 700, till: 'bank' },
      { 'Idempotency-Key': 'refund-1' },
    );
  expect(await refusalOf(app, refund)).toMatchObject({ code: 'not-enough-left', isUnchanged: true });
  await anOpeningBalance(books, books.corran, { balanceMinorUnits: -700 });
  expect((await refund()).status).toBe(201);
});

test('answers are kept for thirty days, and housekeeping purges them after', async () => {
  bodyOf(await pay('receipt-3', 3000), 201);
  const kept = async () => {
    const [row] = await app.admin<{ count: number }[]>`select count(*)::int as count from book.kept_answer
      where idempotency_key = 'receipt-3'`;
    return row?.count;
  };
  const keepHouse = (instant: string) => app.sql`select book.keep_house(${instant}::timestamptz)`;
  await keepHouse('2026-10-15T15:00:00Z');
  expect(await kept()).toBe(1); // thirty days to the second
  await keepHouse('2026-10-15T15:00:01Z');
  expect(await kept()).toBe(0);
  const [deleted] = await app.sql`delete from book.kept_answer returning 1`.catch((error) => [error.code]);
  expect(deleted).toBe('42501'); // the app itself may not
});

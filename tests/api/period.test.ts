import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anOpeningBalance, refusalOf, type TestBooks, theBooks } from '../support/money-books.ts';

let app: TestApp;
let books: TestBooks;
beforeAll(async () => {
  app = await openTestApp('2026-10-10T15:00:00Z');
  books = await theBooks(app);
});
afterAll(() => app.close());

const close = (throughOn: string) => books.treasurer.post(`${books.path}/periods`, { throughOn });
const pay = (wish: object) =>
  books.treasurer.post(`${books.path}/payments`, {
    householdId: books.dell.householdId,
    till: 'bank',
    ...wish,
  });
const trialBalance = async (query = '') =>
  bodyOf(await books.treasurer.get(`${books.path}/trial-balance${query}`));

test('a period that is still to come can’t be closed', async () => {
  expect(await refusalOf(app, () => close('2026-10-11'))).toMatchObject({
    status: 400,
    code: 'invalid-input',
    fields: ['throughOn'],
    isUnchanged: true,
  });
});

test('the trial balance agrees, also through a day of the past', async () => {
  await anOpeningBalance(books, books.dell, { balanceMinorUnits: 5000, onDay: '2026-09-01' });
  bodyOf(await pay({ minorUnits: 2000, onDay: '2026-10-02' }), 201);
  const now = await trialBalance();
  const row = (balance: { rows: { number: string }[] }, number: string) =>
    balance.rows.find((candidate) => candidate.number === number);
  expect(now.agrees).toBe(true);
  expect(row(now, '1000')).toMatchObject({ debitMinorUnits: 2000 });
  expect(row(now, '1100')).toMatchObject({ debitMinorUnits: 3000 });
  expect(row(now, '3000')).toMatchObject({ creditMinorUnits: 5000 });
  const september = await trialBalance('?throughOn=2026-09-30');
  expect(september).toMatchObject({ agrees: true, debitMinorUnits: 5000, creditMinorUnits: 5000 });
  expect(row(september, '1000')).toMatchObject({ debitMinorUnits: 0 });
});

test('nothing is posted to a closed period; later truth goes in as today’s entry (ledger-notes 6.5)', async () => {
  const closed = bodyOf(await close('2026-09-30'), 201);
  expect(closed).toMatchObject({
    closedThrough: '2026-09-30',
    closes: [{ closedThrough: '2026-09-30', closedBy: 'Birchall Person' }],
  });
  expect(await refusalOf(app, () => pay({ minorUnits: 100, onDay: '2026-09-30' }))).toMatchObject({
    status: 409,
    code: 'period-closed',
    fields: ['onDay'],
    isUnchanged: true,
  });
  expect((await pay({ minorUnits: 100, onDay: '2026-10-01' })).status).toBe(201);
  expect((await pay({ minorUnits: 110, note: 'paid on 30 September' })).status).toBe(201);
  const september = await trialBalance('?throughOn=2026-09-30');
  expect(september.debitMinorUnits).toBe(5000);
});

test('an entry of a closed period is undone today, not then', async () => {
  const { entries } = bodyOf(await books.treasurer.get(`${books.path}/entries?limit=1`));
  const reversal = `${books.path}/entries/${entries[0].id}/reversal`;
  const wish = { reason: 'the old book was wrong' };
  expect(
    await refusalOf(app, () => books.treasurer.post(reversal, { ...wish, onDay: '2026-09-01' })),
  ).toMatchObject({ code: 'period-closed', fields: ['onDay'], isUnchanged: true });
  expect(bodyOf(await books.treasurer.post(reversal, wish), 201)).toMatchObject({ onDay: '2026-10-10' });
});

test('what is closed stays closed', async () => {
  for (const throughOn of ['2026-09-30', '2026-08-31'])
    expect(await refusalOf(app, () => close(throughOn))).toMatchObject({
      status: 409,
      code: 'period-closed',
      fields: ['throughOn'],
      isUnchanged: true,
    });
  expect(bodyOf(await books.dell.caller.get(`${books.path}/periods`)).closedThrough).toBe('2026-09-30');
});

test('the year’s income and expenses end in the store fund, each once', async () => {
  bodyOf(await books.treasurer.post(`${books.path}/fund-receipts`, { minorUnits: 6000, till: 'bank' }), 201);
  bodyOf(await books.treasurer.post(`${books.path}/bank-charges`, { minorUnits: 250 }), 201);
  bodyOf(await books.treasurer.post(`${books.path}/fund-spendings`, { minorUnits: 1750, till: 'bank' }), 201);
  const before = await trialBalance();
  const fundOf = (balance: {
    rows: { number: string; debitMinorUnits: number; creditMinorUnits: number }[];
  }) => {
    const fund = balance.rows.find((row) => row.number === '3000');
    return (fund?.creditMinorUnits ?? 0) - (fund?.debitMinorUnits ?? 0);
  };
  const yearEnd = { throughOn: '2026-10-10' };
  const ended = bodyOf(await books.treasurer.post(`${books.path}/year-ends`, yearEnd), 201);
  expect(ended).toMatchObject({ what: 'year-end', minorUnits: 6000 - 250 - 1750, onDay: '2026-10-10' });
  const after = await trialBalance();
  expect(fundOf(after) - fundOf(before)).toBe(4000);
  const open = after.rows.filter(
    (row: { number: string; debitMinorUnits: number; creditMinorUnits: number }) =>
      /^[45]/.test(row.number) && row.debitMinorUnits + row.creditMinorUnits > 0,
  );
  expect(open).toEqual([]);
  expect(await refusalOf(app, () => books.treasurer.post(`${books.path}/year-ends`, yearEnd))).toMatchObject({
    code: 'nothing-to-post',
    fields: ['throughOn'],
    isUnchanged: true,
  });
});

test('the books of a storehouse are for the treasurer and the reviewer', async () => {
  for (const path of ['/trial-balance', '/deposits-held']) {
    expect((await books.reviewer.get(`${books.path}${path}`)).status).toBe(200);
    for (const caller of [books.dell.caller, books.coordinator])
      expect((await caller.get(`${books.path}${path}`)).body.code).toBe('duty-missing');
  }
  expect((await books.coordinator.get(`${books.path}/claims-outstanding`)).status).toBe(200);
});

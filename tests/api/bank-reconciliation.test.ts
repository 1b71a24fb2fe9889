import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { giveBankLines } from '../support/bank.ts';
import { aSupplier, bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/fingerprint.ts';
import { anOpeningBalance, type TestBooks, theBooks } from '../support/money-books.ts';

// One month of one account, told in order: what the bank says, what the book says, and what is between them.
let app: TestApp;
let books: TestBooks;
beforeAll(async () => {
  app = await openTestApp('2026-09-30T15:00:00Z');
  books = await theBooks(app);
});
afterAll(() => app.close());

const post = (rest: string, body: unknown) => books.treasurer.post(`${books.path}${rest}`, body);
const get = async (rest: string) => bodyOf(await books.treasurer.get(`${books.path}${rest}`));

test('without a word from the bank there is no difference to tell', async () => {
  expect(await get('/bank/reconciliation')).toMatchObject({
    ...{ isTold: false, statementMinorUnits: null, differenceMinorUnits: null, bookMinorUnits: 0 },
  });
});

// The book: 500.00 brought over, 72.00 received, 40.00 paid out that the bank has not seen: 532.00.
// The bank: 500.00 + 72.00 − 3.50 of a fee that is not booked: 568.50. And 532.00 + 40.00 − 3.50 = 568.50.
test('what is under way and what is not booked yet explains the bank to the cent', async () => {
  const reason = 'the statement of 31 August';
  bodyOf(
    await post('/opening-balances', { of: 'bank', balanceMinorUnits: 50_000, onDay: '2026-09-01', reason }),
    201,
  );
  const { householdId } = books.dell;
  const paid = { householdId, minorUnits: 7200, till: 'bank', onDay: '2026-09-03' };
  const { entryId } = bodyOf(await post('/payments', paid), 201);
  const supplier = { supplierId: await aSupplier(books), minorUnits: 4000, till: 'bank', isPrepayment: true };
  bodyOf(await post('/supplier-payments', { ...supplier, onDay: '2026-09-29' }), 201);
  const lines = await giveBankLines(books.treasurer, books.path, [
    ['2026-09-02', 'DELL', '72.00'],
    ['2026-09-30', 'FEE', '-3.50'],
  ]);
  bodyOf(await post('/bank/balances', { onDay: '2026-09-30', minorUnits: 56_850 }), 201);
  const before = await get('/bank/reconciliation');
  expect(before).toMatchObject({
    differenceMinorUnits: 0,
    bookMinorUnits: 53_200,
    unclearedMinorUnits: 3200,
  });
  bodyOf(await post(`/bank/lines/${lines.DELL.id}/match`, { entryId }), 201);
  const after = await get('/bank/reconciliation');
  expect(after).toMatchObject({
    ...{ throughOn: '2026-09-30', statementMinorUnits: 56_850, bookMinorUnits: 53_200 },
    ...{ unclearedMinorUnits: -4000, notInBookMinorUnits: -350, differenceMinorUnits: 0 },
  });
  expect(after.uncleared.map(({ what }: { what: string }) => what)).toEqual(['supplier-paid']);
  expect(after.notInBook).toMatchObject([{ words: 'FEE', minorUnits: -350, setAsideBecause: null }]);
});

test('a line set aside stays in sight, with its reason', async () => {
  const { lines } = await get('/bank/lines?state=open');
  bodyOf(await post(`/bank/lines/${lines[0].id}/setting-aside`, { reason: 'The bank gives it back.' }), 201);
  const { notInBook, differenceMinorUnits } = await get('/bank/reconciliation');
  expect([differenceMinorUnits, notInBook[0].setAsideBecause]).toEqual([0, 'The bank gives it back.']);
});

test('a cent that nothing explains is told', async () => {
  bodyOf(await post('/bank/balances', { onDay: '2026-09-30', minorUnits: 56_851 }), 201);
  expect((await get('/bank/reconciliation')).differenceMinorUnits).toBe(1);
  bodyOf(await post('/bank/balances', { onDay: '2026-09-30', minorUnits: 56_850 }), 201);
  expect((await get('/bank/reconciliation')).differenceMinorUnits).toBe(0);
});

test('an earlier day is reconciled by what the bank said of it, or of the last day before', async () => {
  bodyOf(await post('/bank/balances', { onDay: '2026-09-15', minorUnits: 57_200 }), 201);
  expect(await get('/bank/reconciliation?on=2026-09-20')).toMatchObject({
    ...{
      throughOn: '2026-09-15',
      bookMinorUnits: 57_200,
      differenceMinorUnits: 0,
      uncleared: [],
      notInBook: [],
    },
  });
});

test('a balance of a day to come is refused', async () => {
  const refusal = await refusalOf(app, () => post('/bank/balances', { onDay: '2026-10-01', minorUnits: 1 }));
  expect(refusal).toMatchObject({ code: 'invalid-input', fields: ['onDay'], isUnchanged: true });
});

// 532.00 in the bank; Corran owes 60.00; Quarry Mill is owed 600.00 less the 40.00 paid before: 560.00, and 50.00 more are
// known to come. 532 + 60 − 560 = 32 is left; with the 50 more, 18 is short.
test('the bank can pay what is due, or how much is short is told', async () => {
  await anOpeningBalance(books, books.corran, { balanceMinorUnits: 6000 });
  const [supplier] = (await get('/suppliers')).suppliers;
  const owed = {
    of: 'supplier',
    supplierId: supplier.id,
    balanceMinorUnits: -60_000,
    reason: 'the old book',
  };
  bodyOf(await post('/opening-balances', owed), 201);
  expect(await get('/bank/forecast?on=2026-10-15')).toMatchObject({
    ...{ bankMinorUnits: 53_200, receiptsMinorUnits: 6000, paymentsMinorUnits: 56_000 },
    ...{ leftMinorUnits: 3200, shortMinorUnits: 0 },
    receipts: [{ party: 'Corran', why: 'balance', minorUnits: 6000 }],
  });
  expect(await get('/bank/forecast?on=2026-10-15&more=5000')).toMatchObject({ shortMinorUnits: 1800 });
  const past = await books.treasurer.get(`${books.path}/bank/forecast?on=2026-09-29`);
  expect([past.status, past.body.fields[0].field]).toEqual([400, 'on']);
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aSupplier, bodyOf } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
import { anOpeningBalance, balanceOf, refusalOf, type TestBooks, theBooks } from '../support/money-books.ts';

let app: TestApp;
let books: TestBooks;
beforeAll(async () => {
  app = await openTestApp('2026-09-15T15:00:00Z');
  books = await theBooks(app);
});
afterAll(() => app.close());

const post = (path: string, body: unknown, headers?: Record<string, string>) =>
  books.treasurer.post(`${books.path}${path}`, body, headers);
const refused = (path: string, body: unknown) => refusalOf(app, () => post(path, body));
let names = 0;
const aMember = () => aHousehold(app, books, `Member ${++names}`);

test('a household pays what it owes, in part, in full and beyond', async () => {
  const member = await aMember();
  await anOpeningBalance(books, member, { balanceMinorUnits: 2500 });
  const { householdId } = member;
  const paid = await post('/payments', { householdId, minorUnits: 1000, till: 'bank', onDay: '2026-09-10' });
  expect(paid.status).toBe(201);
  expect(paid.body).toMatchObject({ what: 'payment-received', minorUnits: 1000, currency: 'USD' });
  expect(await balanceOf(books, member)).toBe(1500);
  await post('/payments', { householdId, minorUnits: 2000, till: 'cash' });
  expect(await balanceOf(books, member)).toBe(-500);
});

test.for([
  { without: 'householdId', because: 'no receipt without its household (job map 2.8)' },
  { without: 'minorUnits', because: 'an amount is missing' },
  { without: 'till', because: 'nobody says where the money went' },
])('a receipt without its $without is refused: $because', async ({ without }) => {
  const whole = { householdId: books.dell.householdId, minorUnits: 500, till: 'bank' };
  const wish = Object.fromEntries(Object.entries(whole).filter(([field]) => field !== without));
  expect(await refused('/payments', wish)).toMatchObject({
    status: 400,
    code: 'invalid-input',
    fields: [without],
    isUnchanged: true,
  });
});

test.for([
  { minorUnits: 0 },
  { minorUnits: -500 },
  { minorUnits: 12.5 },
  { minorUnits: '500' },
  { minorUnits: null },
  { minorUnits: 2 ** 53 },
])('an amount of $minorUnits is refused by its field', async ({ minorUnits }) => {
  const wish = { householdId: books.dell.householdId, minorUnits, till: 'bank' };
  expect(await refused('/payments', wish)).toMatchObject({
    code: 'invalid-input',
    fields: ['minorUnits'],
    isUnchanged: true,
  });
});

test.for(['2026-02-30', '2026-13-01', '0000-01-01', '1066-10-14', 'yesterday', '2026-09-16'])(
  'a payment of the day %s is refused: it does not exist, is no day of a storehouse, or is still to come',
  async (onDay) => {
    const wish = { householdId: books.dell.householdId, minorUnits: 500, till: 'bank', onDay };
    expect(await refused('/payments', wish)).toMatchObject({
      code: 'invalid-input',
      fields: ['onDay'],
      isUnchanged: true,
    });
  },
);

test('an unknown field is named, and an unknown household is not found', async () => {
  const wish = { householdId: books.dell.householdId, minorUnits: 500, till: 'bank' };
  expect(await refused('/payments', { ...wish, paidTo: 'me' })).toMatchObject({
    code: 'invalid-input',
    fields: ['paidTo'],
  });
  const stranger = { ...wish, householdId: '01996b1e-5a3c-7c2e-8f4b-3d9a1c2b4e5f' };
  expect(await refused('/payments', stranger)).toMatchObject({ status: 404, code: 'thing-not-found' });
});

test('one book keeps one currency (ledger-notes 6.13)', async () => {
  const wish = { householdId: books.dell.householdId, minorUnits: 500, till: 'bank', currency: 'CAD' };
  expect(await refused('/payments', wish)).toMatchObject({
    status: 422,
    code: 'currency-mixed',
    fields: ['currency'],
    isUnchanged: true,
  });
});

test('the same amount from the same household within two days looks like a duplicate', async () => {
  const { householdId } = await aMember();
  const wish = { householdId, minorUnits: 4321, till: 'bank' };
  const first = bodyOf(await post('/payments', { ...wish, onDay: '2026-09-10' }), 201);
  for (const onDay of ['2026-09-08', '2026-09-10', '2026-09-12']) {
    const second = { ...wish, onDay };
    expect(await refused('/payments', second)).toMatchObject({
      status: 409,
      code: 'looks-like-a-duplicate',
      fields: ['isKnownDuplicate'],
      isUnchanged: true,
    });
  }
  const again = await post('/payments', { ...wish, onDay: '2026-09-12' });
  expect(again.body).toMatchObject({ entryNo: first.entryNo, onDay: '2026-09-10' });
  expect((await post('/payments', { ...wish, onDay: '2026-09-13' })).status).toBe(201);
  expect((await post('/payments', { ...wish, minorUnits: 4322, onDay: '2026-09-10' })).status).toBe(201);
  const known = { ...wish, onDay: '2026-09-10', isKnownDuplicate: true };
  expect((await post('/payments', known)).status).toBe(201);
});

test('a receipt that was taken back is no duplicate of the right one', async () => {
  const { householdId } = await aMember();
  const wish = { householdId, minorUnits: 777, till: 'bank' };
  const { entryId } = bodyOf(await post('/payments', wish), 201);
  bodyOf(await post(`/entries/${entryId}/reversal`, { reason: 'it came by cash' }), 201);
  expect((await post('/payments', { ...wish, till: 'cash' })).status).toBe(201);
});

test('two receipts that race are asked about, too', async () => {
  const { householdId } = await aMember();
  const wish = { householdId, minorUnits: 888, till: 'bank' };
  const answers = await Promise.all([
    post('/payments', wish),
    post('/payments', wish),
    post('/payments', wish),
  ]);
  expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409, 409]);
});

test('a refund pays out a credit, and never more than the credit', async () => {
  const member = await aMember();
  const { householdId } = member;
  await anOpeningBalance(books, member, { balanceMinorUnits: -1200 });
  expect(await refused('/refunds', { householdId, minorUnits: 1201, till: 'bank' })).toMatchObject({
    status: 409,
    code: 'not-enough-left',
    fields: ['minorUnits'],
    isUnchanged: true,
  });
  expect((await post('/refunds', { householdId, minorUnits: 1200, till: 'bank' })).status).toBe(201);
  expect(await balanceOf(books, member)).toBe(0);
});

test('two refunds that race pay one credit out once', async () => {
  const member = await aMember();
  const { householdId } = member;
  await anOpeningBalance(books, member, { balanceMinorUnits: -1000 });
  const wish = { householdId, minorUnits: 700, till: 'bank' };
  const answers = await Promise.all([post('/refunds', wish), post('/refunds', wish)]);
  expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409]);
  expect(await balanceOf(books, member)).toBe(-300);
});

test('the cash tin gives no more than it holds, whoever asks', async () => {
  const member = await aMember();
  await anOpeningBalance(books, member, { balanceMinorUnits: -100_000 });
  const refund = { householdId: member.householdId, minorUnits: 90_000, till: 'cash' };
  const supplierPayment = {
    supplierId: await aSupplier(books),
    minorUnits: 90_000,
    till: 'cash',
    isPrepayment: true,
  };
  for (const [path, wish] of [
    ['/refunds', refund],
    ['/cash-bankings', { minorUnits: 90_000 }],
    ['/fund-spendings', { minorUnits: 90_000, till: 'cash' }],
    ['/supplier-payments', supplierPayment],
  ] as const)
    expect(await refused(path, wish)).toMatchObject({
      code: 'not-enough-left',
      fields: ['minorUnits'],
      isUnchanged: true,
    });
  const opening = { of: 'cash', balanceMinorUnits: -90_000, reason: 'a slip' };
  expect(await refused('/opening-balances', opening)).toMatchObject({ fields: ['balanceMinorUnits'] });
});

test('cash taken in is banked', async () => {
  const tin = async () => {
    const { rows } = bodyOf(await books.treasurer.get(`${books.path}/trial-balance`));
    return rows.find((row: { number: string }) => row.number === '1010').debitMinorUnits;
  };
  const { householdId } = await aMember();
  const before = await tin();
  bodyOf(await post('/payments', { householdId, minorUnits: 3000, till: 'cash' }), 201);
  bodyOf(await post('/cash-bankings', { minorUnits: 3000 }), 201);
  expect(await tin()).toBe(before);
});

test('a supplier is paid what it is owed; more is a prepayment, and said to be one', async () => {
  const supplierId = await aSupplier(books);
  const owed = {
    of: 'supplier',
    supplierId,
    balanceMinorUnits: -5000,
    reason: 'the last bill of the old book',
  };
  bodyOf(await post('/opening-balances', owed), 201);
  const wish = { supplierId, minorUnits: 5001, till: 'bank' };
  expect(await refused('/supplier-payments', wish)).toMatchObject({
    code: 'not-enough-left',
    fields: ['minorUnits'],
    isUnchanged: true,
  });
  expect((await post('/supplier-payments', { ...wish, minorUnits: 5000 })).status).toBe(201);
  expect((await post('/supplier-payments', { ...wish, isPrepayment: true })).status).toBe(201);
  expect((await refused('/supplier-payments', { ...wish, supplierId: books.storehouseId })).code).toBe(
    'thing-not-found',
  );
});

test('the store fund covers a household in need, as far as it owes', async () => {
  const member = await aMember();
  await anOpeningBalance(books, member, { balanceMinorUnits: 4000 });
  bodyOf(await post('/fund-receipts', { minorUnits: 500_000, till: 'bank' }), 201);
  const cover = { householdId: member.householdId, reason: 'agreed at the spring meeting' };
  expect(await refused('/hardship-covers', { ...cover, minorUnits: 4001 })).toMatchObject({
    code: 'not-enough-left',
    fields: ['minorUnits'],
    isUnchanged: true,
  });
  expect((await refused('/hardship-covers', { ...cover, minorUnits: 1, reason: ' ' })).fields).toEqual([
    'reason',
  ]);
  expect((await post('/hardship-covers', { ...cover, minorUnits: 4000 })).status).toBe(201);
  expect(await balanceOf(books, member)).toBe(0);
});

test('the store fund covers as far as it goes, this year’s gifts and costs counted', async () => {
  const member = await aMember();
  await anOpeningBalance(books, member, { balanceMinorUnits: 4000 });
  const { rows } = bodyOf(await books.treasurer.get(`${books.path}/trial-balance`));
  const held = rows
    .filter(({ number }: { number: string }) => number === '3000' || /^[45]/.test(number))
    .reduce(
      (sum: number, row: { debitMinorUnits: number; creditMinorUnits: number }) =>
        sum + row.creditMinorUnits - row.debitMinorUnits,
      0,
    );
  const reason = 'the bank had less than the old book said';
  bodyOf(await post('/opening-balances', { of: 'bank', balanceMinorUnits: -held, reason }), 201);
  bodyOf(await post('/fund-receipts', { minorUnits: 1000, till: 'bank' }), 201);
  bodyOf(await post('/bank-charges', { minorUnits: 100 }), 201);
  const cover = { householdId: member.householdId, reason: 'agreed at the spring meeting' };
  expect(await refused('/hardship-covers', { ...cover, minorUnits: 901 })).toMatchObject({
    code: 'not-enough-left',
    isUnchanged: true,
  });
  expect((await post('/hardship-covers', { ...cover, minorUnits: 900 })).status).toBe(201);
});

test('an opening balance says whose it is and why', async () => {
  const reason = 'from the old book';
  const { householdId } = books.dell;
  expect(
    (await refused('/opening-balances', { of: 'household', balanceMinorUnits: 5, reason })).fields,
  ).toEqual(['householdId']);
  const both = { of: 'bank', householdId, balanceMinorUnits: 5, reason };
  expect((await refused('/opening-balances', both)).fields).toEqual(['householdId']);
  expect((await refused('/opening-balances', { of: 'bank', balanceMinorUnits: 0, reason })).fields).toEqual([
    'balanceMinorUnits',
  ]);
  expect((await refused('/opening-balances', { of: 'bank', balanceMinorUnits: 5 })).fields).toEqual([
    'reason',
  ]);
  expect((await post('/opening-balances', { of: 'bank', balanceMinorUnits: 5, reason })).status).toBe(201);
});

test('an amount that no total can hold is refused, and the books stay as they were', async () => {
  const { householdId } = await aMember();
  const huge = { householdId, minorUnits: 2 ** 53 - 1, till: 'bank' };
  expect(await refused('/payments', { ...huge, isKnownDuplicate: true })).toMatchObject({
    status: 422,
    code: 'amount-too-large',
    isUnchanged: true,
  });
});

test.for([
  '/payments',
  '/refunds',
  '/bank-charges',
  '/cash-bankings',
  '/fund-receipts',
  '/fund-spendings',
  '/hardship-covers',
  '/supplier-payments',
  '/opening-balances',
  '/year-ends',
  '/write-offs',
  '/periods',
])('only the treasurer posts to %s; who may not is told before anything is read', async (path) => {
  for (const caller of [books.coordinator, books.reviewer, books.dell.caller]) {
    const answer = await refusalOf(app, () => caller.post(`${books.path}${path}`, { nonsense: true }));
    expect(answer).toMatchObject({ status: 403, code: 'duty-missing', isUnchanged: true });
  }
  const stranger = await app.as().post(`${books.path}${path}`, {});
  expect([stranger.status, stranger.body.code]).toEqual([401, 'not-signed-in']);
});

test('what moves money needs an idempotency key', async () => {
  const wish = { householdId: books.dell.householdId, minorUnits: 500, till: 'bank' };
  const answer = await refusalOf(app, () => post('/payments', wish, { 'Idempotency-Key': '' }));
  expect(answer).toMatchObject({ status: 400, code: 'idempotency-key-missing', isUnchanged: true });
});

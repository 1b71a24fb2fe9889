import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, bodyOf, type TestBuy } from '../support/buy.ts';
import { anOpeningBalance, balanceOf, refusalOf, type TestBooks, theBooks } from '../support/money-books.ts';

let app: TestApp;
let books: TestBooks;
let buy: TestBuy;
beforeAll(async () => {
  app = await openTestApp('2026-09-15T15:00:00Z');
  books = await theBooks(app);
  buy = await aBuy(app, books);
});
afterAll(() => app.close());

const deposit = (wish: object, path = buy.path) =>
  books.treasurer.post(`${path}/deposits`, { householdId: books.dell.householdId, ...wish });
const refund = (wish: object, path = buy.path) =>
  books.treasurer.post(`${path}/deposits/refunds`, { householdId: books.dell.householdId, ...wish });
const heldFor = async () => {
  const { deposits } = bodyOf(await books.treasurer.get(`${buy.path}/deposits`));
  return deposits.find((row: { householdId: string }) => row.householdId === books.dell.householdId)
    ?.heldMinorUnits;
};

/** 2100 of one buy, straight from the accounts. */
const depositsOf = async (buyId: string) => {
  const [row] = await app.admin<{ balance: string }[]>`select coalesce(sum(inflow - outflow), 0) as balance
    from book.account where kind = 'buy_deposit' and cause_id = ${buyId}`;
  return Number(row?.balance);
};
const overdueOf = async (buyId: string) => {
  const { deposits } = bodyOf(await books.reviewer.get(`${books.path}/deposits-held`));
  return deposits.find((row: { buyId: string }) => row.buyId === buyId);
};

test('a deposit is paid in money and stands beside the balance, not in it', async () => {
  expect(bodyOf(await deposit({ minorUnits: 2300, till: 'bank' }), 201)).toMatchObject({
    what: 'deposit-received',
  });
  expect(await heldFor()).toBe(2300);
  expect(await balanceOf(books, books.dell)).toBe(0);
});

test('a credit may stand as a deposit, as far as it goes', async () => {
  await anOpeningBalance(books, books.dell, { balanceMinorUnits: -1000 });
  expect(await refusalOf(app, () => deposit({ minorUnits: 1001, fromBalance: true }))).toMatchObject({
    status: 409,
    code: 'not-enough-left',
    fields: ['minorUnits'],
    isUnchanged: true,
  });
  bodyOf(await deposit({ minorUnits: 1000, fromBalance: true }), 201);
  expect([await heldFor(), await balanceOf(books, books.dell)]).toEqual([3300, 0]);
});

test.for([
  { wish: { minorUnits: 100 }, because: 'it comes from nowhere' },
  { wish: { minorUnits: 100, till: 'bank', fromBalance: true }, because: 'it comes from two places' },
])('a deposit is refused when $because', async ({ wish }) => {
  expect(await refusalOf(app, () => deposit(wish))).toMatchObject({
    code: 'invalid-input',
    fields: ['till'],
    isUnchanged: true,
  });
});

test('a deposit goes back in money or onto the balance, never more than is held', async () => {
  expect(await refusalOf(app, () => refund({ minorUnits: 3301, till: 'bank' }))).toMatchObject({
    code: 'not-enough-left',
    fields: ['minorUnits'],
    isUnchanged: true,
  });
  bodyOf(await refund({ minorUnits: 300, toBalance: true }), 201);
  bodyOf(await refund({ minorUnits: 1000, till: 'bank' }), 201);
  expect([await heldFor(), await balanceOf(books, books.dell)]).toEqual([2000, -300]);
});

test('refunds that race never give back more than was paid', async () => {
  const answers = await Promise.all(
    [1, 2, 3].map(() => refund({ minorUnits: 1500, till: 'bank', note: 'raced' })),
  );
  expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409, 409]);
  expect(await heldFor()).toBe(500);
});

test('the coordinator sees whether a deposit is there, not how much it is', async () => {
  const { deposits } = bodyOf(await books.coordinator.get(`${buy.path}/deposits`));
  expect(deposits).toEqual([{ householdId: books.dell.householdId, household: 'Dell', isSettled: true }]);
  const member = await books.dell.caller.get(`${buy.path}/deposits`);
  expect([member.status, member.body.code]).toEqual([403, 'duty-missing']);
  const held = bodyOf(await books.reviewer.get(`${books.path}/deposits-held`));
  expect(held).toMatchObject({ heldMinorUnits: 500, deposits: [{ household: 'Dell', isOverdue: false }] });
});

test('a buy that was called off takes no deposit, but gives back what it still holds', async () => {
  const ended = await aBuy(app, books, { isOpen: false });
  bodyOf(await deposit({ minorUnits: 900, till: 'bank' }, ended.path), 201);
  // No command ends a buy that holds a deposit; the treasurer must be able to mend such a one all the same.
  await app.admin`update book.buy set stage = 'called-off' where buy_id = ${ended.buyId}`;
  expect(await refusalOf(app, () => deposit({ minorUnits: 100, till: 'bank' }, ended.path))).toMatchObject({
    ...{ status: 409, code: 'buy-stage-wrong', isUnchanged: true },
  });
  expect(await overdueOf(ended.buyId)).toMatchObject({ heldMinorUnits: 900, isOverdue: true });
  const before = await balanceOf(books, books.dell);
  bodyOf(await refund({ minorUnits: 400, toBalance: true }, ended.path), 201);
  expect(await refusalOf(app, () => refund({ minorUnits: 501, till: 'bank' }, ended.path))).toMatchObject({
    ...{ code: 'not-enough-left', fields: ['minorUnits'], isUnchanged: true },
  });
  bodyOf(await refund({ minorUnits: 500, till: 'bank' }, ended.path), 201);
  expect(await depositsOf(ended.buyId)).toBe(0);
  expect((await balanceOf(books, books.dell)) - before).toBe(-400);
  expect(await overdueOf(ended.buyId)).toBeUndefined();
});

test('a deposit on a buy that is not there is refused', async () => {
  const nowhere = `${books.path}/buys/${books.storehouseId}`;
  expect(await refusalOf(app, () => deposit({ minorUnits: 100, till: 'bank' }, nowhere))).toMatchObject({
    status: 404,
    code: 'thing-not-found',
  });
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/fingerprint.ts';
import { type TestBooks, theBooks } from '../support/money-books.ts';

// 100.00 comes into the tin; the tests count it one after the other.
let app: TestApp;
let books: TestBooks;
beforeAll(async () => {
  app = await openTestApp('2026-09-15T15:00:00Z');
  books = await theBooks(app);
  const paid = { householdId: books.dell.householdId, minorUnits: 10_000, till: 'cash' };
  bodyOf(await post('/payments', paid), 201);
});
afterAll(() => app.close());

const post = (rest: string, body: unknown) => books.treasurer.post(`${books.path}${rest}`, body);
const get = async (rest: string) => bodyOf(await books.treasurer.get(`${books.path}${rest}`));
const refusal = (body: unknown) => refusalOf(app, () => post('/tin/counts', body));
const balanceOfAccount = async (number: string) => {
  const { rows } = await get('/trial-balance');
  const row = rows.find((one: { number: string }) => one.number === number);
  return row.debitMinorUnits - row.creditMinorUnits;
};

test('the tin says what is expected, and which notes and coins there are', async () => {
  expect(await get('/tin')).toMatchObject({
    expectedMinorUnits: 10_000,
    lastCountedOn: null,
    currency: 'USD',
  });
  expect((await get('/tin')).pieces).toContain(2000);
});

test('a count that agrees posts nothing, and is kept', async () => {
  const pieces = [
    { eachMinorUnits: 2000, count: 4 },
    { eachMinorUnits: 500, count: 4 },
  ];
  const count = { countedMinorUnits: 10_000, expectedMinorUnits: 10_000, pieces };
  const with_ = { countedWithPersonId: books.corran.personId };
  expect(bodyOf(await post('/tin/counts', { ...count, ...with_ }), 201)).toMatchObject({
    ...{ differenceMinorUnits: 0, entryId: null, pieces },
  });
  expect((await get('/tin')).lastCountedOn).toBe('2026-09-15');
});

test('too little is a loss, and says why', async () => {
  const short = { countedMinorUnits: 9965, expectedMinorUnits: 10_000 };
  expect(await refusal(short)).toMatchObject({
    code: 'invalid-input',
    fields: ['reason'],
    isUnchanged: true,
  });
  const reason = 'Change given wrongly on Saturday.';
  const { entryId } = bodyOf(await post('/tin/counts', { ...short, reason }), 201);
  const entry = await get(`/entries/${entryId}`);
  expect(entry).toMatchObject({ what: 'cash-counted', note: reason });
  expect(entry.movements).toMatchObject([{ amount: 35, from: { number: '1010' }, to: { number: '5000' } }]);
  expect([await balanceOfAccount('1010'), await balanceOfAccount('5000')]).toEqual([9965, 35]);
});

test('too much is a gift of nobody known', async () => {
  const over = { countedMinorUnits: 10_065, expectedMinorUnits: 9965, reason: 'A note under the tray.' };
  const { entryId } = bodyOf(await post('/tin/counts', over), 201);
  expect((await get(`/entries/${entryId}`)).movements).toMatchObject([
    { amount: 100, from: { number: '4020' }, to: { number: '1010' } },
  ]);
  expect([await balanceOfAccount('1010'), await balanceOfAccount('4020')]).toEqual([10_065, -100]);
  const taken = await refusalOf(app, () => post(`/entries/${entryId}/reversal`, { reason: 'a slip' }));
  expect(taken).toMatchObject({ code: 'cannot-reverse', isUnchanged: true });
});

test.for([
  {
    wish: { countedMinorUnits: 5, expectedMinorUnits: 10_066 },
    code: 'stale-version',
    fields: [],
    because: 'cash moved meanwhile',
  },
  {
    wish: { countedMinorUnits: -1, expectedMinorUnits: 10_065 },
    code: 'invalid-input',
    fields: ['countedMinorUnits'],
    because: 'less than nothing',
  },
  {
    wish: {
      countedMinorUnits: 10_065,
      expectedMinorUnits: 10_065,
      pieces: [{ eachMinorUnits: 100, count: 1 }],
    },
    code: 'does-not-add-up',
    fields: ['countedMinorUnits'],
    because: 'the pieces come to another total',
  },
  {
    wish: {
      countedMinorUnits: 10_065,
      expectedMinorUnits: 10_065,
      pieces: [{ eachMinorUnits: 2 ** 52, count: 999_999 }],
    },
    code: 'does-not-add-up',
    fields: ['countedMinorUnits'],
    because: 'the pieces come to more than can be told',
  },
])('a count is refused: $because', async ({ wish, code, fields }) => {
  expect(await refusal(wish)).toMatchObject({ code, fields, isUnchanged: true });
});

test('two people are two', async () => {
  const count = { countedMinorUnits: 10_065, expectedMinorUnits: 10_065 };
  const own = { ...count, countedWithPersonId: books.birchall.personId };
  expect(await refusal(own)).toMatchObject({ fields: ['countedWithPersonId'], isUnchanged: true });
  const stranger = { ...count, countedWithPersonId: books.storehouseId };
  expect(await refusal(stranger)).toMatchObject({ code: 'thing-not-found', isUnchanged: true });
});

test('the counts are a history, with who counted, and come as CSV', async () => {
  const { counts } = bodyOf(await books.reviewer.get(`${books.path}/tin/counts`));
  expect(counts.map((count: { differenceMinorUnits: number }) => count.differenceMinorUnits)).toEqual([
    100, -35, 0,
  ]);
  expect(counts[2]).toMatchObject({
    countedBy: 'Birchall Person',
    countedWith: 'Corran Person',
    entryNo: null,
  });
  const csv = await books.treasurer.get(`${books.path}/tin/counts?format=csv`);
  expect(csv.body.split('\r\n')).toHaveLength(5);
  const denied = await books.dell.caller.get(`${books.path}/tin/counts`);
  expect([denied.status, denied.body.code]).toEqual([403, 'duty-missing']);
});

test('the audit finds each difference booked', async () => {
  const { findings } = bodyOf(await books.reviewer.get(`${books.path}/audit`));
  const tin = findings.find(({ invariant }: { invariant: string }) =>
    invariant.includes('count of the cash tin'),
  );
  expect(tin).toMatchObject({ holds: true, figure: 'counts: 3, not booked as counted: 0' });
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, bodyOf } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { anOpeningBalance, type TestBooks, theBooks } from '../support/money-books.ts';

let app: TestApp;
let books: TestBooks;
beforeAll(async () => {
  app = await openTestApp('2026-06-01T15:00:00Z');
  books = await theBooks(app);
});
afterAll(() => app.close());

const at = (instant: string) => {
  app.clock.now = new Date(instant);
};
const pay = (household: TestHousehold, wish: object) =>
  books.treasurer.post(`${books.path}/payments`, {
    householdId: household.householdId,
    till: 'bank',
    ...wish,
  });
const statementOf = (household: TestHousehold, query = '', caller: Caller = household.caller) =>
  caller.get(`${books.path}/households/${household.householdId}/statement${query}`);
const readsOf = async (household: TestHousehold) => {
  const rows = await app.admin<{ what: string; name: string }[]>`
    select r.what, p.name from book.private_read r join book.person p using (storehouse_id, person_id)
    where r.household_id = ${household.householdId} order by r.private_read_id`;
  return rows.map(({ what, name }) => `${name}: ${what}`);
};
let names = 0;
const aMember = () => aHousehold(app, books, `Member ${++names}`);

test('a statement can be added up again by hand: opening, charges, payments, closing', async () => {
  at('2026-09-15T15:00:00Z');
  const member = await aMember();
  await anOpeningBalance(books, member, { balanceMinorUnits: 16_548, onDay: '2026-06-02' });
  bodyOf(await pay(member, { minorUnits: 7200, onDay: '2026-07-10', note: 'in two parts' }), 201);
  bodyOf(await pay(member, { minorUnits: 9348, onDay: '2026-08-01' }), 201);
  bodyOf(await pay(member, { minorUnits: 500, onDay: '2026-07-20' }), 201);
  const whole = bodyOf(await statementOf(member));
  expect(whole).toMatchObject({
    storehouse: 'Alder Row Storehouse',
    currency: 'USD',
    from: '2026-06-02', // the first line is older than the household's membership
    to: '2026-09-15',
    openingMinorUnits: 0,
    chargesMinorUnits: 16_548,
    paymentsMinorUnits: 17_048,
    closingMinorUnits: -500,
    closing: 'you-are-owed',
    ask: ['Birchall Person'],
  });
  const summer = bodyOf(await statementOf(member, '?from=2026-07-01&to=2026-07-31'));
  expect(summer).toMatchObject({ openingMinorUnits: 16_548, closingMinorUnits: 8848, closing: 'you-owe' });
  expect(summer.lines.map((line: { balanceMinorUnits: number }) => line.balanceMinorUnits)).toEqual([
    9348, 8848,
  ]);
  expect(summer.lines[0]).toMatchObject({
    onDay: '2026-07-10',
    what: 'payment-received',
    note: 'in two parts',
    chargeMinorUnits: 0,
    paymentMinorUnits: 7200,
    enteredBy: 'Birchall Person',
  });
  const { openingMinorUnits, chargesMinorUnits, paymentsMinorUnits, closingMinorUnits } = summer;
  expect(openingMinorUnits + chargesMinorUnits - paymentsMinorUnits).toBe(closingMinorUnits);
});

test('a statement is read as it was known at an earlier instant', async () => {
  at('2026-09-15T15:00:00Z');
  const member = await aMember();
  await anOpeningBalance(books, member, { balanceMinorUnits: 4000, onDay: '2026-09-01' });
  at('2026-10-05T15:00:00Z');
  // Paid in September, keyed in from the paper in October.
  bodyOf(await pay(member, { minorUnits: 1500, onDay: '2026-09-20' }), 201);
  const september = '?from=2026-09-01&to=2026-09-30';
  expect(bodyOf(await statementOf(member, september)).closingMinorUnits).toBe(2500);
  const asKnown = bodyOf(await statementOf(member, `${september}&knownAt=2026-10-01T00:00:00Z`));
  expect(asKnown).toMatchObject({ closingMinorUnits: 4000, knownAt: '2026-10-01T00:00:00.000Z' });
  expect(asKnown.lines).toHaveLength(1);
  const before = bodyOf(await statementOf(member, `${september}&knownAt=2026-09-15T14:59:59Z`));
  expect(before).toMatchObject({ closingMinorUnits: 0, closing: 'nothing-due', lines: [] });
});

test('a mistake and its mending both stand on the statement, each naming the other', async () => {
  at('2026-10-06T15:00:00Z');
  const member = await aMember();
  const wrong = bodyOf(await pay(member, { minorUnits: 1500 }), 201);
  const mended = bodyOf(
    await books.treasurer.post(`${books.path}/entries/${wrong.entryId}/reversal`, {
      reason: 'other household',
    }),
    201,
  );
  const { lines, closingMinorUnits } = bodyOf(await statementOf(member));
  expect(closingMinorUnits).toBe(0);
  expect(lines).toMatchObject([
    {
      entryNo: wrong.entryNo,
      reversedByEntryNo: mended.entryNo,
      reversesEntryNo: null,
      paymentMinorUnits: 1500,
    },
    {
      entryNo: mended.entryNo,
      reversesEntryNo: wrong.entryNo,
      note: 'other household',
      chargeMinorUnits: 1500,
    },
  ]);
});

test('deposits stand beside the balance, buy by buy', async () => {
  at('2026-09-15T15:00:00Z');
  const member = await aMember();
  const buy = await aBuy(app, books, { name: 'Autumn grain' });
  const { householdId } = member;
  const deposit = { householdId, minorUnits: 2300, till: 'bank' };
  bodyOf(await books.treasurer.post(`${buy.path}/deposits`, deposit), 201);
  const back = { householdId, minorUnits: 300, till: 'bank' };
  bodyOf(await books.treasurer.post(`${buy.path}/deposits/refunds`, back), 201);
  expect(bodyOf(await statementOf(member))).toMatchObject({
    closingMinorUnits: 0,
    lines: [],
    deposits: [{ buyId: buy.buyId, buy: 'Autumn grain', heldMinorUnits: 2000 }],
    depositsHeldMinorUnits: 2000,
  });
  const balance = bodyOf(await member.caller.get(`${books.path}/households/${householdId}/balance`));
  expect(balance).toMatchObject({ balance: 'nothing-due', deposits: [{ heldMinorUnits: 2000 }] });
});

test('a household reads its own statement; a neighbour may not, and a stranger finds nothing', async () => {
  const member = await aMember();
  expect((await statementOf(member)).status).toBe(200);
  for (const caller of [books.dell.caller, books.coordinator]) {
    const answer = await statementOf(member, '', caller);
    expect([answer.status, answer.body.code]).toEqual([403, 'not-your-household']);
  }
  const nowhere = await statementOf({ ...member, householdId: books.storehouseId });
  expect([nowhere.status, nowhere.body.code]).toEqual([404, 'thing-not-found']);
  expect((await statementOf(member, '', app.as())).body.code).toBe('not-signed-in');
  expect(await readsOf(member)).toEqual([]);
});

test('the treasurer and the reviewer read any statement, and the household sees that they did', async () => {
  const member = await aMember();
  expect((await statementOf(member, '', books.treasurer)).status).toBe(200);
  expect((await statementOf(member, '', books.reviewer)).status).toBe(200);
  await books.reviewer.get(`${books.path}/households/${member.householdId}/balance`);
  expect(await readsOf(member)).toEqual([
    'Birchall Person: statement',
    'Corran Person: statement',
    'Corran Person: balance',
  ]);
  expect(await readsOf(books.birchall)).not.toContain('Birchall Person: statement');
});

test('a helper reads the statement of the household it acts for', async () => {
  const member = await aMember();
  const forMember = { 'Sheafbook-For-Household': member.householdId };
  const path = `${books.path}/households/${member.householdId}/statement`;
  expect((await books.dell.caller.get(path, forMember)).body.code).toBe('helper-grant-missing');
  const grant = { personId: books.dell.personId, reason: 'no phone of their own', days: 7 };
  bodyOf(await member.caller.post(`${books.path}/households/${member.householdId}/helpers`, grant), 201);
  expect((await books.dell.caller.get(path, forMember)).status).toBe(200);
});

test.for([
  { query: '?from=2026-09-02&to=2026-09-01', field: 'from' },
  { query: '?from=2026-02-30', field: 'from' },
  { query: '?to=0000-01-01', field: 'to' },
  { query: '?knownAt=yesterday', field: 'knownAt' },
  { query: '?until=2026-09-01', field: 'until' },
])('a period like $query is refused by its field', async ({ query, field }) => {
  const answer = await statementOf(books.dell, query);
  expect([answer.status, answer.body.code]).toEqual([400, 'invalid-input']);
  expect(answer.body.fields.map((problem: { field: string }) => problem.field)).toEqual([field]);
});

test('a statement comes as a table that a spreadsheet adds up', async () => {
  at('2026-10-06T15:00:00Z');
  const member = await aMember();
  await anOpeningBalance(books, member, { balanceMinorUnits: 1000, onDay: '2026-10-01' });
  bodyOf(await pay(member, { minorUnits: 400, onDay: '2026-10-02', note: '=1+1' }), 201);
  const answer = await statementOf(member, '?from=2026-10-01&format=csv');
  expect(answer.headers.get('Content-Type')).toContain('text/csv');
  const rows = answer.body.trim().split('\r\n');
  expect(rows[0]).toBe('onDay,entryNo,what,note,buy,chargeMinorUnits,paymentMinorUnits,balanceMinorUnits');
  expect(rows.map((row: string) => row.split(',').at(-1)).slice(1)).toEqual(['0', '1000', '600', '600']);
  expect(rows[3]).toContain(",'=1+1,"); // nothing that a spreadsheet would run
});

test('the treasurer’s list ages what is unpaid, the oldest charge paid first', async () => {
  at('2026-12-31T15:00:00Z');
  const member = await aMember();
  // On 31 December these are 10, 45, 80 and 200 days old.
  const charges = { '2026-12-21': 1000, '2026-11-16': 2000, '2026-10-12': 4000, '2026-06-14': 8000 };
  for (const [onDay, balanceMinorUnits] of Object.entries(charges))
    await anOpeningBalance(books, member, { balanceMinorUnits, onDay });
  bodyOf(await pay(member, { minorUnits: 9000, onDay: '2026-12-30' }), 201);
  const { balances } = bodyOf(await books.treasurer.get(`${books.path}/balances?owing=true&limit=200`));
  const own = balances.find((row: { householdId: string }) => row.householdId === member.householdId);
  expect(own).toMatchObject({
    balanceMinorUnits: 6000,
    balance: 'you-owe',
    days0To30MinorUnits: 1000,
    days31To60MinorUnits: 2000,
    days61To90MinorUnits: 3000, // 8000 and 1000 of the 4000 are paid
    over90DaysMinorUnits: 0,
    creditMinorUnits: 0,
  });
  expect(balances.every((row: { balanceMinorUnits: number }) => row.balanceMinorUnits > 0)).toBe(true);
  expect(await readsOf(member)).toEqual(['Birchall Person: balance']);
});

test('the list pages by seat and comes as a table; no member sees it', async () => {
  const first = bodyOf(await books.reviewer.get(`${books.path}/balances?limit=2`));
  expect(first.balances.map((row: { seat: number }) => row.seat)).toEqual([1, 2]);
  const second = bodyOf(await books.reviewer.get(`${books.path}/balances?limit=2&after=${first.next}`));
  expect(second.balances.map((row: { seat: number }) => row.seat)).toEqual([3, 4]);
  const csv = await books.treasurer.get(`${books.path}/balances?format=csv`);
  expect(csv.body.split('\r\n')[0]).toContain('days31To60MinorUnits');
  for (const caller of [books.dell.caller, books.coordinator]) {
    const answer = await caller.get(`${books.path}/balances`);
    expect([answer.status, answer.body.code]).toEqual([403, 'duty-missing']);
  }
});

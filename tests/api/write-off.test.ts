import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold, grantDuty } from '../support/household.ts';
import { anOpeningBalance, balanceOf, refusalOf, type TestBooks, theBooks } from '../support/money-books.ts';

// The group's rules let one person write off 5.00 (job map 2.18, starter value).
let app: TestApp;
let books: TestBooks;
beforeAll(async () => {
  app = await openTestApp('2026-09-15T15:00:00Z');
  books = await theBooks(app);
});
afterAll(() => app.close());

let names = 0;
async function aDebtor(owes: number) {
  const household = await aHousehold(app, books, `Debtor ${++names}`);
  await anOpeningBalance(books, household, { balanceMinorUnits: owes });
  return household;
}
const ask = (householdId: string, minorUnits: number) =>
  books.treasurer.post(`${books.path}/write-offs`, { householdId, minorUnits, reason: 'moved away' });
const agree = (id: string, caller = books.coordinator) =>
  caller.post(`${books.path}/write-offs/${id}/agreement`);

test('a small debt is written off at once, and no more than is owed', async () => {
  const debtor = await aDebtor(400);
  expect(await refusalOf(app, () => ask(debtor.householdId, 401))).toMatchObject({
    status: 409,
    code: 'not-enough-left',
    fields: ['minorUnits'],
    isUnchanged: true,
  });
  const done = bodyOf(await ask(debtor.householdId, 400), 201);
  expect(done).toMatchObject({ state: 'posted', needsTwo: false, agreedBy: null });
  expect(await balanceOf(books, debtor)).toBe(0);
});

test('above the limit a second login must agree, and the debt stands until it does', async () => {
  const debtor = await aDebtor(2000);
  const asked = bodyOf(await ask(debtor.householdId, 2000), 201);
  expect(asked).toMatchObject({ state: 'asked', needsTwo: true, entryId: null });
  expect(await balanceOf(books, debtor)).toBe(2000);
  expect(await refusalOf(app, () => agree(asked.id, books.treasurer))).toMatchObject({
    code: 'duty-missing',
    isUnchanged: true,
  });
  expect(bodyOf(await agree(asked.id), 200)).toMatchObject({ state: 'posted' });
  expect(await balanceOf(books, debtor)).toBe(0);
  expect(await refusalOf(app, () => agree(asked.id))).toMatchObject({
    code: 'already-there',
    isUnchanged: true,
  });
});

test('one login with both duties is still one login', async () => {
  await grantDuty(books, books.birchall.personId, 'coordinator');
  const debtor = await aDebtor(2000);
  const asked = bodyOf(await ask(debtor.householdId, 2000), 201);
  expect(await refusalOf(app, () => agree(asked.id, books.treasurer))).toMatchObject({
    status: 409,
    code: 'second-login-needed',
    isUnchanged: true,
  });
});

test('a debt can’t be taken down bit by bit below the limit', async () => {
  const debtor = await aDebtor(2000);
  const { householdId } = debtor;
  expect(bodyOf(await ask(householdId, 300), 201)).toMatchObject({ state: 'posted' });
  expect(bodyOf(await ask(householdId, 200), 201)).toMatchObject({ state: 'posted' });
  expect(bodyOf(await ask(householdId, 1), 201)).toMatchObject({ state: 'asked', needsTwo: true });
  expect(await balanceOf(books, debtor)).toBe(1500);
});

test('a debt that was paid meanwhile can’t be written off any more', async () => {
  const debtor = await aDebtor(2000);
  const { householdId } = debtor;
  const asked = bodyOf(await ask(householdId, 2000), 201);
  bodyOf(
    await books.treasurer.post(`${books.path}/payments`, { householdId, minorUnits: 1, till: 'bank' }),
    201,
  );
  expect(await refusalOf(app, () => agree(asked.id))).toMatchObject({
    code: 'not-enough-left',
    isUnchanged: true,
  });
  const withdrawal = `${books.path}/write-offs/${asked.id}/withdrawal`;
  expect(bodyOf(await books.treasurer.post(withdrawal), 200)).toMatchObject({ state: 'withdrawn' });
  expect(await refusalOf(app, () => agree(asked.id))).toMatchObject({ code: 'already-there' });
});

test('agreements that race write a debt off once', async () => {
  const debtor = await aDebtor(2000);
  const asked = bodyOf(await ask(debtor.householdId, 900), 201);
  const answers = await Promise.all([agree(asked.id), agree(asked.id), agree(asked.id)]);
  expect(answers.map(({ status }) => status).toSorted()).toEqual([200, 409, 409]);
  expect(await balanceOf(books, debtor)).toBe(1100);
});

test('who reads of a write-off is shown to the household', async () => {
  const debtor = await aDebtor(3000);
  bodyOf(await ask(debtor.householdId, 3000), 201);
  const { writeOffs } = bodyOf(await books.coordinator.get(`${books.path}/write-offs`));
  const own = writeOffs.find((row: { householdId: string }) => row.householdId === debtor.householdId);
  expect(own).toMatchObject({ household: `Debtor ${names}`, minorUnits: 3000, state: 'asked' });
  const reads = await app.admin<{ what: string; purpose: string; name: string }[]>`
    select r.what, r.purpose, p.name from book.private_read r join book.person p using (storehouse_id, person_id)
    where r.household_id = ${debtor.householdId}`;
  expect([...reads]).toEqual([{ what: 'debt', purpose: 'write-off', name: 'Ada Ashdown' }]);
  const member = await books.dell.caller.get(`${books.path}/write-offs`);
  expect([member.status, member.body.code]).toEqual([403, 'duty-missing']);
});

test('a spreadsheet of write-offs has every one of them, each with its household and state', async () => {
  const debtor = await aDebtor(700);
  bodyOf(await ask(debtor.householdId, 100), 201);
  const { writeOffs } = bodyOf(await books.treasurer.get(`${books.path}/write-offs?limit=200`));
  const csv = bodyOf(await books.treasurer.get(`${books.path}/write-offs?format=csv`));
  const [head, ...rows] = csv.trim().split('\r\n');
  expect(head).toContain('reason,state');
  expect(rows).toHaveLength(writeOffs.length);
  expect(rows[0]).toContain(`Debtor ${names}`);
});

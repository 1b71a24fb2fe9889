import { bagLanded, poured, shareAwarded, takenToEat } from '@sheafbook/ledger';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, bodyOf } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
import { anOpeningBalance, refusalOf, type TestBooks, theBooks } from '../support/money-books.ts';
import { aContext, aLot, aVessel, balanceOfAccount, postDrafts } from '../support/posting.ts';

let app: TestApp;
let books: TestBooks;
beforeAll(async () => {
  app = await openTestApp('2026-09-15T15:00:00Z');
  books = await theBooks(app);
});
afterAll(() => app.close());

const entries = async (query: string, caller = books.treasurer) =>
  bodyOf(await caller.get(`${books.path}/entries${query}`));
const reverse = (entryId: string, wish: object = { reason: 'a slip of the pen' }, caller = books.treasurer) =>
  caller.post(`${books.path}/entries/${entryId}/reversal`, wish);
let names = 0;
const aMember = () => aHousehold(app, books, `Member ${++names}`);

/** Dell's grams, awarded in a bag, poured into a can. */
async function aPour() {
  const context = aContext(app, books, books.dell);
  const { lotId, bagId, outside, unassignedId } = await aLot(context);
  const canId = await aVessel(context, 'container');
  const { householdId: ownerId } = books.dell;
  const bag = { lotId, bagVesselId: bagId, unassignedOwnerId: unassignedId };
  await postDrafts(context, bagLanded({ ...bag, supplierVesselId: outside.supplier, amountGrams: 22_680 }));
  await postDrafts(context, shareAwarded({ ...bag, ownerId, amountGrams: 22_680 }));
  const into = { lotId, bagVesselId: bagId, containerVesselId: canId, ownerId, amountGrams: 2600 };
  const pour = await postDrafts(context, poured(into), { what: 'poured' });
  const eat = (amountGrams: number) =>
    postDrafts(
      context,
      takenToEat({ lotId, fromVesselId: canId, outsideVesselId: outside.eaten, ownerId, amountGrams }),
    );
  return { pour, eat, canId, lotId };
}

test('the book is read in the order it was written, page by page, with accounts in words', async () => {
  const member = await aMember();
  const opening = await anOpeningBalance(books, member, { balanceMinorUnits: 5000 });
  const { householdId } = member;
  const wish = { householdId, minorUnits: 2000, till: 'cash', note: 'at the door' };
  const paid = bodyOf(await books.treasurer.post(`${books.path}/payments`, wish), 201);
  const own = await entries(`?household=${householdId}`);
  expect(own.entries.map((entry: { entryNo: number }) => entry.entryNo)).toEqual([
    opening.entryNo,
    paid.entryNo,
  ]);
  expect(own.entries[1]).toMatchObject({
    what: 'payment-received',
    note: 'at the door',
    enteredBy: 'Birchall Person',
    movements: [
      {
        amount: 2000,
        unit: 'currency',
        from: { number: '1100', name: `Household balances of Member ${names}`, householdId },
        to: { number: '1010', name: 'Cash tin' },
      },
    ],
  });
  const first = await entries('?limit=1');
  const second = await entries(`?limit=1&after=${first.next}`);
  expect([first.entries[0].entryNo, second.entries[0].entryNo]).toEqual([1, 2]);
  const newest = await entries('?limit=2&newestFirst=true');
  expect(newest.entries.map((entry: { entryNo: number }) => entry.entryNo)).toEqual([
    paid.entryNo,
    opening.entryNo,
  ]);
  const one = bodyOf(await books.reviewer.get(`${books.path}/entries/${paid.entryId}`));
  expect(one).toEqual(own.entries[1]);
});

test('the entries of one buy are found, and come as a table', async () => {
  const buy = await aBuy(app, books, { name: 'Autumn grain' });
  const deposit = { householdId: books.dell.householdId, minorUnits: 2300, till: 'bank' };
  const paid = bodyOf(await books.treasurer.post(`${buy.path}/deposits`, deposit), 201);
  const own = await entries(`?buy=${buy.buyId}`);
  expect(own.entries).toMatchObject([{ entryNo: paid.entryNo, buy: 'Autumn grain' }]);
  const csv = await books.treasurer.get(`${books.path}/entries?buy=${buy.buyId}&format=csv`);
  const [header, row] = csv.body.trim().split('\r\n');
  expect(header).toContain('entryNo,line,onDay,recordedAt,what,debit,credit,amount,unit');
  expect(row).toContain('Bank,Buy deposits held of Dell for Autumn grain,2300,currency');
});

test('a household sees who read its entries', async () => {
  const member = await aMember();
  await anOpeningBalance(books, member, { balanceMinorUnits: 100 });
  await entries(`?household=${member.householdId}`, books.reviewer);
  const rows = await app.admin<{ what: string; name: string }[]>`
    select r.what, p.name from book.private_read r join book.person p using (storehouse_id, person_id)
    where r.household_id = ${member.householdId}`;
  expect(rows.map(({ what, name }) => [what, name])).toEqual([['entries', 'Corran Person']]);
});

test('members and the coordinator do not read the book', async () => {
  for (const caller of [books.dell.caller, books.coordinator]) {
    const answer = await caller.get(`${books.path}/entries`);
    expect([answer.status, answer.body.code]).toEqual([403, 'duty-missing']);
  }
  const nowhere = await books.treasurer.get(`${books.path}/entries/${books.storehouseId}`);
  expect([nowhere.status, nowhere.body.code]).toEqual([404, 'thing-not-found']);
});

test('an entry is undone by its opposite, once, with a reason', async () => {
  const { householdId } = await aMember();
  const wish = { householdId, minorUnits: 2000, till: 'bank' };
  const paid = bodyOf(await books.treasurer.post(`${books.path}/payments`, wish), 201);
  expect(await refusalOf(app, () => reverse(paid.entryId, {}))).toMatchObject({
    code: 'invalid-input',
    fields: ['reason'],
    isUnchanged: true,
  });
  for (const caller of [books.reviewer, books.coordinator, books.dell.caller])
    expect((await reverse(paid.entryId, { reason: 'no' }, caller)).body.code).toBe('duty-missing');
  const undone = bodyOf(await reverse(paid.entryId), 201);
  expect(undone).toMatchObject({
    what: 'reversal',
    reversesEntryNo: paid.entryNo,
    note: 'a slip of the pen',
  });
  expect(await balanceOfAccount(app, { kind: 'household', ownerId: householdId })).toBe(0);
  expect(await refusalOf(app, () => reverse(paid.entryId))).toMatchObject({
    status: 409,
    code: 'already-reversed',
    isUnchanged: true,
  });
});

test('a reversal may be undone itself, once, which puts the first entry back', async () => {
  const { householdId } = await aMember();
  const wish = { householdId, minorUnits: 2000, till: 'bank' };
  const paid = bodyOf(await books.treasurer.post(`${books.path}/payments`, wish), 201);
  const undone = bodyOf(await reverse(paid.entryId), 201);
  bodyOf(await reverse(undone.id, { reason: 'it was right after all' }), 201);
  expect(await balanceOfAccount(app, { kind: 'household', ownerId: householdId })).toBe(-2000);
  expect((await refusalOf(app, () => reverse(undone.id))).code).toBe('already-reversed');
});

test('reversals that race undo an entry once', async () => {
  const { householdId } = await aMember();
  const wish = { householdId, minorUnits: 2000, till: 'bank' };
  const paid = bodyOf(await books.treasurer.post(`${books.path}/payments`, wish), 201);
  const answers = await Promise.all([1, 2, 3, 4].map(() => reverse(paid.entryId)));
  expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409, 409, 409]);
  expect(new Set(answers.map(({ body }) => body.code))).toEqual(new Set([undefined, 'already-reversed']));
  expect(await balanceOfAccount(app, { kind: 'household', ownerId: householdId })).toBe(0);
});

test('money that was spent can’t be taken back, and what lacks it is named (ledger-notes 6.3)', async () => {
  const { householdId } = await aMember();
  const wish = { householdId, minorUnits: 9100, till: 'cash' };
  const paid = bodyOf(await books.treasurer.post(`${books.path}/payments`, wish), 201);
  const tin = await balanceOfAccount(app, { kind: 'cash_tin' });
  bodyOf(await books.treasurer.post(`${books.path}/cash-bankings`, { minorUnits: tin }), 201);
  const answer = await reverse(paid.entryId);
  expect([answer.status, answer.body.code]).toEqual([409, 'cannot-reverse']);
  expect(answer.body.blockers).toEqual([
    expect.objectContaining({ account: 'Cash tin', unit: 'currency', lacks: 9100, isClosed: false }),
  ]);
  expect((await refusalOf(app, () => reverse(paid.entryId))).isUnchanged).toBe(true);
});

test('a pour is undone while the can is full, and not once it is eaten from (ledger-notes 6.3)', async () => {
  const untouched = await aPour();
  bodyOf(await reverse(untouched.pour.entryId), 201);
  expect(await balanceOfAccount(app, { kind: 'mass', vesselId: untouched.canId })).toBe(0);
  const { pour, eat, canId } = await aPour();
  await eat(100);
  const answer = await reverse(pour.entryId);
  expect([answer.status, answer.body.code]).toEqual([409, 'cannot-reverse']);
  expect(answer.body.blockers).toMatchObject([{ account: 'container', unit: 'lot' }]);
  expect(await balanceOfAccount(app, { kind: 'mass', vesselId: canId })).toBe(2500);
});

test('what a household has at home stays its own: the treasurer sees that it moved, not what nor how much', async () => {
  const { pour, eat } = await aPour();
  const eaten = await eat(100);
  for (const { entryId } of [pour, eaten]) {
    const read = await books.treasurer.get(`${books.path}/entries/${entryId}`);
    expect(read.body).toMatchObject({ enteredBy: null, movements: [{ unit: 'lot', isHomeStock: true }] });
    expect(JSON.stringify(read.body)).not.toMatch(/Dell|wheat|2600|"amount"/i);
  }
  const { entries: found } = await entries(`?household=${books.dell.householdId}&limit=200`);
  const numbers = found.map((entry: { entryNo: number }) => entry.entryNo);
  expect(numbers).not.toContain(eaten.entryNo);
  const blocked = await reverse(pour.entryId);
  expect(JSON.stringify(blocked.body)).not.toMatch(/Dell|wheat/i);
  expect(blocked.body.blockers[0].lacks).toBeNull();
});

test('an entry that never was can’t be undone', async () => {
  expect(await refusalOf(app, () => reverse(books.storehouseId))).toMatchObject({
    status: 404,
    code: 'thing-not-found',
    isUnchanged: true,
  });
});

test('the book is searched by a name, a word of a note, a kind or a number, and by nothing that a household keeps at home', async () => {
  const member = await aMember();
  const opening = await anOpeningBalance(books, member, { balanceMinorUnits: 3100 });
  const { householdId } = member;
  const wish = { householdId, minorUnits: 900, till: 'cash', note: '100% in small coins' };
  const paid = bodyOf(await books.treasurer.post(`${books.path}/payments`, wish), 201);
  const numbers = async (query: string) =>
    (await entries(`?${query}`)).entries.map(({ entryNo }: { entryNo: number }) => entryNo);
  const name = encodeURIComponent(`member ${names}`);
  expect(await numbers(`words=${name}`)).toEqual([opening.entryNo, paid.entryNo]);
  expect(await numbers(`words=${name}&what=payment-received`)).toEqual([paid.entryNo]);
  expect(await numbers(`words=${encodeURIComponent('100% in small')}`)).toEqual([paid.entryNo]);
  expect(await numbers(`words=${encodeURIComponent('100_ in small')}`)).toEqual([]); // a mark, not any letter
  expect(await numbers(`words=${paid.entryNo}`)).toContain(paid.entryNo);
  const { eat } = await aPour();
  const eaten = await eat(100);
  const dellsEntries = await numbers('words=dell&limit=200');
  expect(dellsEntries).not.toContain(eaten.entryNo);
});

test('a spreadsheet of the book is whole, unless a page of it is asked for', async () => {
  const member = await aMember();
  for (let count = 0; count < 55; count += 1) {
    await anOpeningBalance(books, member, { balanceMinorUnits: 100 + count });
  }
  const linesOf = async (query: string) => {
    const { body } = await books.treasurer.get(
      `${books.path}/entries?format=csv&household=${member.householdId}${query}`,
    );
    const [, ...lines] = String(body).trim().split('\r\n');
    return new Set(lines.map((line) => line.split(',')[0])).size;
  };
  expect(await linesOf('')).toBe(55);
  expect(await linesOf('&limit=10')).toBe(10);
});

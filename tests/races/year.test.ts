import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Answer, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aSharedBuy, creditClaims, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

// The last evening of the year: two treasurers close, somebody still posts, and whoever signs or books presses twice.
let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let second: TestHousehold;
let reviewer: TestHousehold;
const at = (path: string) => `${storehouse.path}${path}`;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  reviewer = await aHousehold(app, storehouse, 'Quill', { duties: ['reviewer'] });
  second = await aHousehold(app, storehouse, 'Hale', { duties: ['treasurer'] });
  buy = await aSharedBuy(app, storehouse);
  await creditClaims(storehouse, buy);
  app.clock.now = new Date('2026-11-01T15:00:00Z');
  const never = `${buy.path}/uncollected/${buy.households.Dell.householdId}`;
  bodyOf(await storehouse.coordinator.post(never, {}), 201);
});
afterAll(() => app.close());

const statuses = (answers: readonly Answer[]) => answers.map(({ status }) => status).sort();
const expectSound = async () => {
  const { findings } = bodyOf(await reviewer.caller.get(at('/audit')));
  expect(findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
};
const closesOf = async () => bodyOf(await buy.treasurer.get(at('/periods'))).closes;

test('two treasurers close at once: one close is kept, with one digest', async () => {
  const answers = await Promise.all(
    [buy.treasurer, second.caller, buy.treasurer, second.caller].map((caller) =>
      caller.post(at('/periods'), { throughOn: '2026-09-30' }),
    ),
  );
  expect(statuses(answers)).toEqual([201, 409, 409, 409]);
  expect(await closesOf()).toHaveLength(1);
  await expectSound();
});

test('what is posted while its days are closed is in the digest or refused, never behind it', async () => {
  const { householdId } = buy.households.Corran;
  const pay = (minorUnits: number) =>
    second.caller.post(at('/payments'), { householdId, minorUnits, till: 'bank', onDay: '2026-10-15' });
  const [close, ...payments] = await Promise.all([
    buy.treasurer.post(at('/periods'), { throughOn: '2026-10-31' }),
    ...Array.from({ length: 12 }, (_, position) => pay(100 + position)),
  ]);
  expect(close.status).toBe(201);
  const refused = payments.filter(({ status }) => status !== 201);
  expect(refused.map(({ body }) => body.code)).toEqual(refused.map(() => 'period-closed'));
  const digest = bodyOf(await reviewer.caller.get(at('/periods/2026-10-31/digest')));
  expect(digest.holds).toBe(true);
  const [row] = await app.admin<{ count: number }[]>`select count(*)::int as count from book.entry
    where on_day > '2026-09-30' and on_day <= '2026-10-31'`;
  expect((await closesOf())[0].entryCount).toBe(row?.count);
  await expectSound();
});

test('results that come in while a year is closed are carried or keep it open', async () => {
  app.clock.now = new Date('2026-12-31T18:00:00Z');
  const day = '2026-12-31';
  const answers = await Promise.all([
    buy.treasurer.post(at('/periods'), { throughOn: day }),
    ...Array.from({ length: 6 }, () =>
      second.caller.post(at('/bank-charges'), { minorUnits: 50, onDay: day }),
    ),
  ]);
  const charged = answers.slice(1).filter(({ status }) => status === 201).length;
  // Closed before the first charge, or not at all: never with a charge that no fund has borne.
  expect([answers[0]?.status, charged > 0]).toEqual(charged > 0 ? [409, true] : [201, false]);
  const preview = bodyOf(await buy.treasurer.get(at(`/year-ends/preview?throughOn=${day}`)));
  expect(preview.toFundMinorUnits).toBe(0 - 50 * charged);
});

test('one person who signs under two duties at once signs once', async () => {
  const path = `${storehouse.path}/persons/${buy.households.Birchall.personId}/duties`;
  bodyOf(await storehouse.coordinator.post(path, { duty: 'coordinator' }), 201);
  const [{ closedThrough, digestSha256 }] = await closesOf();
  const answers = await Promise.all(
    ['treasurer', 'coordinator', 'treasurer', 'coordinator'].map((duty) =>
      buy.treasurer.post(at(`/periods/${closedThrough}/signatures`), { duty, digestSha256 }),
    ),
  );
  expect(statuses(answers)).toEqual([201, 409, 409, 409]);
  const [close] = await closesOf();
  expect(close.signatures).toHaveLength(1);
});

test('a count that many book is booked once, and two counts of one bag book its difference once', async () => {
  app.clock.now = new Date('2027-01-02T15:00:00Z'); // the day before may be closed by now
  const { stock } = bodyOf(await reviewer.caller.get(at('/common-stock')));
  const { accountId, bookGrams } = stock[0];
  const wish = { accountId, countedGrams: bookGrams - 500 };
  const one = bodyOf(await reviewer.caller.post(at('/stock-counts'), wish), 201);
  const other = bodyOf(await reviewer.caller.post(at('/stock-counts'), wish), 201);
  const answers = await Promise.all(
    [one, other, one, other].flatMap(({ id }) =>
      [buy.treasurer, second.caller].map((caller) =>
        caller.post(at(`/stock-counts/${id}/booking`), { reason: 'mice' }),
      ),
    ),
  );
  expect(statuses(answers).filter((status) => status === 201)).toHaveLength(1);
  const after = bodyOf(await reviewer.caller.get(at('/common-stock'))).stock;
  expect(after.find((row: { accountId: string }) => row.accountId === accountId).bookGrams).toBe(
    bookGrams - 500,
  );
  await expectSound();
});

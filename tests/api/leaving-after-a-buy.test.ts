import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aLandedBuy, type TestLandedBuy } from '../support/landed-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

/** The job map's whole buy (its section 4.3), after which Dell moves away. One story, told in order. */
let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestLandedBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aLandedBuy(app, storehouse, { name: 'Autumn grain' });
  const rules = [
    [buy.wheat, 'equal-awards'],
    [buy.oats, 'proportional'],
    [buy.beans, 'proportional'],
  ] as const;
  for (const [line, rule] of rules)
    bodyOf(await storehouse.coordinator.post(`${buy.path}/lines/${line}/splits`, { rule }), 201);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
});
afterAll(() => app.close());

/** Dell's awards of wheat, oats and beans together: 52 lb (job map 4.3). */
const DELL_GRAMS = 23_587;

const dell = () => buy.households.Dell;
const path = (rest: string) => `${storehouse.path}/households/${dell().householdId}${rest}`;
const leave = () => dell().caller.post(path('/leaving'), { version: 1 });

test('while the buy is open, the list says exactly what is still to be done', async () => {
  const refused = await leave();
  expect(refused.body.code).toBe('household-not-settled');
  const [balance, openBuy, ...waiting] = refused.body.unsettled;
  // Job map 4.3: Dell is charged 54.57, of which its deposit covers 23.00.
  expect(balance).toMatchObject({ what: 'balance', minorUnits: 3157 });
  expect(openBuy).toMatchObject({
    what: 'open-buy',
    buyName: 'Autumn grain',
    stage: 'shared-out',
    because: 'pledge',
  });
  const waitingGrams = waiting.reduce((sum: number, item: { grams: number }) => sum + item.grams, 0);
  expect(waiting.every((item: { what: string }) => item.what === 'uncollected')).toBe(true);
  expect(waitingGrams).toBe(DELL_GRAMS);
  // And names the food in the reader's language.
  const spanish = await dell().caller.post(path('/leaving'), { version: 1 }, { 'Accept-Language': 'es' });
  const said = spanish.body.unsettled.map(({ message }: { message: string }) => message);
  const wheat = said.find((message: string) => /^\d+ g de Trigo .* esperan ser recogidos\.$/.test(message));
  expect(wheat).toBeDefined();
  expect(spanish.body.detail).toContain(wheat);
  expect(said.join(' ')).not.toMatch(/wheat|beans|oats/i);
});

test('what was fetched counts as at home, and a bag that waits does not', async () => {
  const window = { startsAt: '2026-09-05T15:00:00Z', endsAt: '2026-09-05T17:00:00Z' };
  const pickUp = bodyOf(await dell().caller.post(`${buy.path}/pick-ups`, window), 201);
  const before = (await leave()).body.unsettled.filter(
    (item: { what: string }) => item.what === 'uncollected',
  );
  const [first] = before;
  const part = { signedBy: 'Dora Dell', pieces: [{ bagId: first.bagId, grams: first.grams - 500 }] };
  bodyOf(await dell().caller.post(`${storehouse.path}/pick-ups/${pickUp.id}/collection`, part), 201);
  const after = (await leave()).body.unsettled.filter(
    (item: { what: string }) => item.what === 'uncollected',
  );
  expect(after).toMatchObject([{ bagId: first.bagId, grams: 500 }, ...before.slice(1)]);
  const second = bodyOf(await dell().caller.post(`${buy.path}/pick-ups`, window), 201);
  const rest = { signedBy: 'Dora Dell' };
  bodyOf(await dell().caller.post(`${storehouse.path}/pick-ups/${second.id}/collection`, rest), 201);
  const { unsettled } = (await leave()).body;
  expect(unsettled.map((item: { what: string }) => item.what)).toEqual(['balance', 'open-buy']);
});

test('all that the book knows of the household is taken along, as one document', async () => {
  const document = bodyOf(await dell().caller.get(path('/take-along')));
  expect(document).toMatchObject({
    format: 'sheafbook-take-along',
    formatVersion: 1,
    storehouse: { name: 'Alder Row Storehouse', currency: 'USD' },
  });
  const { tables } = document;
  expect(tables.household).toMatchObject([{ name: 'Dell', leftOn: null }]);
  expect(
    tables.pledges.map((row: { food: string; wantedGrams: number }) => [row.food, row.wantedGrams]),
  ).toEqual([
    ['Hard red winter wheat', 13_608], // 30 lb
    ['Rolled oats', 4536], // 10 lb
    ['Black beans', 6804], // 15 lb
  ]);
  const sum = (rows: { minorUnits: number }[]) => rows.reduce((total, row) => total + row.minorUnits, 0);
  const onBalance = tables.statement.filter((row: { account: string }) => row.account === 'household');
  const onDeposit = tables.statement.filter((row: { account: string }) => row.account === 'buy_deposit');
  expect(sum(onDeposit)).toBe(0);
  const grams = (rows: { grams: number }[]) => rows.reduce((total, row) => total + row.grams, 0);
  expect(grams(tables.holdings)).toBe(DELL_GRAMS);
  expect(grams(tables.pickUps)).toBe(DELL_GRAMS);
  const gained = tables.massMovements.filter(
    (row: { wasOwn: boolean; isOwn: boolean }) => !row.wasOwn && row.isOwn,
  );
  expect(grams(gained)).toBe(DELL_GRAMS);
  expect([sum(onBalance), sum(tables.charges)]).toEqual([3157, 5457]); // job map 4.3
});

test('and table by table, as CSV with a header and one line a row', async () => {
  const csv = await dell().caller.get(path('/take-along?format=csv&table=pledges'));
  expect(csv.headers.get('Content-Disposition')).toContain('pledges.csv');
  const [header, ...lines] = csv.body.trim().split('\r\n');
  expect(header).toMatch(/^buy,foodCode,food,leastGrams,wantedGrams,mostGrams,/);
  expect(lines).toHaveLength(3);
  for (const query of ['format=csv', 'table=pledges', 'format=csv&table=neighbours'])
    expect((await dell().caller.get(path(`/take-along?${query}`))).body.code).toBe('invalid-input');
});

test('nobody else takes them along, whatever the duty', async () => {
  for (const caller of [storehouse.coordinator, buy.treasurer, buy.households.Corran.caller])
    expect((await caller.get(path('/take-along'))).body.code).toBe('not-your-household');
});

test('once the buy is closed and Dell has paid, Dell leaves with its grain', async () => {
  const { treasurer } = buy;
  for (const [claimId, minorUnits] of [
    [buy.claims?.torn, 360],
    [buy.claims?.short, 2140],
  ] as const)
    bodyOf(await treasurer.post(`${storehouse.path}/claims/${claimId}/credit`, { minorUnits }));
  bodyOf(await treasurer.post(`${buy.path}/closing`));
  const pay = { householdId: dell().householdId, till: 'bank', isKnownDuplicate: true };
  const { balanceMinorUnits } = bodyOf(await dell().caller.get(path('/balance')));
  bodyOf(await treasurer.post(`${storehouse.path}/payments`, { ...pay, minorUnits: balanceMinorUnits }));
  expect(bodyOf(await dell().caller.get(path('/leaving')))).toEqual({ isSettled: true, unsettled: [] });
  const left = bodyOf(await leave());
  const taken = left.takenAlong.reduce((sum: number, row: { grams: number }) => sum + row.grams, 0);
  expect(taken).toBe(DELL_GRAMS);
  const [signed] = await app.admin`select string_agg(distinct signed_by, ',') as by from book.pick_up
    where household_id = ${dell().householdId}`;
  expect(signed?.by).toBe(left.name);
  const audit = bodyOf(await treasurer.get(`${storehouse.path}/audit`));
  expect(audit.findings.filter((finding: { holds: boolean }) => !finding.holds)).toEqual([]);
});

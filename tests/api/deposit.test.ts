import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf, type TestBuy } from '../support/buy.ts';
import {
  aFixedBuy,
  changeRules,
  fixedRefusalOf,
  type GrainHouseholds,
  openGrain,
  payDeposits,
  type TestGrainBuy,
} from '../support/fixed-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let buy: TestGrainBuy;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
  buy = await aFixedBuy(app, storehouse, { households });
});
afterAll(() => app.close());

const ownOf = async (name: keyof GrainHouseholds, of: Pick<TestBuy, 'path'> = buy) =>
  bodyOf(await households[name].caller.get(`${of.path}/deposits/own`));

const waive = (body: unknown, caller = buy.treasurer) => caller.post(`${buy.path}/deposits/waivers`, body);

test('a household sees what it is asked for, by when, and what it has paid', async () => {
  await payDeposits(buy, { Dell: 2000 });
  expect(await ownOf('Dell')).toEqual({
    currency: 'USD',
    heldMinorUnits: 2000,
    estimateMinorUnits: 5715,
    askedMinorUnits: 2300,
    dueOn: '2026-09-24',
    isWaived: false,
    waiverReason: '',
  });
});

test('the deposit is a whole per cent of the estimate, up to whole units of the currency', async () => {
  // 2.6: ceil(36.00 × 0.35) = ceil(12.60) = 13.00.
  await changeRules(storehouse, { depositPercent: 35 });
  const small = await aBuy(app, storehouse);
  await aPledge(households.Corran.caller, small, { wanted: 50 });
  bodyOf(await storehouse.coordinator.post(`${small.path}/fixing`, {}), 201);
  expect(await ownOf('Corran', small)).toMatchObject({ estimateMinorUnits: 3600, askedMinorUnits: 1300 });
  await changeRules(storehouse, { depositPercent: 40 });
});

test('a waiver is the treasurer’s to give, with a reason, to a household that is asked', async () => {
  const { householdId } = households.Corran;
  const reason = 'the roof';
  expect((await waive({ householdId, reason }, storehouse.coordinator)).body.code).toBe('duty-missing');
  expect((await waive({ householdId, reason }, households.Corran.caller)).body.code).toBe('duty-missing');
  expect((await waive({ householdId, reason: '' })).body.fields[0].field).toBe('reason');
  expect((await waive({ reason })).body.fields[0].field).toBe('householdId');
  const unknown = await fixedRefusalOf(app, () => waive({ householdId: buy.buyId, reason }));
  expect(unknown).toMatchObject({ code: 'thing-not-found', isUnchanged: true });
});

test('why a deposit is waived stays between the treasurer and the household', async () => {
  const { householdId } = households.Corran;
  bodyOf(await waive({ householdId, reason: 'a hard winter' }), 201);
  expect(await ownOf('Corran')).toMatchObject({ isWaived: true, waiverReason: 'a hard winter' });
  const seen = bodyOf(await storehouse.coordinator.get(`${buy.path}/deposits`));
  const row = seen.deposits.find((deposit: { householdId: string }) => deposit.householdId === householdId);
  expect(row).toEqual({ householdId, household: 'Corran', isSettled: true });
  const reads = await app.admin<{ what: string }[]>`select what from book.private_read
    where household_id = ${householdId} and what = 'waiver'`;
  expect(reads).toHaveLength(1);
  const again = await fixedRefusalOf(app, () => waive({ householdId, reason: 'once more' }));
  expect(again).toMatchObject({ code: 'already-there', isUnchanged: true });
});

test('with one deposit waived and the others in, the order goes', async () => {
  await payDeposits(buy, { Ashdown: 7200, Birchall: 6300, Dell: 300 });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/order-consents`, {}), 201);
  const ordered = bodyOf(await buy.treasurer.post(`${buy.path}/order-consents`, {}), 201);
  expect(ordered.stage).toBe('ordered');
  const late = await fixedRefusalOf(app, () =>
    waive({ householdId: households.Dell.householdId, reason: 'late' }),
  );
  expect(late).toMatchObject({ code: 'buy-stage-wrong', isUnchanged: true });
});

test('a deposit that nobody asked for reads as none', async () => {
  const open = await aBuy(app, storehouse);
  expect(await ownOf('Dell', open)).toMatchObject({ heldMinorUnits: 0, askedMinorUnits: null, dueOn: null });
});

test('another household’s deposit is never at this address', async () => {
  const answer = await households.Corran.caller.get(`${buy.path}/deposits`);
  expect(answer.body.code).toBe('duty-missing');
});

test('a helper reads the deposit of the household it acts for, which finds the look in its record', async () => {
  const { householdId, caller } = households.Corran;
  const grant = { personId: households.Dell.personId, reason: 'ill', days: 7 };
  bodyOf(await caller.post(`${storehouse.path}/households/${householdId}/helpers`, grant), 201);
  const forCorran = { 'Sheafbook-For-Household': householdId };
  const seen = bodyOf(await households.Dell.caller.get(`${buy.path}/deposits/own`, forCorran));
  expect(seen).toMatchObject({ askedMinorUnits: 5300, isWaived: true });
  const reads = await app.admin`select from book.private_read where household_id = ${householdId}
    and person_id = ${households.Dell.personId} and what = 'deposits' and purpose = 'helping'`;
  expect(reads).toHaveLength(1);
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Caller, TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf, type TestBuy } from '../support/buy.ts';
import {
  aFixedBuy,
  aGrainBuy,
  anOrderedBuy,
  changeRules,
  fixedBooksOf,
  fixedRefusalOf,
  type GrainHouseholds,
  openGrain,
  payDeposits,
} from '../support/fixed-buy.ts';
import { aHousehold } from '../support/household.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

const reason = 'moving away';
const withdraw = (caller: Caller, buy: Pick<TestBuy, 'path'>, body: object = {}) =>
  caller.post(`${buy.path}/withdrawals`, { reason, ...body });

/** Units of each owner of a line, by the names of the households; the common stock stands as "common". */
async function unitsOf(buy: TestBuy, lineId: string) {
  const { allotments } = bodyOf(await storehouse.coordinator.get(`${buy.path}/allotments`));
  const nameOf = new Map(Object.entries(households).map(([name, { householdId }]) => [householdId, name]));
  return Object.fromEntries(
    allotments
      .filter((row: { lineId: string }) => row.lineId === lineId)
      .map((row: { ownerId: string; units: number }) => [nameOf.get(row.ownerId) ?? 'common', row.units]),
  );
}

/** The balance of an account, debit above zero. Households are taken by change, because earlier tests leave some. */
async function balanceOf(kind: string, by: { ownerId?: string; causeId?: string }): Promise<number> {
  const [row] = await app.admin<{ balance: string }[]>`select coalesce(sum(inflow - outflow), 0) as balance
    from book.account where kind = ${kind} and owner_id is not distinct from ${by.ownerId ?? null}::uuid
    and cause_id is not distinct from ${by.causeId ?? null}::uuid`;
  return Number(row?.balance);
}

/** Bags of 50 lb at 36.00, or 34.00 from two bags: a bag each for Birchall and Corran, Corran's deposit of 14.00 in. */
async function aBuyOfTwo(secondBagMinorUnits: number) {
  const buy = await aBuy(app, storehouse, {
    quote: {
      offers: [
        {
          breaks: [
            { fromBags: 1, bagPriceMinorUnits: 3600 },
            { fromBags: 2, bagPriceMinorUnits: secondBagMinorUnits },
          ],
        },
      ],
    },
  });
  await aPledge(households.Birchall.caller, buy, { wanted: 50 });
  await aPledge(households.Corran.caller, buy, { wanted: 50 });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/fixing`, {}), 201);
  const { householdId } = households.Corran;
  const deposit = { householdId, minorUnits: 1400, till: 'bank' };
  bodyOf(await households.Birchall.caller.post(`${buy.path}/deposits`, deposit), 201);
  return { buy, line: Object.values(buy.lines)[0] ?? '', householdId };
}

test('while a buy gathers, going out of it is free, and coming back is too', async () => {
  const buy = await aGrainBuy(app, storehouse, { households });
  const answer = bodyOf(await withdraw(households.Dell.caller, buy), 201);
  expect(answer).toMatchObject({
    stageThen: 'gathering',
    pledges: 3,
    withheldMinorUnits: 0,
    refundMinorUnits: 0,
  });
  expect(bodyOf(await households.Dell.caller.get(`${buy.path}/pledges`)).own).toEqual([]);
  await aPledge(households.Dell.caller, buy, { wanted: 30 });
  bodyOf(await withdraw(households.Dell.caller, buy), 201);
  const { withdrawals } = bodyOf(await households.Dell.caller.get(`${buy.path}/withdrawals`));
  expect(withdrawals).toHaveLength(2);
});

test('a deposit that was held while the buy was open again goes back whole', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  await payDeposits(buy, { Dell: 2300 });
  const toldHouseholdIds = [households.Dell.householdId];
  bodyOf(await storehouse.coordinator.post(`${buy.path}/reopening`, { reason, toldHouseholdIds }), 201);
  const before = await balanceOf('household', { ownerId: households.Dell.householdId });
  expect(bodyOf(await withdraw(households.Dell.caller, buy), 201)).toMatchObject({ refundMinorUnits: 2300 });
  expect(await balanceOf('household', { ownerId: households.Dell.householdId })).toBe(before - 2300);
});

test('before the order, a withdrawal that harms nobody gets its deposit back in full', async () => {
  // Bags of 36.00 whatever their number: Birchall goes on paying 36.00, and no bag is left unfilled.
  const { buy, line, householdId } = await aBuyOfTwo(3600);
  const before = await balanceOf('household', { ownerId: householdId });
  const answer = bodyOf(await withdraw(households.Corran.caller, buy), 201);
  expect(answer).toMatchObject({
    stageThen: 'fixed',
    harmMinorUnits: 0,
    withheldMinorUnits: 0,
    refundMinorUnits: 1400,
  });
  expect(await balanceOf('household', { ownerId: householdId })).toBe(before - 1400);
  expect(await balanceOf('buy_deposit', { ownerId: householdId, causeId: buy.buyId })).toBe(0);
  expect(await unitsOf(buy, line)).toEqual({ Birchall: 50 });
  const bags = await app.admin<
    { bags: number }[]
  >`select bags from book.fixed_bags where buy_id = ${buy.buyId}`;
  expect(bags).toEqual([{ bags: 1 }]);
});

test('before the order, what a withdrawal costs the others comes out of its deposit', async () => {
  // Two bags at 34.00 each; without Corran one at 36.00: Birchall's estimate rises by 2.00 (job map 4.7).
  const { buy, householdId } = await aBuyOfTwo(3400);
  const before = await balanceOf('household', { ownerId: householdId });
  const answer = bodyOf(await withdraw(households.Corran.caller, buy), 201);
  expect(answer).toMatchObject({ harmMinorUnits: 200, withheldMinorUnits: 200, refundMinorUnits: 1200 });
  expect(await balanceOf('household', { ownerId: householdId })).toBe(before - 1200);
  expect(await balanceOf('buy_deposit', { ownerId: householdId, causeId: buy.buyId })).toBe(0);
  expect(await balanceOf('buy_clearing', { causeId: buy.buyId })).toBe(-200);
  const birchalls = bodyOf(await households.Birchall.caller.get(`${buy.path}/deposits/own`));
  // 40 % of 34.00 was 14.00 and of 36.00 would be 15.00: nobody is asked for more because a neighbour left.
  expect(birchalls).toMatchObject({ estimateMinorUnits: 3600, askedMinorUnits: 1400 });
  const corrans = bodyOf(await households.Corran.caller.get(`${buy.path}/deposits/own`));
  expect(corrans).toMatchObject({ heldMinorUnits: 0, askedMinorUnits: null });
});

test('harm beyond the deposit is not asked for: the deposit goes, and nothing comes back', async () => {
  /*
   * The job map's buy without Dell, whose deposit is 23.00. Wheat: 6 bags, Corran takes 80 lb. Oats: 3 bags, Birchall
   * takes 50. Beans: 5 bags, 15 lb to common stock. Estimates by the rules of 4.3 (blend of a half):
   * Ashdown 86.40 + 22.50 + 42.80 + 15.30 + 14.67 = 181.67, was 178.00: 3.67 more;
   * Birchall 72.00 + 37.50 + 29.96 + 14.16 + 14.67 = 168.29, was 156.35: 11.94 more;
   * Corran 57.60 + 52.50 + 21.40 + 13.39 + 14.66 = 159.55, was 132.00: 27.55 more;
   * beans 6,804 g × (107.00 / 56,700 g + 88.00 / 260,820 g) = 12.84 + 2.30 = 15.14. In all 58.30.
   */
  const buy = await aFixedBuy(app, storehouse, { households });
  await payDeposits(buy, { Dell: 2300 });
  const answer = bodyOf(await withdraw(households.Dell.caller, buy), 201);
  expect(answer).toMatchObject({ harmMinorUnits: 5830, withheldMinorUnits: 2300, refundMinorUnits: 0 });
  expect(await unitsOf(buy, buy.wheat)).toEqual({ Ashdown: 120, Birchall: 100, Corran: 80 });
  expect(await unitsOf(buy, buy.oats)).toEqual({ Ashdown: 30, Birchall: 50, Corran: 70 });
  expect(await unitsOf(buy, buy.beans)).toEqual({ Ashdown: 50, Birchall: 35, Corran: 25, common: 15 });
  expect(await balanceOf('buy_clearing', { causeId: buy.buyId })).toBe(-2300);
});

test('an agreement to order that was given before a withdrawal was to another order, and goes', async () => {
  const { buy } = await aBuyOfTwo(3600);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/order-consents`, {}), 201);
  bodyOf(await withdraw(households.Corran.caller, buy), 201);
  const { consents } = bodyOf(await storehouse.coordinator.get(`${buy.path}/order-consents`));
  expect(consents).toEqual([]);
});

test('when the last household withdraws there is nothing to order', async () => {
  const { buy } = await aBuyOfTwo(3600);
  bodyOf(await withdraw(households.Corran.caller, buy), 201);
  bodyOf(await withdraw(households.Birchall.caller, buy), 201);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/order-consents`, {}), 201);
  const refusal = await fixedRefusalOf(app, () =>
    households.Birchall.caller.post(`${buy.path}/order-consents`, {}),
  );
  expect(refusal).toMatchObject({
    code: 'buy-guard-unmet',
    missing: ['nothing-allotted'],
    isUnchanged: true,
  });
});

test('after the order, Corran takes Dell’s wheat, Birchall its oats and common stock its beans', async () => {
  // The takers of job map 4.7, on the promises: 30 lb of wheat, 10 lb of oats, 15 lb of beans (12 lb once short).
  const buy = await anOrderedBuy(app, storehouse, { households });
  const deposits = await balanceOf('buy_deposit', {
    ownerId: households.Dell.householdId,
    causeId: buy.buyId,
  });
  const [entries] = await app.admin<{ count: string }[]>`select count(*) from book.entry`;
  const answer = bodyOf(await withdraw(households.Dell.caller, buy), 201);
  expect(answer).toMatchObject({
    stageThen: 'ordered',
    pledges: 3,
    withheldMinorUnits: 0,
    refundMinorUnits: 0,
  });
  expect(answer.lines).toHaveLength(3);
  for (const line of answer.lines)
    expect(line).toMatchObject({ leftUnits: 0, leftGrams: 0, takenGrams: line.grams });
  expect(JSON.stringify(answer)).not.toContain(households.Corran.householdId);
  expect(await unitsOf(buy, buy.wheat)).toEqual({ Ashdown: 120, Birchall: 100, Corran: 80, Dell: 0 });
  expect(await unitsOf(buy, buy.oats)).toEqual({ Ashdown: 30, Birchall: 50, Corran: 70, Dell: 0 });
  expect(await unitsOf(buy, buy.beans)).toEqual({
    Ashdown: 50,
    Birchall: 35,
    Corran: 25,
    common: 15,
    Dell: 0,
  });
  // The deposit waits for the charge: no entry yet.
  expect(await balanceOf('buy_deposit', { ownerId: households.Dell.householdId, causeId: buy.buyId })).toBe(
    deposits,
  );
  expect(await app.admin`select count(*) from book.entry`).toEqual([entries]);
});

test('the promises of a line add up to the same grams after a withdrawal as before', async () => {
  const buy = await anOrderedBuy(app, storehouse, { households });
  const sums = () =>
    app.admin`select buy_line_id, sum(grams) as grams, sum(units) as units from book.allotment
      where buy_id = ${buy.buyId} group by buy_line_id order by buy_line_id`;
  const before = await sums();
  bodyOf(await withdraw(households.Corran.caller, buy), 201);
  bodyOf(await withdraw(households.Dell.caller, buy), 201);
  expect(await sums()).toEqual(before);
});

test('the coordinator sees who took over how much; whoever declined is passed over, and what nobody takes stays', async () => {
  const buy = await anOrderedBuy(app, storehouse, { households });
  const { Dell, Corran } = households;
  const body = { householdId: Dell.householdId, declinedHouseholdIds: [Corran.householdId] };
  const answer = bodyOf(await withdraw(storehouse.coordinator, buy, body), 201);
  const wheat = answer.lines.find((line: { lineId: string }) => line.lineId === buy.wheat);
  // Corran said no, the others are at their most; common stock takes 25 lb, 5 lb stay with Dell: 13,608 g over 25 and 5.
  expect(wheat).toMatchObject({
    placements: [{ takenAs: 'common-stock', units: 25, grams: 11_340 }],
    leftUnits: 5,
    leftGrams: 2268,
  });
  expect(answer).not.toHaveProperty('refundMinorUnits'); // a deposit is the treasurer's and the household's business
  expect(await unitsOf(buy, buy.wheat)).toMatchObject({ Corran: 50, Dell: 5, common: 25 });
});

test('a household that got nothing of a food waits for it, and takes over no less than its least', async () => {
  await changeRules(storehouse, { commonCapGrams: 0 });
  const fell = await aHousehold(app, storehouse, 'Fell');
  const buy = await aBuy(app, storehouse);
  await aPledge(households.Birchall.caller, buy, { wanted: 30 });
  await aPledge(households.Corran.caller, buy, { wanted: 20 });
  await aPledge(households.Dell.caller, buy, { least: 25, wanted: 25, most: 25 });
  await aPledge(fell.caller, buy, { wanted: 15 });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/fixing`, {}), 201);
  const line = Object.values(buy.lines)[0] ?? '';
  expect(await unitsOf(buy, line)).toMatchObject({ Birchall: 30, Corran: 20, Dell: 0 });
  for (const { householdId } of [households.Birchall, households.Corran])
    bodyOf(
      await households.Birchall.caller.post(`${buy.path}/deposits/waivers`, { householdId, reason }),
      201,
    );
  bodyOf(await storehouse.coordinator.post(`${buy.path}/order-consents`, {}), 201);
  bodyOf(await households.Birchall.caller.post(`${buy.path}/order-consents`, {}), 201);
  bodyOf(await withdraw(households.Corran.caller, buy), 201);
  // 20 lb are below Dell's least of 25, so Fell is next and takes its 15; 5 lb stay with Corran.
  expect(await unitsOf(buy, line)).toMatchObject({ Dell: 0, common: 15, Corran: 5 });
  const rows = bodyOf(await fell.caller.get(`${buy.path}/allotments`)).allotments;
  expect(rows).toMatchObject([{ units: 15, isDropped: false }]);
});

test('one goes out of an ordered buy once', async () => {
  const buy = await anOrderedBuy(app, storehouse, { households });
  bodyOf(await withdraw(households.Dell.caller, buy), 201);
  const again = await fixedRefusalOf(app, () => withdraw(households.Dell.caller, buy));
  expect(again).toMatchObject({ status: 409, code: 'already-there', isUnchanged: true });
});

test('two withdrawals at the same moment never promise a gram twice', async () => {
  const buy = await anOrderedBuy(app, storehouse, { households });
  const answers = await Promise.all([
    withdraw(households.Dell.caller, buy),
    withdraw(households.Dell.caller, buy),
    withdraw(households.Corran.caller, buy),
  ]);
  expect(answers.map((answer) => answer.status).toSorted()).toEqual([201, 201, 409]);
  const sums = await app.admin<{ units: string }[]>`select sum(units) as units from book.allotment
    where buy_id = ${buy.buyId} group by buy_line_id order by 1`;
  expect(sums.map((row) => Number(row.units))).toEqual([125, 150, 300]);
});

test('a retry of a withdrawal gets the first answer back and moves no money twice', async () => {
  const { buy } = await aBuyOfTwo(3400);
  const key = { 'Idempotency-Key': 'out-of-it' };
  const first = await households.Corran.caller.post(`${buy.path}/withdrawals`, { reason }, key);
  const books = await fixedBooksOf(app);
  const again = await households.Corran.caller.post(`${buy.path}/withdrawals`, { reason }, key);
  expect([again.status, again.body]).toEqual([first.status, first.body]);
  expect(await fixedBooksOf(app)).toBe(books);
});

test('a helper withdraws the household it acts for, and the book says for whom', async () => {
  const { buy, householdId } = await aBuyOfTwo(3600);
  const grant = { personId: households.Dell.personId, reason: 'ill', days: 7 };
  const helpers = `${storehouse.path}/households/${householdId}/helpers`;
  bodyOf(await households.Corran.caller.post(helpers, grant), 201);
  const forCorran = { 'Sheafbook-For-Household': householdId };
  const answer = await households.Dell.caller.post(`${buy.path}/withdrawals`, { reason }, forCorran);
  expect(bodyOf(answer, 201)).toMatchObject({ householdId, refundMinorUnits: 1400 });
  const entries = await app.admin<{ entered_for: string }[]>`select entered_for from book.entry
    where buy_id = ${buy.buyId} and what = 'deposit-settled'`;
  expect(entries).toEqual([{ entered_for: householdId }]);
});

test('a member withdraws nobody but itself and says why; a coordinator may withdraw another', async () => {
  const { buy, householdId } = await aBuyOfTwo(3600);
  const refusals = [
    { caller: households.Dell.caller, body: { householdId }, code: 'not-your-household' },
    { caller: households.Dell.caller, body: {}, code: 'thing-not-found' },
    { caller: storehouse.coordinator, body: { householdId: buy.buyId }, code: 'thing-not-found' },
    { caller: households.Corran.caller, body: { reason: ' ' }, code: 'invalid-input' },
    { caller: households.Corran.caller, body: { declinedHouseholdIds: [householdId] }, code: 'duty-missing' },
    { caller: households.Corran.caller, body: { grams: 5 }, code: 'invalid-input' },
  ];
  for (const { caller, body, code } of refusals) {
    const refusal = await fixedRefusalOf(app, () => withdraw(caller, buy, body));
    expect(refusal).toMatchObject({ code, isUnchanged: true });
  }
  const others = bodyOf(await households.Dell.caller.get(`${buy.path}/withdrawals`));
  bodyOf(await withdraw(storehouse.coordinator, buy, { householdId }), 201);
  expect(bodyOf(await households.Dell.caller.get(`${buy.path}/withdrawals`))).toEqual(others);
  const { withdrawals } = bodyOf(await households.Birchall.caller.get(`${buy.path}/withdrawals`));
  expect(withdrawals).toMatchObject([{ householdId, refundMinorUnits: 1400 }]); // the treasurer sees amounts
});

test('a buy that is only planned has nothing to go out of', async () => {
  const buy = await aBuy(app, storehouse, { isOpen: false });
  const refusal = await fixedRefusalOf(app, () => withdraw(households.Dell.caller, buy));
  expect(refusal).toMatchObject({ code: 'buy-stage-wrong', isUnchanged: true });
});

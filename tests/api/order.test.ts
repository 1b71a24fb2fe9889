import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Caller, TestApp } from '../support/app.ts';
import { aBuy, aPledge, aQuote, bodyOf, type TestBuy } from '../support/buy.ts';
import {
  aFixedBuy,
  anOrderedBuy,
  fixedRefusalOf,
  type GrainHouseholds,
  openGrain,
  payDeposits,
} from '../support/fixed-buy.ts';
import { grantDuty } from '../support/household.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

const agree = (caller: Caller, buy: Pick<TestBuy, 'path'>, body: unknown = {}) =>
  caller.post(`${buy.path}/order-consents`, body);

const ordersOf = async (buy: Pick<TestBuy, 'path'>) =>
  bodyOf(await households.Dell.caller.get(`${buy.path}/orders`)).orders;

/** One bag for Dell at 36.00 without a deposit, so that an order hangs on its quote alone. */
async function aSmallFixedBuy() {
  const buy = await aBuy(app, storehouse);
  await aPledge(households.Dell.caller, buy, { wanted: 50 });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/fixing`, {}), 201);
  const waiver = { householdId: households.Dell.householdId, reason: 'one bag only' };
  bodyOf(await households.Birchall.caller.post(`${buy.path}/deposits/waivers`, waiver), 201);
  return buy;
}

/** What the supplier asks now for the only bag of a small buy. */
async function confirm(buy: TestBuy, change: { bagPriceMinorUnits?: number; validUntil?: string }) {
  const { quotes } = bodyOf(await storehouse.coordinator.get(`${buy.path}/quotes`));
  const [{ version, offers }] = quotes;
  const { bagPriceMinorUnits = 3600, validUntil = '2026-10-31' } = change;
  return storehouse.coordinator.put(`${buy.path}/quotes/${buy.quoteId}/confirmed-terms`, {
    version,
    validUntil,
    freightSteps: [],
    freightFreeFromMinorUnits: null,
    offers: [{ bagOfferId: offers[0].id, breaks: [{ fromBags: 1, bagPriceMinorUnits }] }],
  });
}

test('coordinator and treasurer agree, and the second of them orders', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  await payDeposits(buy);
  const first = bodyOf(await agree(buy.treasurer, buy), 201);
  expect(first).toMatchObject({ stage: 'fixed', orderNos: [] });
  expect(await ordersOf(buy)).toEqual([]);
  const second = bodyOf(await agree(storehouse.coordinator, buy, { note: 'Tail-lift, please.' }), 201);
  expect(second).toMatchObject({
    stage: 'ordered',
    consents: [{ duty: 'coordinator' }, { duty: 'treasurer' }],
  });
  expect(second.orderNos).toHaveLength(1);
});

test('the order has the fields of its paper', async () => {
  // Job map 13, paper 3, with the figures of 4.3: goods 435.50, freight 88.00.
  const buy = await anOrderedBuy(app, storehouse, { households });
  const [order] = await ordersOf(buy);
  expect(order).toMatchObject({
    orderedOn: '2026-09-01',
    supplier: { id: buy.supplierId },
    quote: { id: buy.quoteId, validUntil: '2026-10-31' },
    contacts: [{ duty: 'coordinator', name: 'Ada Ashdown', phone: '' }],
    grams: 6 * 22_680 + 3 * 22_680 + 5 * 11_340,
    freightTerms: { steps: [{ fromGrams: 0, minorUnits: 8800 }], freeFromGoodsMinorUnits: null },
    goodsMinorUnits: 43_550,
    freightMinorUnits: 8800,
    totalMinorUnits: 52_350,
    cancelledAt: null,
  });
  const lines = order.lines.map((line: Record<string, unknown>) => [
    (line.food as { foodCode: string }).foodCode,
    line.bagLabel,
    line.bags,
    line.bagPriceMinorUnits,
    line.goodsMinorUnits,
  ]);
  expect(lines).toEqual([
    ['wheat-hard-red-winter', '50 lb', 6, 3600, 21_600],
    ['oats-rolled', '50 lb', 3, 3750, 11_250],
    ['beans-black', '25 lb', 5, 2140, 10_700],
  ]);
});

test('two suppliers get an order each, with numbers of their own', async () => {
  const buy = await aBuy(app, storehouse, {
    foods: ['wheat-hard-red-winter', 'oats-rolled'],
    quote: { offers: [{ foodCode: 'wheat-hard-red-winter' }] },
  });
  await aQuote(storehouse, buy, { offers: [{ foodCode: 'oats-rolled', bagPriceMinorUnits: 3750 }] });
  for (const foodCode of Object.keys(buy.lines))
    await aPledge(households.Dell.caller, buy, { foodCode, wanted: 50 });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/fixing`, {}), 201);
  const waiver = { householdId: households.Dell.householdId, reason: 'small' };
  bodyOf(await households.Birchall.caller.post(`${buy.path}/deposits/waivers`, waiver), 201);
  bodyOf(await agree(storehouse.coordinator, buy), 201);
  const { orderNos } = bodyOf(await agree(households.Birchall.caller, buy), 201);
  expect(orderNos).toEqual([orderNos[0], orderNos[0] + 1]);
  const totals = (await ordersOf(buy)).map((order: { totalMinorUnits: number }) => order.totalMinorUnits);
  expect(totals.toSorted()).toEqual([3600, 3750]);
});

test('a person with both duties agrees for one of them and can’t give the other agreement', async () => {
  await grantDuty(storehouse, households.Birchall.personId, 'coordinator');
  const buy = await aSmallFixedBuy();
  const { caller } = households.Birchall;
  const unsaid = await agree(caller, buy);
  expect([unsaid.body.code, unsaid.body.fields[0].field]).toEqual(['invalid-input', 'duty']);
  bodyOf(await agree(caller, buy, { duty: 'treasurer' }), 201);
  const both = await fixedRefusalOf(app, () => agree(caller, buy, { duty: 'coordinator' }));
  expect(both).toMatchObject({ status: 409, code: 'second-login-needed', isUnchanged: true });
  bodyOf(await agree(storehouse.coordinator, buy), 201);
  const path = `${storehouse.path}/persons/${households.Birchall.personId}/duties/coordinator`;
  expect((await storehouse.coordinator.delete(path)).status).toBeLessThan(300);
});

test('agreeing is for the two duties, each for its own, once, and while the buy is fixed', async () => {
  const buy = await aSmallFixedBuy();
  expect((await agree(households.Dell.caller, buy)).body.code).toBe('duty-missing');
  expect((await agree(storehouse.coordinator, buy, { duty: 'treasurer' })).body.code).toBe('duty-missing');
  expect((await agree(storehouse.coordinator, buy, { duty: 'packing_lead' })).body.fields[0].field).toBe(
    'duty',
  );
  bodyOf(await agree(storehouse.coordinator, buy), 201);
  const twice = await fixedRefusalOf(app, () => agree(storehouse.coordinator, buy));
  expect(twice).toMatchObject({ code: 'already-there', isUnchanged: true });
  bodyOf(await agree(households.Birchall.caller, buy), 201);
  const late = await fixedRefusalOf(app, () => agree(storehouse.coordinator, buy));
  expect(late).toMatchObject({ code: 'buy-stage-wrong', isUnchanged: true });
});

test('an unpaid deposit stops the order: the coordinator learns whose, the treasurer also how much', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  await payDeposits(buy, { Ashdown: 7200, Birchall: 6300, Corran: 5200 });
  bodyOf(await agree(storehouse.coordinator, buy), 201);
  const refusal = await fixedRefusalOf(app, () => agree(buy.treasurer, buy));
  expect(refusal).toMatchObject({ code: 'buy-guard-unmet', missing: ['deposit-unpaid'], isUnchanged: true });
  const [asTreasurer] = (await agree(buy.treasurer, buy)).body.missing;
  const unpaid = [households.Corran.householdId, households.Dell.householdId];
  expect(asTreasurer).toMatchObject({ ids: unpaid, count: 2, minorUnits: 100 + 2300 });
});

test('the coordinator who agrees last learns whose deposit is out and not how much', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  bodyOf(await agree(buy.treasurer, buy), 201);
  const [missing] = (await agree(storehouse.coordinator, buy)).body.missing;
  expect(missing.count).toBe(4);
  expect(missing).not.toHaveProperty('minorUnits');
});

test('a quote that lapsed since stops the order, and one that its supplier prolongs lets it go', async () => {
  const buy = await aSmallFixedBuy();
  bodyOf(await confirm(buy, { validUntil: '2026-09-02' }));
  bodyOf(await agree(storehouse.coordinator, buy), 201);
  const { now } = app.clock;
  app.clock.now = new Date('2026-09-03T15:00:00Z');
  const lapsed = await fixedRefusalOf(app, () => agree(households.Birchall.caller, buy));
  expect(lapsed).toMatchObject({ missing: ['quote-lapsed'], isUnchanged: true });
  bodyOf(await confirm(buy, { validUntil: '2026-09-10' }));
  const { consents } = bodyOf(await storehouse.coordinator.get(`${buy.path}/order-consents`));
  expect(consents).toEqual([]); // what was agreed to were other terms
  bodyOf(await agree(storehouse.coordinator, buy), 201);
  expect(bodyOf(await agree(households.Birchall.caller, buy), 201).stage).toBe('ordered');
  app.clock.now = now;
});

test.for([
  { bagPriceMinorUnits: 3672, because: 'exactly 2 % more', goes: true },
  { bagPriceMinorUnits: 3673, because: 'a cent above 2 %', goes: false },
  { bagPriceMinorUnits: 3000, because: 'a lower price', goes: true },
])('re-priced at $because, the order goes: $goes', async ({ bagPriceMinorUnits, goes }) => {
  // Estimate 36.00; job map 2.7 lets the price rise by 2 %, which is 0.72.
  const buy = await aSmallFixedBuy();
  const confirmed = bodyOf(await confirm(buy, { bagPriceMinorUnits }));
  expect(confirmed).toMatchObject({
    estimatedMinorUnits: 3600,
    repricedMinorUnits: bagPriceMinorUnits,
    needsFixingAgain: !goes,
  });
  bodyOf(await agree(storehouse.coordinator, buy), 201);
  if (goes) {
    bodyOf(await agree(households.Birchall.caller, buy), 201);
    expect(await ordersOf(buy)).toMatchObject([{ goodsMinorUnits: bagPriceMinorUnits }]);
  } else {
    const refusal = await fixedRefusalOf(app, () => agree(households.Birchall.caller, buy));
    expect(refusal).toMatchObject({ missing: ['price-risen'], isUnchanged: true });
  }
});

test('what a supplier asks is taken down by the coordinator, for the bags that were quoted, at the present version', async () => {
  const buy = await aSmallFixedBuy();
  const path = `${buy.path}/quotes/${buy.quoteId}/confirmed-terms`;
  const body = { version: 1, validUntil: '2026-10-31', freightSteps: [], freightFreeFromMinorUnits: null };
  expect((await households.Birchall.caller.put(path, body)).body.code).toBe('duty-missing');
  const stray = [{ bagOfferId: buy.quoteId, breaks: [{ fromBags: 1, bagPriceMinorUnits: 1 }] }];
  const refusals = [
    { change: { offers: stray }, code: 'thing-not-found' },
    { change: { version: 99 }, code: 'stale-version' },
    { change: { validUntil: '2026-08-31' }, code: 'quote-not-valid' },
    { change: { validUntil: '2026-02-30' }, code: 'invalid-input' },
    { change: { freightSteps: [{ fromGrams: 5, minorUnits: 1 }] }, code: 'invalid-input' },
  ];
  for (const { change, code } of refusals) {
    const refusal = await fixedRefusalOf(app, () => storehouse.coordinator.put(path, { ...body, ...change }));
    expect(refusal).toMatchObject({ code, isUnchanged: true });
  }
  const stale = await storehouse.coordinator.put(path, { ...body, version: 99 });
  expect(stale.body.newer).toMatchObject({
    version: 1,
    validUntil: '2026-10-31',
    offers: [{ breaks: [{}] }],
  });
  const open = await aBuy(app, storehouse);
  const early = `${open.path}/quotes/${open.quoteId}/confirmed-terms`;
  expect((await storehouse.coordinator.put(early, body)).body.code).toBe('buy-stage-wrong');
});

test('two agreements at the same moment order once', async () => {
  const buy = await aSmallFixedBuy();
  const answers = await Promise.all([
    agree(storehouse.coordinator, buy),
    agree(households.Birchall.caller, buy),
    agree(storehouse.coordinator, buy),
    agree(households.Birchall.caller, buy),
  ]);
  expect(answers.map((answer) => answer.status).toSorted()).toEqual([201, 201, 409, 409]);
  expect(await ordersOf(buy)).toHaveLength(1);
  const [buyNow] = await app.admin<
    { stage: string }[]
  >`select stage from book.buy where buy_id = ${buy.buyId}`;
  expect(buyNow?.stage).toBe('ordered');
});

test('a retry of the last agreement gets the first answer and orders nothing more', async () => {
  const buy = await aSmallFixedBuy();
  bodyOf(await agree(storehouse.coordinator, buy), 201);
  const key = { 'Idempotency-Key': 'order-it' };
  const path = `${buy.path}/order-consents`;
  const first = await households.Birchall.caller.post(path, {}, key);
  const again = await households.Birchall.caller.post(path, {}, key);
  expect([again.status, again.body]).toEqual([first.status, first.body]);
  const other = await households.Birchall.caller.post(path, { note: 'other' }, key);
  expect(other.body.code).toBe('idempotency-key-reused');
  expect(await ordersOf(buy)).toHaveLength(1);
});

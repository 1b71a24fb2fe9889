import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, aPledge, aQuote, bodyOf, type TestBuy } from '../support/buy.ts';
import { aGrainBuy, grainHouseholds, payDeposits, type TestGrainBuy } from '../support/fixed-buy.ts';
import { aHousehold } from '../support/household.ts';
import {
  aDelivery,
  aPackingLead,
  bagBodies,
  claimGrain,
  countDelivery,
  GRAIN_BAGS,
  type GrainFood,
  grainInvoice,
  offersOf,
} from '../support/landed-buy.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { creditClaims, splitGrain } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

/*
 * Job map 3.1, question 10: which stage is the buy in, and what blocks the next? The guards and who may move are its
 * section 2, who may see what its section 14.
 */
let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestGrainBuy;
let callers: Record<'coordinator' | 'treasurer' | 'packingLead' | 'reviewer' | 'Corran' | 'Dell', Caller>;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  const households = await grainHouseholds(app, storehouse);
  const { Birchall, Corran, Dell } = households;
  callers = {
    coordinator: storehouse.coordinator,
    treasurer: Birchall.caller,
    packingLead: (await aPackingLead(app, storehouse, Corran)).caller,
    reviewer: (await aHousehold(app, storehouse, 'Eastman', { duties: ['reviewer'] })).caller,
    Corran: Corran.caller,
    Dell: Dell.caller,
  };
  buy = await aGrainBuy(app, storehouse, { households });
});
afterAll(() => app.close());

type Shown = { code: string; words: string; page: string | null; isOwn: boolean; ids?: string[] };
const nextOf = async (caller: Caller, { path }: Pick<TestBuy, 'path'> = buy) =>
  bodyOf(await caller.get(`${path}/next`));
const codesOf = ({ missing }: { missing: readonly { code: string }[] }) => missing.map(({ code }) => code);

/** Sends the command that the next step names, just as it names it. */
async function follow(caller: Caller, of: Pick<TestBuy, 'path'> = buy) {
  const { action } = await nextOf(caller, of);
  return caller.post(action.path, action.body ?? undefined);
}

/** Whom the next step lets move the buy on; nobody else's command gets through, and every page named can be read. */
async function whoMoves(of: Pick<TestBuy, 'path'> = buy): Promise<string[]> {
  const movers: string[] = [];
  for (const [name, caller] of Object.entries(callers)) {
    const { mayMove, pages, missing } = await nextOf(caller, of);
    for (const { path } of [...pages, ...missing.map(({ page }: Shown) => ({ path: page }))])
      expect([name, path, (await caller.get(path)).status]).toEqual([name, path, 200]);
    if (mayMove) movers.push(name);
    else expect([name, (await follow(caller, of)).body.code]).toEqual([name, 'duty-missing']);
  }
  return movers;
}

/** What the next step says is missing, after the command was refused with the very same list. */
async function missingAsRefused(caller: Caller, of: Pick<TestBuy, 'path'> = buy) {
  const { missing } = await nextOf(caller, of);
  const refused = await follow(caller, of);
  expect([refused.status, refused.body.code]).toEqual([409, 'buy-guard-unmet']);
  expect(missing).toMatchObject(refused.body.missing);
  expect(missing.every(({ words, page }: Shown) => words !== '' && page !== null)).toBe(true);
  return missing;
}

test('a planned buy waits for a quote, and opens by the command that its next step names', async () => {
  const planned = await aBuy(app, storehouse, { quote: null, orderOn: '2026-09-30' });
  expect(await missingAsRefused(callers.coordinator, planned)).toMatchObject([
    { code: 'no-quote', page: `${planned.path}/quotes` },
  ]);
  expect(await nextOf(callers.Dell, planned)).toMatchObject({
    stage: 'planning',
    nextStage: 'gathering',
    who: ['coordinator'],
    mayMove: false,
    missing: [{ code: 'no-quote' }],
    dueOn: '2026-09-20',
    dueAt: '2026-09-20T23:00:00.000Z',
  });
  await aQuote(storehouse, planned);
  expect(await whoMoves(planned)).toEqual(['coordinator']);
  expect(await nextOf(callers.coordinator, planned)).toMatchObject({
    missing: [],
    mayMove: true,
    action: { method: 'POST', path: `${planned.path}/stage`, body: { to: 'gathering' } },
  });
  bodyOf(await follow(callers.coordinator, planned));
  expect(await nextOf(callers.Dell, planned)).toMatchObject({ stage: 'gathering', nextStage: 'fixed' });
});

test('a gathering without pledges lacks an allotment, and one under its supplier’s minimum says so', async () => {
  const small = await aBuy(app, storehouse, { quote: { minimumGoodsMinorUnits: 10_000 } });
  expect(codesOf({ missing: await missingAsRefused(callers.coordinator, small) })).toEqual([
    'nothing-allotted',
  ]);
  await aPledge(callers.Dell, small, { wanted: 50 }); // one bag at 36.00, under 100.00
  expect(await missingAsRefused(callers.coordinator, small)).toMatchObject([
    { code: 'nothing-allotted' },
    { code: 'supplier-minimum-not-met', count: 1, ids: [small.supplierId], page: `${small.path}/fill` },
  ]);
});

describe('the grain buy on its way', () => {
  let offers: Record<GrainFood, string>;
  let deliveryId: string;

  test('once its pledges fill bags nothing is missing, and the coordinator fixes it', async () => {
    expect(await whoMoves()).toEqual(['coordinator']);
    expect(await nextOf(callers.coordinator)).toMatchObject({
      stage: 'gathering',
      nextStage: 'fixed',
      who: ['coordinator'],
      missing: [],
      action: { path: `${buy.path}/fixing`, body: {} },
    });
    bodyOf(await follow(callers.coordinator), 201);
  });

  test('fixed, it waits for two agreements and its deposits; each duty is told as much as it may know', async () => {
    const all = Object.values(buy.households).map(({ householdId }) => householdId);
    const treasurer = await nextOf(callers.treasurer);
    expect(treasurer).toMatchObject({
      stage: 'fixed',
      nextStage: 'ordered',
      dueOn: '2026-09-24',
      dueAt: null,
    });
    expect(treasurer.who).toEqual(['coordinator', 'treasurer']);
    // Job map 4.3: 72.00, 63.00, 53.00 and 23.00 are asked for, 211.00 in all.
    expect(treasurer.missing).toMatchObject([
      { code: 'second-login-missing', page: `${buy.path}/order-consents` },
      { code: 'deposit-unpaid', count: 4, ids: all, minorUnits: 21_100, isOwn: true },
    ]);
    expect((await nextOf(callers.reviewer)).missing).toMatchObject([
      {},
      { minorUnits: 21_100, isOwn: false },
    ]);
    const { missing } = await nextOf(callers.coordinator);
    expect(missing).toMatchObject([{}, { code: 'deposit-unpaid', ids: all, isOwn: true }]);
    expect(missing[1]).not.toHaveProperty('minorUnits');
    for (const caller of [callers.packingLead, callers.Corran, callers.Dell])
      expect((await nextOf(caller)).missing[1]).toEqual({
        code: 'deposit-unpaid',
        words: 'A deposit has neither come in nor been waived.',
        isOwn: true,
        page: `${buy.path}/deposits/own`,
      });
  });

  test('a household that has paid learns nothing of those that have not', async () => {
    await payDeposits(buy, { Dell: 2300 });
    const dell = await callers.Dell.get(`${buy.path}/next`);
    expect(codesOf(dell.body)).toEqual(['second-login-missing']);
    for (const name of ['Ashdown', 'Birchall', 'Corran'] as const) {
      expect(JSON.stringify(dell.body)).not.toContain(buy.households[name].householdId);
      expect(JSON.stringify(dell.body)).not.toContain(name);
    }
    expect((await nextOf(callers.treasurer)).missing[1]).toMatchObject({ count: 3, minorUnits: 18_800 });
  });

  test('who looked at the deposits stands in the record of the households that had not paid', async () => {
    const { householdId } = buy.households.Corran;
    const path = `${storehouse.path}/households/${householdId}/private-reads?limit=200`;
    const { privateReads } = bodyOf(await callers.Corran.get(path));
    const looks = privateReads.filter(({ purpose }: { purpose: string }) => purpose === 'next step of a buy');
    expect(looks[0]).toMatchObject({ what: 'deposits' });
    const readers = looks.map(({ readerName }: { readerName: string }) => readerName);
    expect(new Set(readers)).toEqual(new Set(['Ada Ashdown', 'Birchall Person', 'Eastman Person']));
  });

  test('the first agreement leaves the other duty to move it on, with the list that would refuse it', async () => {
    expect((await nextOf(callers.coordinator)).action.body).toEqual({ duty: 'coordinator' });
    bodyOf(await follow(callers.coordinator), 201);
    expect(await nextOf(callers.coordinator)).toMatchObject({ who: ['treasurer'], mayMove: false });
    const before = await nextOf(callers.treasurer);
    expect(before).toMatchObject({ mayMove: true, action: { body: { duty: 'treasurer' } } });
    const refused = await follow(callers.treasurer);
    // The treasurer's own agreement would be the second login; the rest is what the command misses.
    expect(codesOf(before)).toEqual(['second-login-missing', ...codesOf(refused.body)]);
    expect(before.missing[1]).toMatchObject(refused.body.missing[0]);
    await payDeposits(buy, { Ashdown: 7200, Birchall: 6300, Corran: 5300 });
    expect(codesOf(await nextOf(callers.treasurer))).toEqual(['second-login-missing']);
  });

  test('a quote that lapses meanwhile is missing too', async () => {
    const started = app.clock.now;
    app.clock.now = new Date('2026-11-01T15:00:00Z'); // the quote stands until 31 October
    expect((await nextOf(callers.treasurer)).missing).toMatchObject([
      { code: 'second-login-missing' },
      { code: 'quote-lapsed', count: 1, ids: [buy.quoteId], page: `${buy.path}/quotes` },
    ]);
    app.clock.now = started;
    bodyOf(await follow(callers.treasurer), 201);
  });

  test('ordered, it waits for counts and then for numbers, and whoever stands at the lorry lands it', async () => {
    offers = await offersOf(storehouse, buy);
    expect(await nextOf(callers.packingLead)).toMatchObject({
      stage: 'ordered',
      nextStage: 'landed',
      who: ['coordinator', 'packing_lead'],
      mayMove: true,
    });
    expect(await missingAsRefused(callers.packingLead)).toMatchObject([
      { code: 'line-not-counted', count: 3, page: `${buy.path}/landing` },
    ]);
    const delivery = await aDelivery(app, buy);
    deliveryId = delivery.id;
    await countDelivery(storehouse, delivery, [
      { bagOfferId: offers.wheat, countedBags: 6 },
      { bagOfferId: offers.oats, countedBags: 3 },
      { bagOfferId: offers.beans, countedBags: 4 },
    ]);
    expect(await missingAsRefused(callers.coordinator)).toMatchObject([
      { code: 'bag-not-numbered', count: 13 },
    ]);
    const bags = bagBodies(offers, GRAIN_BAGS);
    bodyOf(await callers.packingLead.post(`${storehouse.path}/deliveries/${deliveryId}/bags`, { bags }), 201);
    expect((await nextOf(callers.Dell)).missing).toEqual([]);
    expect(await whoMoves()).toEqual(['coordinator', 'packingLead']);
    bodyOf(await follow(callers.packingLead));
  });

  test('landed, it waits for its splits and the bill, and the coordinator shares it out', async () => {
    const missing = await missingAsRefused(callers.coordinator);
    expect(codesOf({ missing })).toEqual([
      'line-not-split',
      'mass-not-shared',
      'mass-not-shared',
      'mass-not-shared',
      'invoice-missing',
    ]);
    expect((await nextOf(callers.Dell)).missing).toEqual(missing); // the landing sheet is everybody's
    await claimGrain(buy);
    bodyOf(await callers.treasurer.post(`${buy.path}/invoices`, grainInvoice(buy)), 201);
    await splitGrain(storehouse, {
      ...buy,
      offers,
      deliveryId,
      bags: NO_BAGS,
      claims: null,
      invoiceId: null,
    });
    expect(await nextOf(callers.treasurer)).toMatchObject({
      missing: [],
      mayMove: false,
      who: ['coordinator'],
    });
    expect(await whoMoves()).toEqual(['coordinator']);
    bodyOf(await follow(callers.coordinator), 201);
  });

  test('shared out, it waits for its claims and deposits; whose is held is told to those who may know', async () => {
    const { householdId } = buy.households.Dell;
    const deposit = { householdId, minorUnits: 500, till: 'bank' };
    bodyOf(await callers.treasurer.post(`${buy.path}/deposits`, deposit), 201);
    expect(await missingAsRefused(callers.treasurer)).toMatchObject([
      { code: 'claim-open', count: 2, page: `${buy.path}/claims` },
      { code: 'deposit-held', ids: [householdId], minorUnits: 500, page: `${buy.path}/deposits` },
    ]);
    const { missing } = await nextOf(callers.coordinator);
    expect(missing[1]).toMatchObject({ code: 'deposit-held', ids: [householdId] });
    expect(missing[1]).not.toHaveProperty('minorUnits');
    expect(codesOf(await nextOf(callers.Corran))).toEqual(['claim-open']);
    expect((await nextOf(callers.Dell)).missing[1]).toMatchObject({ code: 'deposit-held', isOwn: true });
    expect((await nextOf(callers.Dell)).missing[1]).not.toHaveProperty('ids');
    expect(await whoMoves()).toEqual(['treasurer']);
  });

  test('with everything settled the treasurer closes it, and nothing comes after', async () => {
    const { householdId } = buy.households.Dell;
    const refund = { householdId, minorUnits: 500, toBalance: true };
    bodyOf(await callers.treasurer.post(`${buy.path}/deposits/refunds`, refund), 201);
    const { claims } = bodyOf(await callers.treasurer.get(`${buy.path}/claims`));
    const [torn, short] = claims.map(({ id }: { id: string }) => id);
    await creditClaims(storehouse, {
      ...{ ...buy, offers, deliveryId, bags: NO_BAGS, invoiceId: null },
      claims: { torn, short },
    });
    expect(await nextOf(callers.treasurer)).toMatchObject({ missing: [], mayMove: true });
    bodyOf(await follow(callers.treasurer), 201);
    for (const caller of Object.values(callers)) {
      expect(await nextOf(caller)).toMatchObject({ stage: 'closed', nextStage: null, mayMove: false });
      expect(await nextOf(caller)).toMatchObject({ who: [], missing: [], action: null });
    }
  });
});

const NO_BAGS = { wheat: [], oats: [], beans: [] };

test('a buy that was called off has no next step', async () => {
  const planned = await aBuy(app, storehouse);
  const reason = 'The mill has burnt down.';
  bodyOf(await callers.coordinator.post(`${planned.path}/calling-off`, { reason }));
  expect(await nextOf(callers.coordinator, planned)).toMatchObject({
    stage: 'called-off',
    nextStage: null,
    missing: [],
    action: null,
    pages: [{ path: planned.path }],
  });
});

test('another storehouse finds no such buy, and a stranger no storehouse', async () => {
  const other = await anotherStorehouse(app);
  const strayed = buy.path.replace(storehouse.storehouseId, other.storehouseId);
  const found = await other.coordinator.get(`${strayed}/next`);
  expect([found.status, found.body.code]).toEqual([404, 'thing-not-found']);
  const outside = await other.coordinator.get(`${buy.path}/next`);
  expect([outside.status, outside.body.code]).toEqual([404, 'storehouse-not-found']);
  const unknown = await callers.Dell.get(`${storehouse.path}/buys/no-id/next`);
  expect([unknown.status, unknown.body.code]).toEqual([404, 'thing-not-found']);
  expect((await app.as().get(`${buy.path}/next`)).body.code).toBe('not-signed-in');
});

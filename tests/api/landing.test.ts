import { isCode } from '@sheafbook/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { proposeClaims } from '../../apps/api/src/features/landing/proposals.ts';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anOrderedBuy, type GrainHouseholds, openGrain, type TestGrainBuy } from '../support/fixed-buy.ts';
import {
  aDelivery,
  aLandedBuy,
  bagBodies,
  claimGrain,
  countDelivery,
  type GrainFood,
  grainInvoice,
  offersOf,
  receiveBags,
  type TestLandedBuy,
} from '../support/landed-buy.ts';
import { clearingOf, gramsIn } from '../support/landing-books.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

const coordinator = () => storehouse.coordinator;
const sheetOf = async (buy: TestGrainBuy) => bodyOf(await coordinator().get(`${buy.path}/landing`));
const bagsAt = (deliveryId: string) => `${storehouse.path}/deliveries/${deliveryId}/bags`;

// Job map 4.3 and section 6, "worked lot": 5 full bags of wheat and one of 20,412 g are 133,812 g; three bags of oats of
// 22,680 g, and four of black beans of 11,340 g; 247,212 g in all (the Σ beside the awards).
describe('the whole buy of the job map lands', () => {
  let buy: TestLandedBuy;
  beforeAll(async () => {
    buy = await aLandedBuy(app, storehouse, {
      households,
      isLanded: false,
      hasClaims: false,
      hasInvoice: false,
    });
  });

  test('every accepted gram goes from the supplier into its bag and is nobody’s yet', async () => {
    const foods = [buy.wheat, buy.oats, buy.beans];
    const inBags = await Promise.all(foods.map((lineId) => gramsIn(app, lineId, 'bag')));
    const fromSupplier = await Promise.all(foods.map((lineId) => gramsIn(app, lineId, 'supplier')));
    expect(inBags).toEqual([133_812, 68_040, 45_360]);
    expect(fromSupplier).toEqual([-133_812, -68_040, -45_360]);
    const owners = await app.admin`select distinct o.kind from book.account a
      join book.owner o using (storehouse_id, owner_id) where a.kind = 'mass'`;
    expect(owners.map((row) => row.kind)).toEqual(['unassigned']);
  });

  test('each bag has its number in its line and a code of its own', () => {
    expect(buy.bags.wheat.map((bag) => bag.bagNo)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(buy.bags.beans.map((bag) => bag.bagNo)).toEqual([1, 2, 3, 4]);
    const codes = Object.values(buy.bags).flatMap((bags) => bags.map((bag) => bag.bagCode));
    expect(codes.every(isCode)).toBe(true);
    expect(new Set(codes).size).toBe(13);
  });

  test('each landing is an entry of the day the lorry came', async () => {
    const entries = await app.admin`select what, on_day::text, subject_id from book.entry
      where buy_id = ${buy.buyId} and what = 'bag-landed'`;
    expect(entries).toHaveLength(13);
    expect(new Set(entries.map((entry) => entry.on_day))).toEqual(new Set(['2026-09-01']));
  });

  test('the landing sheet proposes 3.60 for the torn bag and 21.40 for the missing one, until they are claimed', async () => {
    const before = await sheetOf(buy);
    expect(
      before.lines.map(({ orderedBags, countedBags, shortBags, netGrams }: Record<string, number>) => [
        orderedBags,
        countedBags,
        shortBags,
        netGrams,
      ]),
    ).toEqual([
      [6, 6, 0, 133_812],
      [3, 3, 0, 68_040],
      [5, 4, 1, 45_360],
    ]);
    expect(before.lines[0].bags[5]).toMatchObject({
      bagNo: 6,
      declaredGrams: 22_680,
      grossGrams: 20_662,
      tareGrams: 250,
      netGrams: 20_412,
      condition: 'torn',
      note: 'Torn.',
    });
    expect(before.proposedClaims).toMatchObject([
      { buyLineId: buy.wheat, kind: 'damage', minorUnits: 360, shortBags: 0, lostGrams: 2_268 },
      { buyLineId: buy.beans, kind: 'short', minorUnits: 2140, shortBags: 1, lostGrams: 0 },
    ]);
    await claimGrain(buy);
    const after = await sheetOf(buy);
    expect(after.proposedClaims).toEqual([]);
    const asked = after.claims.map((claim: { minorUnits: number }) => claim.minorUnits);
    expect(new Set(asked)).toEqual(new Set([360, 2140]));
  });

  test('with its claims and its invoice the buy costs 498.50 net', async () => {
    expect(await clearingOf(app, buy.buyId)).toBe(-2_500);
    bodyOf(await buy.treasurer.post(`${buy.path}/invoices`, grainInvoice(buy)), 201);
    expect(await clearingOf(app, buy.buyId)).toBe(49_850);
  });

  test('48 hours to claim cover the day of arrival and the next for sure', async () => {
    const { deliveries, claimWindowHours } = await sheetOf(buy);
    expect(claimWindowHours).toBe(48);
    expect(deliveries).toMatchObject([
      { arrivedOn: '2026-09-01', claimByOn: '2026-09-02', isClaimDayPast: false },
    ]);
  });

  test('once every line is counted and every bag numbered, the buy is landed', async () => {
    const landed = bodyOf(await coordinator().post(`${buy.path}/landing`));
    expect(landed).toMatchObject({ id: buy.buyId, stage: 'landed' });
    const moves = await app.admin`select from_stage, to_stage from book.stage_move
      where buy_id = ${buy.buyId} order by stage_move_id desc limit 1`;
    expect(moves).toEqual([{ from_stage: 'ordered', to_stage: 'landed' }]);
  });
});

describe('a delivery in parts', () => {
  let buy: TestGrainBuy;
  let offers: Record<GrainFood, string>;
  let first: { id: string; version: number };
  beforeAll(async () => {
    buy = await anOrderedBuy(app, storehouse, { households });
    offers = await offersOf(storehouse, buy);
    first = await aDelivery(app, buy);
  });

  test('a buy does not land with an uncounted food or an unnumbered bag, and says at once which', async () => {
    const version = await countDelivery(storehouse, first, [
      { bagOfferId: offers.wheat, countedBags: 2 },
      { bagOfferId: offers.oats, countedBags: 0 },
    ]);
    const answer = await coordinator().post(`${buy.path}/landing`);
    expect([answer.status, answer.body.code]).toEqual([409, 'buy-guard-unmet']);
    expect(answer.body.missing).toMatchObject([
      { code: 'line-not-counted', count: 1, ids: [buy.beans] },
      { code: 'bag-not-numbered', count: 2, ids: [offers.wheat] },
    ]);
    first = { ...first, version };
  });

  test('a count of none is a count, but a counted bag must have its number', async () => {
    await countDelivery(storehouse, first, [{ bagOfferId: offers.beans, countedBags: 0 }]);
    const answer = await coordinator().post(`${buy.path}/landing`);
    expect(answer.body.missing).toMatchObject([{ code: 'bag-not-numbered', count: 2, ids: [offers.wheat] }]);
  });

  test('landing finishes the delivery: what comes later is a further part', async () => {
    const bodies = bagBodies(offers, { wheat: [{}, {}] });
    bodyOf(await coordinator().post(bagsAt(first.id), { bags: bodies }), 201);
    bodyOf(await coordinator().post(`${buy.path}/landing`));
    const delivery = bodyOf(await coordinator().get(`${storehouse.path}/deliveries/${first.id}`));
    expect(delivery.finishedAt).toBe('2026-09-01T15:00:00.000Z');
    const late = await coordinator().post(bagsAt(first.id), { bags: bodies });
    expect([late.status, late.body.code]).toEqual([409, 'delivery-finished']);
  });

  test('a later part goes on numbering where the first stopped, and its grams are nobody’s yet', async () => {
    const part = await receiveBags(app, storehouse, { buy, offers, bags: { wheat: [{}, {}], beans: [{}] } });
    expect(part.bags.wheat.map((bag) => bag.bagNo)).toEqual([3, 4]);
    expect(await gramsIn(app, buy.wheat, 'bag')).toBe(4 * 22_680);
    const { deliveries } = bodyOf(await coordinator().get(`${buy.path}/deliveries`));
    expect(deliveries.map((delivery: { partNo: number }) => delivery.partNo)).toEqual([1, 2]);
    const sheet = await sheetOf(buy);
    expect(sheet.lines.map((line: { shortBags: number }) => line.shortBags)).toEqual([2, 3, 4]);
    const { version } = deliveries[1];
    const finish = `${storehouse.path}/deliveries/${part.deliveryId}/finish`;
    expect(bodyOf(await coordinator().post(finish, { version })).finishedAt).not.toBeNull();
  });

  test('lists give pages and CSV', async () => {
    const page = bodyOf(await coordinator().get(`${buy.path}/bags?limit=3`));
    expect(page.bags.map((bag: { bagNo: number }) => bag.bagNo)).toEqual([1, 2, 3]);
    const rest = bodyOf(await coordinator().get(`${buy.path}/bags?limit=3&after=${page.next}`));
    expect(rest.bags.map((bag: { buyLineId: string }) => bag.buyLineId)).toEqual([buy.wheat, buy.beans]);
    expect(rest.next).toBeNull();
    const csv = await coordinator().get(`${buy.path}/deliveries?format=csv`);
    expect(csv.body.split('\r\n').length).toBe(4); // a heading, two parts, and the end of the last line
    expect((await coordinator().get(`${buy.path}/bags?format=csv`)).body).toContain('bagCode');
  });
});

describe('what could be claimed', () => {
  const whole = {
    declaredGrams: 22_680,
    netGrams: 22_680,
    condition: 'dry',
    decision: 'accepted',
    isOnHold: false,
  };
  const refusedBag = { ...whole, decision: 'refused', condition: 'torn' };
  // Three bags for 100.00: 33.33⅓ each, so 33.33 stands for one.
  const order = { supplierId: 'mill', buyLineId: 'oats', orderedBags: 3, goodsMinorUnits: 10_000 };
  const amounts = (outcome: object, asked: Parameters<typeof proposeClaims>[1] = []) =>
    proposeClaims([{ ...order, countedBags: 3, bags: [whole, whole, whole], ...outcome }], asked).map(
      ({ kind, minorUnits }) => [kind, minorUnits],
    );

  test('is nothing when all came whole', () => {
    expect(amounts({})).toEqual([]);
  });
  test('is a bag that never came, and one that was refused as damaged', () => {
    expect(amounts({ countedBags: 2, bags: [whole, refusedBag] })).toEqual([
      ['short', 3_333],
      ['damage', 3_333],
    ]);
  });
  test('is not a refused bag that one beyond the order makes up for', () => {
    expect(amounts({ countedBags: 4, bags: [whole, whole, whole, refusedBag] })).toEqual([]);
  });
  test('is the lost part of a light bag: 5 of 50 lb at 33.33 are 3.33', () => {
    expect(amounts({ bags: [whole, whole, { ...whole, netGrams: 20_412 }] })).toEqual([['damage', 333]]);
  });
  test('is what has not been asked yet', () => {
    const asked = [{ buyLineId: 'oats', kind: 'short', minorUnits: 3_000 }];
    expect(amounts({ countedBags: 2, bags: [whole, whole] }, asked)).toEqual([['short', 333]]);
    const all = [{ buyLineId: 'oats', kind: 'short', minorUnits: 4_000 }];
    expect(amounts({ countedBags: 2, bags: [whole, whole] }, all)).toEqual([]);
  });
});

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Answer, openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, bodyOf, pledgeBody } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aFixedBuy } from '../support/fixed-buy.ts';
import { aDelivery, bagBodies, countDelivery } from '../support/landed-buy.ts';
import { wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { aWorld, type TestWorld } from '../support/world.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let world: TestWorld;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  world = await aWorld(app, storehouse);
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const expectRefused = async (call: () => Promise<Answer>, ...refusal: Parameters<typeof refused>) =>
  expect(await refusalOf(app, call)).toEqual(refused(...refusal));

describe('a pledge', () => {
  const pledge = (wish: Parameters<typeof pledgeBody>[1]) =>
    world.buy.households.Corran.caller.post(
      `${world.gathering.path}/pledges`,
      pledgeBody(world.gathering, wish),
    );

  test('wants its least, its wanted and its most in that order', async () => {
    const out = [422, 'pledge-not-in-order'] as const;
    await expectRefused(() => pledge({ least: 20, wanted: 10, most: 30 }), ...out, 'leastGrams');
    await expectRefused(() => pledge({ least: 10, wanted: 40, most: 30 }), ...out, 'mostGrams');
  });

  test('comes in whole steps, or in whole bags', async () => {
    const off = [422, 'pledge-off-step', 'leastGrams', 'wantedGrams', 'mostGrams'] as const;
    await expectRefused(() => pledge({ wanted: 12 }), ...off);
    await expectRefused(() => pledge({ wanted: 60, wholeBags: true }), ...off);
  });

  test('comes before the gathering closes, to the second', async () => {
    const opened = app.clock.now;
    app.clock.now = new Date('2026-09-20T23:00:00Z');
    const late = await refusalOf(app, () => pledge({ wanted: 10 }));
    app.clock.now = new Date('2026-09-20T22:59:59Z');
    const inTime = await pledge({ wanted: 10 });
    app.clock.now = opened;
    expect(late).toEqual(refused(409, 'deadline-passed', 'wantedGrams'));
    expect(inTime.status).toBe(201);
  });

  test('has a ceiling that is an amount for some grams, and a substitute of the same buy', async () => {
    const good = pledgeBody(world.gathering, { wanted: 10 });
    const { caller } = world.buy.households.Ashdown;
    const send = (change: object) => caller.post(`${world.gathering.path}/pledges`, { ...good, ...change });
    await expectRefused(() => send({ ceilingMinorUnits: 100 }), 400, 'invalid-input', 'ceilingPerGrams');
    const foreign = { substituteLineId: world.buy.wheat };
    expect(await refusalOf(app, () => send(foreign))).toMatchObject({ status: 404, isUnchanged: true });
  });
});

describe('a bag', () => {
  test('of another buy is refused at the lorry and at the scale', async () => {
    const { ids } = world;
    const ordered = await aBuy(app, storehouse); // a buy that has nothing to do with the bag
    const weight = { version: 1, grossGrams: 22_930, buyId: ordered.buyId, reason: 'again' };
    const scale = () => storehouse.coordinator.put(at(`/bags/${ids.bag}/weight`), weight);
    expect(await refusalOf(app, scale)).toMatchObject({ code: 'bag-of-another-buy', isUnchanged: true });
    const foreign = await aFurtherDelivery();
    const { quotes } = bodyOf(await storehouse.coordinator.get(`${ordered.path}/quotes`));
    const counts = [{ bagOfferId: quotes[0].offers[0].id, countedBags: 1 }];
    const counted = { version: foreign.version, counts };
    const lorry = () => storehouse.coordinator.put(at(`/deliveries/${foreign.id}/counts`), counted);
    expect(await refusalOf(app, lorry)).toMatchObject({ code: 'bag-of-another-buy', isUnchanged: true });
  });

  test('is weighed once, unless somebody says why it is weighed again', async () => {
    const [, bag] = world.buy.bags.beans;
    const { version } = bodyOf(await storehouse.coordinator.get(at(`/bags/${bag?.id}`)));
    const again = { version, grossGrams: 11_590, tareGrams: 250 };
    await expectRefused(
      () => storehouse.coordinator.put(at(`/bags/${bag?.id}/weight`), again),
      ...([409, 'bag-already-weighed', 'reason'] as const),
    );
  });

  test('can’t weigh less than its own sack, nor more bags come off than were counted', async () => {
    const delivery = await aFurtherDelivery();
    const path = at(`/deliveries/${delivery.id}/bags`);
    const { offers } = world.buy;
    await countDelivery(storehouse, delivery, [{ bagOfferId: offers.oats, countedBags: 1 }]);
    const light = [{ bagOfferId: offers.oats, grossGrams: 200, tareGrams: 250 }];
    const weigh = () => storehouse.coordinator.post(path, { bags: light });
    expect(await refusalOf(app, weigh)).toMatchObject({ code: 'does-not-add-up', isUnchanged: true });
    const two = bagBodies(offers, { oats: [{}, {}] });
    const number = () => storehouse.coordinator.post(path, { bags: two });
    expect(await refusalOf(app, number)).toMatchObject({ code: 'does-not-add-up', isUnchanged: true });
  });

  const aFurtherDelivery = () => aDelivery(app, world.buy);
});

describe('a split', () => {
  test('never divides more than has landed: what was split is not split again', async () => {
    const path = `${world.buy.path}/lines/${world.buy.wheat}/splits`;
    expect(await refusalOf(app, () => storehouse.coordinator.post(path, {}))).toMatchObject({
      code: 'already-split',
      isUnchanged: true,
    });
  });

  test('is by a rule that has a name', async () => {
    const path = `${world.buy.path}/lines/${world.buy.wheat}/splits`;
    await expectRefused(
      () => storehouse.coordinator.post(path, { rule: 'by-eye' }),
      400,
      'invalid-input',
      'rule',
    );
  });
});

test('nobody pours more than a bag holds of theirs', async () => {
  const { Ashdown } = world.buy.households;
  const bag = await wheatOf(storehouse, world.buy, Ashdown);
  const more = { kind: 'pail-6-gallon-lined', count: 2, gramsEach: 12_000 };
  await expectRefused(() => world.shelves.pour(Ashdown.caller, bag, more), 409, 'not-enough-left', 'count');
});

describe('money', () => {
  const paid = (change: object) => {
    const { householdId } = world.buy.households.Corran;
    const body = { householdId, minorUnits: 100, till: 'bank', ...change };
    return () => world.buy.treasurer.post(at('/payments'), body);
  };

  test('is of one currency', async () => {
    await expectRefused(paid({ currency: 'EUR' }), 422, 'currency-mixed', 'currency');
    await expectRefused(paid({ currency: 'usd' }), 422, 'currency-mixed', 'currency');
  });

  test('is paid on a day that was', async () => {
    await expectRefused(paid({ onDay: '2026-09-31' }), 400, 'invalid-input', 'onDay');
    await expectRefused(paid({ onDay: '2026-09-02' }), 400, 'invalid-input', 'onDay');
  });

  test('is above zero, whole, and no larger than a book can hold', async () => {
    for (const minorUnits of [0, -100, 0.5, 1e30, Number.MAX_SAFE_INTEGER + 1, null, '100'])
      await expectRefused(paid({ minorUnits }), 400, 'invalid-input', 'minorUnits');
    bodyOf(await paid({ minorUnits: Number.MAX_SAFE_INTEGER - 1_000_000 })(), 201);
    await expectRefused(paid({ minorUnits: 1_000_001 }), 422, 'amount-too-large');
  });
});

describe('a stage is not skipped', () => {
  const to = (buy: { path: string }, rest: string, body?: object) => () =>
    storehouse.coordinator.post(`${buy.path}${rest}`, body);
  const refusal = async (call: () => Promise<Answer>) => {
    const { status, code, isUnchanged } = await refusalOf(app, call);
    return [status, code, isUnchanged];
  };
  const WRONG = [409, 'buy-stage-wrong', true];

  test('from planning to fixed, from gathering to ordered, landed, shared out or closed', async () => {
    const planned = await aBuy(app, storehouse, { isOpen: false });
    expect(await refusal(to(planned, '/fixing', {}))).toEqual(WRONG);
    const { gathering } = world;
    const { treasurer } = world.buy;
    expect(await refusal(to(gathering, '/order-consents', { duty: 'coordinator' }))).toEqual(WRONG);
    expect(await refusal(to(gathering, '/landing'))).toEqual(WRONG);
    expect(await refusal(to(gathering, '/sharing-out'))).toEqual(WRONG);
    expect(await refusal(() => treasurer.post(`${gathering.path}/closing`))).toEqual(WRONG);
    expect(await refusal(to(gathering, `/lines/${Object.values(gathering.lines)[0]}/splits`, {}))).toEqual(
      WRONG,
    );
  });

  test('from fixed to landed, nor back from shared out', async () => {
    const fixed = await aFixedBuy(app, storehouse, { households: world.buy.households });
    expect(await refusal(to(fixed, '/landing'))).toEqual(WRONG);
    expect(await refusal(to(fixed, '/stage', { to: 'shared-out' }))).toEqual(WRONG);
    const facts = { supplierId: fixed.supplierId, arrivedOn: '2026-09-01' };
    expect(await refusal(to(fixed, '/deliveries', facts))).toEqual(WRONG);
    expect(await refusal(to(world.buy, '/reopening', { reason: 'too late' }))).toEqual(WRONG);
    expect(await refusal(to(world.buy, '/calling-off', { reason: 'too late' }))).toEqual(WRONG);
    expect(await refusal(to(world.buy, '/fixing', {}))).toEqual(WRONG);
  });
});

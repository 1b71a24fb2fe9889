import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Answer, openTestApp, type TestApp } from '../support/app.ts';
import { aPledge, bodyOf } from '../support/buy.ts';
import { aGrainBuy, GRAIN_DEPOSITS, type TestGrainBuy } from '../support/fixed-buy.ts';
import {
  aDelivery,
  aPackingLead,
  bagBodies,
  claimGrain,
  GRAIN_BAGS,
  grainInvoice,
  offersOf,
} from '../support/landed-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

// One buy in which everybody presses every button at the same moment; the tests are its stages and run in order. Whoever
// wins, each thing happens once, the others are told why not, and nobody meets a failure of ours.
let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestGrainBuy;
let offers: Record<'wheat' | 'oats' | 'beans', string>;
let delivery: { id: string; version: number };
let bags: { id: string; bagOfferId: string; version: number }[];
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aGrainBuy(app, storehouse);
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const times = (count: number, call: () => Promise<Answer>) =>
  Promise.all(Array.from({ length: count }, () => call()));
/** How many calls went through, and the words of those that did not. */
const outcome = (answers: readonly Answer[]) => ({
  done: answers.filter(({ status }) => status < 300).length,
  refusals: [
    ...new Set(answers.filter(({ status }) => status >= 300).map(({ body }) => String(body.code))),
  ].toSorted(),
});
const race = async (count: number, call: () => Promise<Answer>) => outcome(await times(count, call));
const once = (...refusals: readonly string[]) => ({ done: 1, refusals });
const expectSound = async () => {
  const { findings } = bodyOf(await buy.treasurer.get(at('/audit')));
  expect(findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
};

describe('many at once', () => {
  test('fix a buy once, and no pledge changes under the fill', async () => {
    const { Corran } = buy.households;
    const own = bodyOf(await Corran.caller.get(`${buy.path}/pledges`)).own[0];
    const { id, version, leastGrams, mostGrams, wholeBags } = own;
    const shrunk = { version, leastGrams, mostGrams, wholeBags, wantedGrams: leastGrams, asTyped: 'less' };
    const [fixings, change] = await Promise.all([
      times(5, () => storehouse.coordinator.post(`${buy.path}/fixing`, {})),
      Corran.caller.put(`${buy.path}/pledges/${id}`, shrunk),
    ]);
    expect(outcome(fixings)).toEqual(once('buy-stage-wrong'));
    expect([200, 409]).toContain(change.status);
    const [asked] = await app.admin<{ asks: number }[]>`
      select count(*)::int as asks from book.deposit_ask where buy_id = ${buy.buyId}`;
    expect(asked?.asks).toBe(4);
    await expectSound();
  });

  test('take each deposit in once, under one key', async () => {
    for (const [name, minorUnits] of Object.entries(GRAIN_DEPOSITS)) {
      const { householdId } = buy.households[name as keyof typeof GRAIN_DEPOSITS];
      const body = { householdId, minorUnits, till: 'bank' };
      const answers = await times(4, () =>
        buy.treasurer.post(`${buy.path}/deposits`, body, { 'Idempotency-Key': `deposit of ${name}` }),
      );
      expect(new Set(answers.map((answer) => answer.body.entryId)).size).toBe(1);
    }
    const { deposits } = bodyOf(await buy.treasurer.get(`${buy.path}/deposits`));
    expect(
      deposits.map(({ heldMinorUnits }: { heldMinorUnits: number }) => heldMinorUnits).toSorted(),
    ).toEqual([2300, 5300, 6300, 7200]);
  });

  test('agree to order, once for each duty, and order once', async () => {
    const agree = (duty: 'coordinator' | 'treasurer') =>
      (duty === 'coordinator' ? storehouse.coordinator : buy.treasurer).post(`${buy.path}/order-consents`, {
        duty,
      });
    const [coordinators, treasurers] = await Promise.all([
      times(4, () => agree('coordinator')),
      times(4, () => agree('treasurer')),
    ]);
    expect([outcome(coordinators).done, outcome(treasurers).done]).toEqual([1, 1]);
    const { orders } = bodyOf(await storehouse.coordinator.get(`${buy.path}/orders`));
    expect(orders).toHaveLength(1);
    offers = await offersOf(storehouse, buy);
  });

  test('count a lorry once, and number its bags once', async () => {
    delivery = await aDelivery(app, buy);
    const counts = Object.entries(offers).map(([food, bagOfferId]) => ({
      bagOfferId,
      countedBags: GRAIN_BAGS[food as keyof typeof GRAIN_BAGS].length,
    }));
    const count = { version: delivery.version, counts };
    const path = at(`/deliveries/${delivery.id}`);
    expect(await race(5, () => storehouse.coordinator.put(`${path}/counts`, count))).toEqual(
      once('stale-version'),
    );
    const wish = { bags: bagBodies(offers, GRAIN_BAGS) };
    expect(await race(5, () => storehouse.coordinator.post(`${path}/bags`, wish))).toEqual(
      once('does-not-add-up'),
    );
    bags = bodyOf(await storehouse.coordinator.get(`${buy.path}/bags`)).bags;
    expect(bags).toHaveLength(13);
    const [numbers] = await app.admin<{ codes: number }[]>`
      select count(distinct bag_code)::int as codes from book.bag`;
    expect(numbers?.codes).toBe(13);
  });

  test('weigh a bag once, and put it on hold once', async () => {
    const bag = bags.find(({ bagOfferId }) => bagOfferId === offers.oats);
    const weight = { version: bag?.version, grossGrams: 22_931, tareGrams: 250, reason: 'a better scale' };
    const weigh = () => storehouse.coordinator.put(at(`/bags/${bag?.id}/weight`), weight);
    expect(await race(5, weigh)).toEqual(once('stale-version'));
    const hold = () => storehouse.coordinator.post(at(`/bags/${bag?.id}/holds`), { reason: 'A smell.' });
    const held = await times(5, hold);
    expect(outcome(held)).toEqual(once('bag-already-held'));
    const holdId = held.find(({ status }) => status === 201)?.body.id;
    const lead = await aPackingLead(app, storehouse, buy.households.Corran);
    bodyOf(await lead.caller.post(at(`/holds/${holdId}/release-request`), { finding: 'Fine.' }));
    expect(await race(5, () => storehouse.coordinator.post(at(`/holds/${holdId}/release`)))).toEqual(
      once('hold-ended'),
    );
    await expectSound();
  });

  test('enter an invoice once, end the landing once', async () => {
    const invoice = grainInvoice(buy);
    expect(await race(5, () => buy.treasurer.post(`${buy.path}/invoices`, invoice))).toEqual(
      once('already-there'),
    );
    expect(await race(5, () => storehouse.coordinator.post(`${buy.path}/landing`))).toEqual(
      once('buy-stage-wrong'),
    );
  });

  test('split each food once, while another is split and a bag is lost from', async () => {
    const split = (food: 'wheat' | 'oats' | 'beans') =>
      times(3, () => storehouse.coordinator.post(`${buy.path}/lines/${buy[food]}/splits`, {}));
    const bag = bags.find(({ bagOfferId }) => bagOfferId === offers.wheat);
    const loss = { grams: 22_680, to: 'spilled', because: 'It fell off the dolly.' };
    const [wheat, oats, beans, lost] = await Promise.all([
      split('wheat'),
      split('oats'),
      split('beans'),
      storehouse.coordinator.post(at(`/bags/${bag?.id}/loss`), loss),
    ]);
    for (const answers of [wheat, oats, beans]) expect(outcome(answers)).toEqual(once('already-split'));
    expect([201, 409]).toContain(lost.status);
    await expectSound();
  });

  test('share out once, settle each claim once', async () => {
    const claims = await claimGrain(buy);
    const [credits, refusals] = await Promise.all([
      times(3, () => buy.treasurer.post(at(`/claims/${claims.torn}/credit`), { minorUnits: 360 })),
      times(3, () => buy.treasurer.post(at(`/claims/${claims.torn}/refusal`), { because: 'too late' })),
    ]);
    expect(outcome([...credits, ...refusals])).toEqual(once('claim-settled'));
    bodyOf(await buy.treasurer.post(at(`/claims/${claims.short}/credit`), { minorUnits: 2140 }), 201);
    expect(await race(4, () => storehouse.coordinator.post(`${buy.path}/sharing-out`))).toEqual(
      once('buy-stage-wrong'),
    );
    await expectSound();
  });

  test('fetch each household’s food once', async () => {
    const window = { startsAt: '2026-09-05T15:00:00Z', endsAt: '2026-09-05T16:00:00Z' };
    for (const { caller } of Object.values(buy.households)) {
      const { id } = bodyOf(await caller.post(`${buy.path}/pick-ups`, window), 201);
      const fetch = () => caller.post(at(`/pick-ups/${id}/collection`), { signedBy: 'whoever came' });
      expect(await race(4, fetch)).toEqual(once('already-collected'));
    }
    await expectSound();
  });

  test('close it once, at 0.00', async () => {
    expect(bodyOf(await buy.treasurer.get(`${buy.path}/closing`)).missing).toEqual([]);
    expect(await race(5, () => buy.treasurer.post(`${buy.path}/closing`))).toEqual(once('buy-stage-wrong'));
    expect(bodyOf(await storehouse.coordinator.get(buy.path)).stage).toBe('closed');
    const [left] = await app.admin<{ open: number }[]>`select count(*)::int as open from book.account
      where kind in ('buy_clearing', 'buy_deposit') and cause_id = ${buy.buyId} and inflow <> outflow`;
    expect(left?.open).toBe(0);
    await expectSound();
  });
});

describe('a household that owes', () => {
  test('pays its debt once however often the transfer is entered, unless somebody insists', async () => {
    const { householdId } = buy.households.Corran;
    const body = { householdId, minorUnits: 4321, till: 'bank' };
    expect(await race(6, () => buy.treasurer.post(at('/payments'), body))).toEqual(
      once('looks-like-a-duplicate'),
    );
  });

  test('is given back its credit once', async () => {
    const { householdId, caller } = buy.households.Dell;
    const balance = async () =>
      bodyOf(await caller.get(at(`/households/${householdId}/balance`))).balanceMinorUnits;
    const owed = await balance();
    const paid = { householdId, minorUnits: owed + 1000, till: 'bank' };
    bodyOf(await buy.treasurer.post(at('/payments'), paid), 201);
    const refund = { householdId, minorUnits: 1000, till: 'bank' };
    expect(await race(6, () => buy.treasurer.post(at('/refunds'), refund))).toEqual(once('not-enough-left'));
    expect(await balance()).toBe(0);
  });

  test('has its debt written off once, and by two', async () => {
    const { householdId } = buy.households.Corran;
    const { balanceMinorUnits } = bodyOf(await buy.treasurer.get(at(`/households/${householdId}/balance`)));
    const ask = { householdId, minorUnits: balanceMinorUnits, reason: 'moved away' };
    const { id } = bodyOf(await buy.treasurer.post(at('/write-offs'), ask), 201);
    const agreed = await race(5, () => storehouse.coordinator.post(at(`/write-offs/${id}/agreement`)));
    expect(agreed.done).toBe(1);
    const after = bodyOf(await buy.treasurer.get(at(`/households/${householdId}/balance`)));
    expect(after.balanceMinorUnits).toBe(0);
    await expectSound();
  });
});

test('one pledge slot and many who want it: a household has one pledge for one food', async () => {
  const second = await aGrainBuy(app, storehouse, { households: buy.households });
  const { caller } = second.households.Dell;
  const own = bodyOf(await caller.get(`${second.path}/pledges`)).own;
  const [wheat] = own;
  bodyOf(await caller.post(`${second.path}/pledges/${wheat.id}/withdrawal`, { version: wheat.version }));
  const answers = await Promise.allSettled(
    Array.from({ length: 20 }, () =>
      aPledge(caller, second, { foodCode: 'wheat-hard-red-winter', wanted: 30 }),
    ),
  );
  expect(answers.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
});

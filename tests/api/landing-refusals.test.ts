import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Answer, TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import {
  aFixedBuy,
  anOrderedBuy,
  type GrainHouseholds,
  openGrain,
  type TestGrainBuy,
} from '../support/fixed-buy.ts';
import {
  aDelivery,
  bagBodies,
  countDelivery,
  type GrainFood,
  offersOf,
  receiveBags,
  type TestBag,
} from '../support/landed-buy.ts';
import { gramsIn, refusalOf, refused } from '../support/landing-books.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

const NO_SUCH_ID = '01890a5d-ac96-774b-bcce-b302099a8057';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let buy: TestGrainBuy;
let other: TestGrainBuy;
let offers: Record<GrainFood, string>;
let otherOffers: Record<GrainFood, string>;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
  buy = await anOrderedBuy(app, storehouse, { households });
  other = await anOrderedBuy(app, storehouse, { households });
  offers = await offersOf(storehouse, buy);
  otherOffers = await offersOf(storehouse, other);
});
afterAll(() => app.close());

const coordinator = () => storehouse.coordinator;
const refusal = (call: () => Promise<Answer>) => refusalOf(app, call);

describe('a delivery', () => {
  const facts = () => ({ supplierId: buy.supplierId, carrier: 'Valley Freight', arrivedOn: '2026-09-01' });
  const post =
    (body: unknown, path = buy.path) =>
    () =>
      coordinator().post(`${path}/deliveries`, body);

  test.for([
    { because: 'a day that does not exist', change: { arrivedOn: '2026-02-30' }, field: 'arrivedOn' },
    { because: 'a day still to come', change: { arrivedOn: '2026-09-02' }, field: 'arrivedOn' },
    { because: 'a supplier that is no id', change: { supplierId: 'the mill' }, field: 'supplierId' },
    { because: 'an unknown field', change: { lorry: 'red' }, field: 'lorry' },
  ])('is refused for $because', async ({ change, field }) => {
    expect(await refusal(post({ ...facts(), ...change }))).toEqual(refused(400, 'invalid-input', field));
  });

  test('is refused without the day or the supplier', async () => {
    expect(await refusal(post({}))).toEqual(refused(400, 'invalid-input', 'supplierId', 'arrivedOn'));
  });

  test('comes from a supplier who was ordered from', async () => {
    expect(await refusal(post({ ...facts(), supplierId: other.supplierId }))).toEqual(
      refused(400, 'invalid-input', 'supplierId'),
    );
    expect(await refusal(post({ ...facts(), supplierId: NO_SUCH_ID }))).toEqual(
      refused(404, 'thing-not-found'),
    );
  });

  test('waits until the buy is ordered', async () => {
    const fixed = await aFixedBuy(app, storehouse, { households });
    const body = { ...facts(), supplierId: fixed.supplierId };
    expect(await refusal(post(body, fixed.path))).toEqual(refused(409, 'buy-stage-wrong'));
    expect(await refusal(() => coordinator().post(`${fixed.path}/landing`))).toEqual(
      refused(409, 'buy-stage-wrong'),
    );
  });

  test('is written down by those who land, once for each key', async () => {
    const { caller } = households.Dell;
    expect(await refusal(() => caller.post(`${buy.path}/deliveries`, facts()))).toEqual(
      refused(403, 'duty-missing'),
    );
    const noKey = { 'Idempotency-Key': '' };
    expect(await refusal(() => coordinator().post(`${buy.path}/deliveries`, facts(), noKey))).toEqual(
      refused(400, 'idempotency-key-missing'),
    );
    const key = { 'Idempotency-Key': 'lorry-1' };
    const first = await coordinator().post(`${buy.path}/deliveries`, facts(), key);
    const again = await coordinator().post(`${buy.path}/deliveries`, facts(), key);
    expect([again.status, again.body]).toEqual([201, first.body]);
    const changed = { ...facts(), carrier: 'Hill Freight' };
    expect(await refusal(() => coordinator().post(`${buy.path}/deliveries`, changed, key))).toEqual(
      refused(409, 'idempotency-key-reused'),
    );
  });
});

describe('a count', () => {
  let delivery: { id: string; version: number };
  beforeAll(async () => {
    delivery = await aDelivery(app, buy);
    const version = await countDelivery(storehouse, delivery, [{ bagOfferId: offers.wheat, countedBags: 2 }]);
    const path = `${storehouse.path}/deliveries/${delivery.id}/bags`;
    bodyOf(await coordinator().post(path, { bags: bagBodies(offers, { wheat: [{}, {}] }) }), 201);
    delivery = { ...delivery, version };
  });
  const put =
    (counts: unknown, version = delivery.version) =>
    () =>
      coordinator().put(`${storehouse.path}/deliveries/${delivery.id}/counts`, { version, counts });

  test.for([
    { because: 'below nothing', countedBags: -1 },
    { because: 'half a bag', countedBags: 2.5 },
    { because: 'enormous', countedBags: 100_001 },
    { because: 'beyond what a number holds', countedBags: 1e300 },
    { because: 'no number', countedBags: '3' },
  ])('is refused when it is $because', async ({ countedBags }) => {
    expect(await refusal(put([{ bagOfferId: offers.oats, countedBags }]))).toEqual(
      refused(400, 'invalid-input', 'counts.0.countedBags'),
    );
  });

  test('is of a bag of this buy', async () => {
    expect(await refusal(put([{ bagOfferId: otherOffers.wheat, countedBags: 1 }]))).toEqual(
      refused(409, 'bag-of-another-buy', 'counts.0.bagOfferId'),
    );
    expect(await refusal(put([{ bagOfferId: NO_SUCH_ID, countedBags: 1 }]))).toEqual(
      refused(404, 'thing-not-found', 'counts.0.bagOfferId'),
    );
  });

  test('does not fall below the bags that have a number', async () => {
    expect(await refusal(put([{ bagOfferId: offers.wheat, countedBags: 1 }]))).toEqual(
      refused(422, 'does-not-add-up', 'counts.0.countedBags'),
    );
  });

  test('names a size once, and at least one', async () => {
    const twice = [1, 2].map((countedBags) => ({ bagOfferId: offers.oats, countedBags }));
    expect(await refusal(put(twice))).toEqual(refused(400, 'invalid-input', 'counts'));
    expect(await refusal(put([]))).toEqual(refused(400, 'invalid-input', 'counts'));
  });

  test('from an older reading is refused with the newer one', async () => {
    const stale = put([{ bagOfferId: offers.oats, countedBags: 3 }], 1);
    expect(await refusal(stale)).toEqual(refused(409, 'stale-version'));
    expect((await stale()).body.newer).toMatchObject({ id: delivery.id, version: delivery.version });
  });

  test('must be met by numbers before the delivery is finished', async () => {
    const open = await aDelivery(app, buy);
    const finish = (version: number) => () =>
      coordinator().post(`${storehouse.path}/deliveries/${open.id}/finish`, { version });
    expect(await refusal(finish(1))).toEqual(refused(422, 'does-not-add-up'));
    const version = await countDelivery(storehouse, open, [{ bagOfferId: offers.beans, countedBags: 1 }]);
    expect(await refusal(finish(version))).toEqual(refused(422, 'does-not-add-up'));
  });
});

describe('the number of a bag', () => {
  let path: string;
  beforeAll(async () => {
    const delivery = await aDelivery(app, buy);
    await countDelivery(storehouse, delivery, [{ bagOfferId: offers.wheat, countedBags: 3 }]);
    path = `${storehouse.path}/deliveries/${delivery.id}/bags`;
  });
  const post =
    (...bags: object[]) =>
    () =>
      coordinator().post(path, { bags: bags.map((body) => ({ bagOfferId: offers.wheat, ...body })) });

  test.for([
    { because: 'weighs nothing', body: { grossGrams: 0 }, field: 'grossGrams' },
    { because: 'weighs less than nothing', body: { grossGrams: -22_930 }, field: 'grossGrams' },
    { because: 'weighs half a gram', body: { grossGrams: 22_930.5 }, field: 'grossGrams' },
    { because: 'weighs a mountain', body: { grossGrams: 1e15 }, field: 'grossGrams' },
    { because: 'has a tare and no weight', body: { tareGrams: 250 }, field: 'grossGrams' },
    {
      because: 'is wetter than water',
      body: { moistureTenthsPercent: 1001 },
      field: 'moistureTenthsPercent',
    },
    { because: 'was harvested before anybody', body: { harvestYear: 1200 }, field: 'harvestYear' },
    { because: 'has a condition nobody knows', body: { condition: 'fine' }, field: 'condition' },
    {
      because: 'is accepted with a note that is missing',
      body: { decision: 'accepted-with-note' },
      field: 'note',
    },
    { because: 'is refused dry without a word', body: { decision: 'refused' }, field: 'note' },
    {
      because: 'was weighed and exempted',
      body: { grossGrams: 22_930, isExemptFromWeighing: true },
      field: 'isExemptFromWeighing',
    },
    { because: 'has an unknown field', body: { colour: 'brown' }, field: 'colour' },
  ])('is not given to a bag that $because', async ({ body, field }) => {
    expect(await refusal(post(body))).toEqual(refused(400, 'invalid-input', `bags.0.${field}`));
  });

  test.for([
    {
      because: 'an empty bag heavier than the full one',
      body: { grossGrams: 200, tareGrams: 250 },
      field: 'tareGrams',
    },
    {
      because: 'more than twice the declared mass',
      body: { grossGrams: 45_611, tareGrams: 250 },
      field: 'grossGrams',
    },
    { because: 'nothing in the bag', body: { grossGrams: 250, tareGrams: 250 }, field: 'grossGrams' },
  ])('is refused when the scale shows $because', async ({ body, field }) => {
    expect(await refusal(post({}, body))).toEqual(refused(422, 'does-not-add-up', `bags.1.${field}`));
  });

  test('goes no further than the count', async () => {
    expect(await refusal(post({}, {}, {}, {}))).toEqual(refused(422, 'does-not-add-up', 'bags.3.bagOfferId'));
    expect(await refusal(post({ bagOfferId: offers.oats }))).toEqual(
      refused(422, 'does-not-add-up', 'bags.0.bagOfferId'),
    );
  });

  test('is refused for a delivery of another buy’s bag', async () => {
    expect(await refusal(post({ bagOfferId: otherOffers.wheat }))).toEqual(
      refused(409, 'bag-of-another-buy', 'bags.0.bagOfferId'),
    );
  });

  test('belongs to one harvest for each mark of a lot', async () => {
    const mark = { supplierMark: 'H-1' };
    const bags = [
      { ...mark, harvestYear: 2025 },
      { ...mark, harvestYear: 2026 },
    ];
    expect(await refusal(post(...bags))).toEqual(refused(422, 'does-not-add-up', 'bags.1.harvestYear'));
  });

  test('needs a list with a bag in it, readable JSON, and a duty', async () => {
    expect(await refusal(() => coordinator().post(path, { bags: [] }))).toEqual(
      refused(400, 'invalid-input', 'bags'),
    );
    expect(await refusal(() => coordinator().post(path, '{"bags": ['))).toEqual(refused(400, 'not-json'));
    const tooMuch = { bags: [{ bagOfferId: offers.wheat, note: 'x'.repeat(300_000) }] };
    expect(await refusal(() => coordinator().post(path, tooMuch))).toEqual(refused(413, 'body-too-large'));
    const wish = { bags: [{ bagOfferId: offers.wheat }] };
    expect(await refusal(() => households.Dell.caller.post(path, wish))).toEqual(
      refused(403, 'duty-missing'),
    );
  });

  test('is given once however many send the same list at once', async () => {
    const before = await gramsIn(app, buy.wheat, 'bag');
    const answers = await Promise.all([1, 2, 3, 4].map(() => post({}, {}, {})()));
    expect(answers.map((answer) => answer.status).toSorted()).toEqual([201, 422, 422, 422]);
    expect(await gramsIn(app, buy.wheat, 'bag')).toBe(before + 3 * 22_680);
    const numbers = await app.admin<{ bag_no: number }[]>`select bag_no from book.bag
      where buy_line_id = ${buy.wheat} order by bag_no`;
    expect(numbers.map((row) => row.bag_no)).toEqual(numbers.map((_, position) => position + 1));
  });
});

describe('a numbered bag', () => {
  let bags: TestBag[];
  beforeAll(async () => {
    const wishes = [{ isUnweighed: true }, { isUnweighed: true }, {}];
    ({
      bags: { wheat: bags },
    } = await receiveBags(app, storehouse, { buy, offers, bags: { wheat: wishes } }));
  });
  const at = (position: number, path = '') => `${storehouse.path}/bags/${bags[position]?.id}${path}`;

  test('is weighed in whole grams, from a reading in force', async () => {
    const weigh = (body: object) => () =>
      coordinator().put(at(0, '/weight'), { version: 1, grossGrams: 22_930, ...body });
    expect(await refusal(weigh({ grossGrams: 0 }))).toEqual(refused(400, 'invalid-input', 'grossGrams'));
    expect(await refusal(weigh({ tareGrams: -1 }))).toEqual(refused(400, 'invalid-input', 'tareGrams'));
    expect(await refusal(weigh({ tareGrams: 30_000 }))).toEqual(refused(422, 'does-not-add-up', 'tareGrams'));
    expect(await refusal(weigh({ grossGrams: 250, tareGrams: 250 }))).toEqual(
      refused(422, 'does-not-add-up', 'grossGrams'),
    );
    expect(await refusal(weigh({ version: 7 }))).toEqual(refused(409, 'stale-version'));
    expect(await refusal(weigh({ buyId: other.buyId }))).toEqual(refused(409, 'bag-of-another-buy', 'buyId'));
  });

  test('is not weighed a second time without a reason', async () => {
    expect(
      await refusal(() => coordinator().put(at(2, '/weight'), { version: 1, grossGrams: 22_000 })),
    ).toEqual(refused(409, 'bag-already-weighed', 'reason'));
  });

  test('is weighed once however many weigh it at once', async () => {
    const weights = [22_000, 21_000, 20_000, 19_000];
    const answers = await Promise.all(
      weights.map((grossGrams) =>
        coordinator().put(at(1, '/weight'), { version: 1, grossGrams, tareGrams: 0 }),
      ),
    );
    const codes = answers.map((answer) => answer.body.code ?? 'weighed').toSorted();
    expect(codes).toEqual(['bag-already-weighed', 'bag-already-weighed', 'bag-already-weighed', 'weighed']);
    const { netGrams, leftGrams } = bodyOf(await coordinator().get(at(1)));
    expect(weights).toContain(netGrams);
    expect(leftGrams).toBe(netGrams);
  });

  test.for([
    { because: 'of nothing', body: { grams: 0 }, field: 'grams' },
    { because: 'below nothing', body: { grams: -5 }, field: 'grams' },
    { because: 'of half a gram', body: { grams: 0.5 }, field: 'grams' },
    { because: 'to nowhere', body: { to: 'the neighbour' }, field: 'to' },
    { because: 'without a word', body: { because: ' ' }, field: 'because' },
  ])('has no loss $because', async ({ body, field }) => {
    const loss = { grams: 100, to: 'spilled', because: 'Slipped.', ...body };
    expect(await refusal(() => coordinator().post(at(2, '/loss'), loss))).toEqual(
      refused(400, 'invalid-input', field),
    );
  });

  test('loses no more than it holds, whoever pours', async () => {
    const loss = { grams: 22_681, to: 'spilled', because: 'Slipped.' };
    expect(await refusal(() => coordinator().post(at(2, '/loss'), loss))).toEqual(
      refused(409, 'not-enough-left', 'grams'),
    );
    const race = await Promise.all(
      [1, 2, 3].map(() => coordinator().post(at(2, '/loss'), { ...loss, grams: 10_000 })),
    );
    expect(race.map((answer) => answer.status).toSorted()).toEqual([201, 201, 409]);
    expect(bodyOf(await coordinator().get(at(2))).leftGrams).toBe(2_680);
  });

  test('is edited from the reading in force, and whole', async () => {
    const edit = {
      condition: 'dry',
      decision: 'accepted',
      note: '',
      moistureTenthsPercent: 115,
      isExemptFromWeighing: true,
    };
    expect(await refusal(() => coordinator().put(at(0), { ...edit, version: 3 }))).toEqual(
      refused(409, 'stale-version'),
    );
    const { note: _, ...partial } = edit;
    expect(await refusal(() => coordinator().put(at(0), { ...partial, version: 1 }))).toEqual(
      refused(400, 'invalid-input', 'note'),
    );
    const edited = bodyOf(await coordinator().put(at(0), { ...edit, version: 1 }));
    expect(edited).toMatchObject({ isExemptFromWeighing: true, moistureTenthsPercent: 115, version: 2 });
  });

  test('of another storehouse is not there', async () => {
    const bellLane = await anotherStorehouse(app);
    const theirs = `${bellLane.path}/bags/${bags[0]?.id}`;
    expect(await refusal(() => bellLane.coordinator.get(theirs))).toEqual(refused(404, 'thing-not-found'));
    const weigh = { version: 1, grossGrams: 22_930 };
    expect(await refusal(() => bellLane.coordinator.put(`${theirs}/weight`, weigh))).toEqual(
      refused(404, 'thing-not-found'),
    );
    const ours = at(0, '/weight');
    expect(await refusal(() => bellLane.coordinator.put(ours, weigh))).toEqual(
      refused(404, 'storehouse-not-found'),
    );
    expect(await refusal(() => app.as().put(ours, weigh))).toEqual(refused(401, 'not-signed-in'));
  });
});

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Answer, type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, aQuote, bodyOf, type TestBuy } from '../support/buy.ts';
import { fingerprintOf, refusalOf, refused } from '../support/fingerprint.ts';
import { aHousehold } from '../support/household.ts';
import { LEAST_DUTY } from '../support/least-duty.ts';
import { addressOf } from '../support/mounted-routes.ts';
import { bodiesOf } from '../support/route-bodies.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { aWorld, type TestWorld } from '../support/world.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let world: TestWorld;
let treasurer: Caller;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  world = await aWorld(app, storehouse);
  treasurer = world.buy.treasurer;
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const NOTHING = '018f0000-0000-7000-8000-000000000000';
const NO_IDS = new Proxy<Record<string, string>>({}, { get: () => NOTHING });

/** Commands that move neither money nor mass: sent twice, the second says that it is there already or does nothing new. */
const WITHOUT_KEY = [
  'POST /background-work/:work/retry',
  'POST /calendar-feeds',
  'POST /calendar-feeds/:feed/renewal',
  'POST /notices',
  'POST /rules',
  'POST /invitations',
  'POST /persons/:person/duties',
  'POST /households',
  'POST /households/:household/eaters',
  'POST /households/:household/helpers',
  'POST /foods',
  'POST /container-kinds',
  'POST /packing-sessions/:session/settlement-previews',
  'POST /suppliers',
  'POST /supplies',
  'POST /buys',
  'POST /buys/:buy/lines',
  'POST /buys/:buy/stage',
  'POST /buys/:buy/quotes',
  'POST /buys/:buy/quotes/:quote/withdrawal',
  'POST /buys/:buy/preview',
  'POST /bank/previews',
  'POST /import-trials',
  'POST /deliveries/:delivery/finish',
  'POST /bags/:bag/holds',
  'POST /holds',
  'POST /holds/:hold/release-request',
  'POST /holds/:hold/release',
  'POST /buys/:buy/landing',
  'POST /buys/:buy/pick-ups',
  'POST /equipment',
  'POST /equipment/:item/bookings',
  'POST /equipment/:item/waiting',
  'POST /equipment-service-times',
  'POST /bookings/:booking/cancelling',
  'POST /bookings/:booking/acceptance',
  'POST /bookings/:booking/not-fetched',
  'POST /bookings/:booking/relay-answer',
  'POST /bookings/:booking/swap',
  'POST /gift-matchings',
  'POST /pantries',
  'POST /offers/:offer/pass',
  'POST /offers/:offer/withdrawal',
  'POST /intakes/:lot/donor-readings',
  'POST /places',
  'POST /places/:place/log-previews',
  'POST /seal-machines',
  'POST /seal-holds/settling',
  'POST /packing-sessions',
  'POST /packing-sessions/:session/calling-off',
  'POST /packing-sessions/:session/start',
  'POST /packing-sessions/:session/slots',
  'POST /packing-sessions/:session/slots/:slot/giving-back',
  'POST /packing-sessions/:session/bags',
  'POST /packing-sessions/:session/absorber-packs/:pack/shutting',
];
const WITH_KEY = Object.keys(LEAST_DUTY).filter(
  (route) => route.startsWith('POST ') && !WITHOUT_KEY.includes(route),
);
const oneWho = (route: string): Caller =>
  (LEAST_DUTY[route] ?? '').includes('coordinator') ? storehouse.coordinator : treasurer;

describe('an Idempotency-Key', () => {
  test.for(['', '   ', 'k'.repeat(201)])(
    'is needed by each command that moves money or mass, and “%s” is none',
    async (key) => {
      const before = await fingerprintOf(app);
      const codes = [];
      for (const route of WITH_KEY) {
        const { rest } = addressOf(route, world.ids);
        const body = bodiesOf(world.ids)[route];
        const answer = await oneWho(route).post(at(rest), body, { 'Idempotency-Key': key });
        codes.push(`${route}: ${answer.status} ${answer.body.code}`);
      }
      expect(codes).toEqual(WITH_KEY.map((route) => `${route}: 400 idempotency-key-missing`));
      expect(await fingerprintOf(app)).toEqual(before);
    },
  );

  test('is not asked for by any other', async () => {
    for (const route of WITHOUT_KEY) {
      const { rest } = addressOf(route, NO_IDS);
      const answer = await oneWho(route).post(at(rest), bodiesOf(NO_IDS)[route], { 'Idempotency-Key': '' });
      expect([route, answer.body.code]).not.toEqual([route, 'idempotency-key-missing']);
    }
  });

  const gift = { minorUnits: 700, till: 'bank', note: 'a gift' };
  const receive = (body: unknown, key: string, path = '/fund-receipts', headers = {}) =>
    treasurer.post(at(path), body, { 'Idempotency-Key': key, ...headers });

  test('gives a retry the first answer back, and says that it is a retry', async () => {
    const first = await receive(gift, 'once');
    const before = await fingerprintOf(app);
    const again = await receive(gift, 'once');
    expect([again.status, again.body]).toEqual([first.status, first.body]);
    expect([first, again].map(({ headers }) => headers.get('Idempotent-Replay'))).toEqual([null, 'true']);
    expect(await fingerprintOf(app)).toEqual(before);
  });

  test('of one body is refused for another, for another address, and for another household', async () => {
    await receive(gift, 'mine');
    const refusal = refused(409, 'idempotency-key-reused');
    expect(await refusalOf(app, () => receive({ ...gift, minorUnits: 701 }, 'mine'))).toEqual(refusal);
    expect(await refusalOf(app, () => receive(gift, 'mine', '/fund-spendings'))).toEqual(refusal);
    const { Dell, Birchall } = world.buy.households;
    const grant = { personId: Birchall.personId, days: 5 };
    bodyOf(await Dell.caller.post(at(`/households/${Dell.householdId}/helpers`), grant), 201);
    const rice = { ...bodiesOf(world.ids)['POST /stock'], foodId: world.ids.rice };
    bodyOf(await receive(rice, 'stock', '/stock'), 201);
    const helping = { 'Sheafbook-For-Household': Dell.householdId };
    expect(await refusalOf(app, () => receive(rice, 'stock', '/stock', helping))).toEqual(refusal);
  });

  test('belongs to a login: another’s is another key', async () => {
    const second = await aHousehold(app, storehouse, 'Eskdale', { duties: ['treasurer'] });
    const key = { 'Idempotency-Key': 'a key of two' };
    const answers = [
      await treasurer.post(at('/fund-receipts'), gift, key),
      await second.caller.post(at('/fund-receipts'), gift, key),
    ];
    expect(answers.map(({ status }) => status)).toEqual([201, 201]);
    expect(answers[0]?.body.entryId).not.toBe(answers[1]?.body.entryId);
  });

  test('of a refusal is free again: a refusal is not kept', async () => {
    const cash = { minorUnits: 100, till: 'cash', note: '' };
    const spend = () => receive(cash, 'free again', '/fund-spendings');
    expect(await refusalOf(app, spend)).toMatchObject({
      status: 409,
      code: 'not-enough-left',
      isUnchanged: true,
    });
    bodyOf(await receive({ ...cash, minorUnits: 100 }, 'filling the tin'), 201);
    expect((await spend()).status).toBe(201);
  });
});

describe('a version that somebody else has overtaken', () => {
  let planned: TestBuy & { otherQuoteId: string };
  beforeAll(async () => {
    const made = await aBuy(app, storehouse, { isOpen: false });
    planned = { ...made, otherQuoteId: await aQuote(storehouse, made, { reference: 'another' }) };
  });

  /** For each route with a version: where a stale one is sent to, by whom, and what else the body says. */
  const cases = (): Record<string, { rest: string; caller?: Caller; change?: Record<string, unknown> }> => {
    const { gathering, buy, ids } = world;
    const { Dell } = buy.households;
    const home = `/households/${Dell.householdId}`;
    const dell = Dell.caller;
    const [lineId] = Object.values(planned.lines);
    const plan = `/buys/${planned.buyId}`;
    const offers = [{ buyLineId: lineId, bagSize: 50, breaks: [{ fromBags: 1, bagPriceMinorUnits: 3600 }] }];
    return {
      'PUT /': { rest: '' },
      'POST /rules': { rest: '/rules', change: { rulesVersion: 77 } },
      'PUT /households/:household': { rest: home, caller: dell },
      'PUT /households/:household/contact': { rest: `${home}/contact`, caller: dell },
      'PUT /households/:household/eaters/:eater': { rest: `${home}/eaters/${ids.eater}`, caller: dell },
      'PUT /households/:household/plan': { rest: `${home}/plan`, caller: dell },
      'PUT /telling-wishes': { rest: '/telling-wishes' },
      'PUT /foods/:food': { rest: `/foods/${ids.food}` },
      'PUT /foods/:food/retirement': { rest: `/foods/${ids.food}/retirement` },
      'PUT /container-kinds/:kind': { rest: `/container-kinds/${ids.kind}` },
      'PUT /supplies/:supply': { rest: `/supplies/${ids.supply}` },
      'PUT /suppliers/:supplier': { rest: `/suppliers/${ids.supplier}` },
      'PUT /buys/:buy': { rest: plan },
      'PUT /buys/:buy/lines/:line': { rest: `${plan}/lines/${lineId}` },
      'PUT /buys/:buy/quotes/:quote': { rest: `${plan}/quotes/${planned.quoteId}`, change: { offers } },
      'POST /buys/:buy/quotes/:quote/withdrawal': {
        rest: `${plan}/quotes/${planned.otherQuoteId}/withdrawal`,
      },
      'PUT /buys/:buy/lines/:line/quote': {
        rest: `${plan}/lines/${lineId}/quote`,
        change: { quoteId: planned.quoteId },
      },
      'PUT /buys/:buy/pledges/:pledge': {
        rest: `/buys/${gathering.buyId}/pledges/${ids.pledge}`,
        caller: dell,
      },
      'POST /buys/:buy/pledges/:pledge/withdrawal': {
        rest: `/buys/${gathering.buyId}/pledges/${ids.pledge}/withdrawal`,
        caller: dell,
      },
      'PUT /bags/:bag': { rest: `/bags/${ids.bag}` },
      'PUT /bags/:bag/weight': { rest: `/bags/${ids.bag}/weight`, change: { buyId: buy.buyId } },
      'PUT /pick-ups/:pickUp': { rest: `/pick-ups/${ids.pickUp}`, caller: dell },
      'POST /households/:household/leaving': { rest: `${home}/leaving`, caller: dell },
      'PUT /equipment/:item': { rest: `/equipment/${ids.item}` },
      'PUT /equipment-units/:unit': { rest: `/equipment-units/${ids.unit}` },
      'POST /bookings/:booking/swap': { rest: `/bookings/${ids.booking}/swap`, caller: dell },
      'POST /gift-manifests/:manifest/receipt': { rest: `/gift-manifests/${ids.manifest}/receipt` },
      'POST /gift-manifests/:manifest/receipt-undoing': {
        rest: `/gift-manifests/${ids.manifest}/receipt-undoing`,
      },
      'POST /gift-manifests/:manifest/calling-off': { rest: `/gift-manifests/${ids.manifest}/calling-off` },
      'PUT /pantries/:pantry': { rest: `/pantries/${ids.pantry}` },
      'PUT /pantries/:pantry/card': { rest: `/pantries/${ids.pantry}/card` },
      'PUT /places/:place': { rest: `/places/${ids.place}`, caller: dell },
      'PUT /packing-sessions/:session': { rest: `/packing-sessions/${ids.session}` },
    };
  };

  test('is refused with the newer state, wherever an edit carries one', async () => {
    const sent = cases();
    for (const [route, { rest, caller = storehouse.coordinator, change = {} }] of Object.entries(sent)) {
      const body = { ...bodiesOf(world.ids)[route], version: 77, ...change };
      if ('rulesVersion' in change) Reflect.deleteProperty(body, 'version');
      const call = (): Promise<Answer> =>
        route.startsWith('PUT') ? caller.put(at(rest), body) : caller.post(at(rest), body);
      expect([route, await refusalOf(app, call)]).toEqual([route, refused(409, 'stale-version')]);
      expect([route, typeof (await call()).body.newer]).toEqual([route, 'object']);
    }
  });

  /** These carry a version too; the buy and the delivery they need are made in the tests of their own features. */
  const ELSEWHERE = [
    'PUT /buys/:buy/quotes/:quote/confirmed-terms',
    'PUT /deliveries/:delivery/counts',
    'POST /deliveries/:delivery/finish',
    'PUT /buys/:buy/landing-plan',
    'POST /bookings/:booking/relay-answer',
  ];

  test('is carried by every edit but what is replaced whole: one’s own wishes, short lists, a reading of a scale', () => {
    const versioned = Object.entries(bodiesOf(world.ids)).flatMap(([route, body]) =>
      'version' in body || 'rulesVersion' in body ? [route] : [],
    );
    expect([...Object.keys(cases()), ...ELSEWHERE].toSorted()).toEqual(versioned.toSorted());
    const edits = Object.keys(LEAST_DUTY).filter((route) => route.startsWith('PUT '));
    expect(edits.filter((route) => !versioned.includes(route)).toSorted()).toEqual([
      'PUT /buys/:buy/lines/:line/container-wishes',
      'PUT /containers/:container/gift-facts',
      'PUT /containers/:container/treatment',
      'PUT /equipment/:item/parts',
      'PUT /holds/:hold/answer',
      'PUT /notices/:notice/reading',
      'PUT /packing-sessions/:session/hand',
      'PUT /packing-sessions/:session/hands/:person',
      'PUT /packing-sessions/:session/left',
      'PUT /packing-sessions/:session/slots/:slot/arrival',
      'PUT /packing-sessions/:session/wishes',
      'PUT /persons/:person/duties/:duty/planned-end',
      'PUT /places/:place/months',
      'PUT /seam-limits/:kind',
      'PUT /supply-prices',
    ]);
  });
});

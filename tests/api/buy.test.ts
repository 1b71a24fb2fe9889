import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { booksOf } from '../support/books-text.ts';
import { aBuy, aPledge, aQuote, bodyOf, foodIdsOf, openForPledges } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let foodIds: Record<string, string>;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  foodIds = await foodIdsOf(storehouse);
});
afterAll(() => app.close());

let names = 0;
const aWish = (changed: Record<string, unknown> = {}) => ({
  name: `Plan ${++names}`,
  gatheringClosesAt: '2026-09-20T23:00:00Z',
  orderOn: '2026-09-24',
  lines: [{ foodId: foodIds['wheat-hard-white'] }],
  ...changed,
});
const plan = (changed: Record<string, unknown> = {}) =>
  storehouse.coordinator.post(`${storehouse.path}/buys`, aWish(changed));
const fieldsOf = (answer: { body: { fields: { field: string }[] } }) =>
  answer.body.fields.map(({ field }) => field);

test('a planned buy says where it stands and what its next stage lacks', async () => {
  const wish = { landingOn: '2026-10-08', landingPlace: 'the grange hall', lines: [] };
  const bare = bodyOf(await plan({ name: 'Autumn grain', ...wish }), 201);
  expect(bare).toMatchObject({
    name: 'Autumn grain',
    stage: 'planning',
    gatheringClosesAt: '2026-09-20T23:00:00.000Z',
    landingPlace: 'the grange hall',
    version: 1,
    next: { to: 'gathering', missing: [{ code: 'no-food-line' }] },
  });
  const line = { foodId: foodIds['wheat-hard-white'], massUnit: 'lb', stepUnits: 5 };
  const lined = bodyOf(
    await storehouse.coordinator.post(`${storehouse.path}/buys/${bare.id}/lines`, line),
    201,
  );
  expect(lined.lines).toMatchObject([
    { food: { foodCode: 'wheat-hard-white' }, massUnit: 'lb', stepUnits: 5 },
  ]);
  expect(lined.next.missing).toEqual([
    { code: 'no-quote', words: 'No food of the buy has a quote that stands.' },
  ]);
});

test('every member reads a buy; buys are listed newest first, by stage, page and CSV', async () => {
  const aSecondLater = () => new Date(app.clock.now.getTime() + 1000);
  app.clock.now = aSecondLater();
  const older = bodyOf(await plan(), 201);
  app.clock.now = aSecondLater();
  const newer = bodyOf(await plan(), 201);
  const own = `${storehouse.path}/buys`;
  const first = bodyOf(await birchall.caller.get(`${own}?stage=planning&limit=1`));
  expect(first.buys[0].id).toBe(newer.id);
  const second = bodyOf(await birchall.caller.get(`${own}?stage=planning&limit=1&after=${first.next}`));
  expect(second.buys[0].id).toBe(older.id);
  expect((await birchall.caller.get(`${own}?format=csv`)).body).toContain(newer.name);
  expect(bodyOf(await birchall.caller.get(`${own}/${newer.id}`)).stage).toBe('planning');
  expect(fieldsOf(await birchall.caller.get(`${own}?after=last`))).toEqual(['after']);
});

test.for([
  { field: 'name', wish: { name: ' ' }, because: 'a buy has a name' },
  {
    field: 'gatheringClosesAt',
    wish: { gatheringClosesAt: '2026-09-31T12:00:00Z' },
    because: 'September has 30 days',
  },
  { field: 'gatheringClosesAt', wish: { gatheringClosesAt: '2026-09-20' }, because: 'a day has no hour' },
  { field: 'gatheringClosesAt', wish: { gatheringClosesAt: '2026-08-01T12:00:00Z' }, because: 'it is over' },
  { field: 'orderOn', wish: { orderOn: '2026-02-30' }, because: 'February has 28 days' },
  { field: 'orderOn', wish: { orderOn: '2026-09-19' }, because: 'pledges still come in then' },
  { field: 'landingOn', wish: { landingOn: '2026-09-23' }, because: 'nothing lands unordered' },
  {
    field: 'lines.0.stepUnits',
    wish: { lines: [{ foodId: '', stepUnits: 0 }] },
    because: 'a step is something',
  },
  {
    field: 'lines.0.massUnit',
    wish: { lines: [{ foodId: '', massUnit: 'stone' }] },
    because: 'units are lb and kg',
  },
  {
    field: 'lines.0.commonCapGrams',
    wish: { lines: [{ foodId: '', commonCapGrams: -1 }] },
    because: 'no cap is below 0',
  },
  { field: 'stage', wish: { stage: 'ordered' }, because: 'a buy begins at its beginning' },
])('a buy is refused at $field: $because', async ({ field, wish }) => {
  const before = await booksOf(app);
  const answer = await plan(wish);
  expect([answer.status, answer.body.code]).toEqual([400, 'invalid-input']);
  expect(fieldsOf(answer)).toContain(field);
  expect(await booksOf(app)).toBe(before);
});

test('a buy has each food once, and foods of its own storehouse only', async () => {
  const before = await booksOf(app);
  const twice = await plan({ lines: [{ foodId: foodIds.rye }, { foodId: foodIds.rye }] });
  expect([twice.status, twice.body.code, fieldsOf(twice)]).toEqual([
    409,
    'already-there',
    ['lines.1.foodId'],
  ]);
  const other = await anotherStorehouse(app);
  const foreign = await plan({ lines: [{ foodId: (await foodIdsOf(other)).rye }] });
  expect([foreign.status, foreign.body.code, fieldsOf(foreign)]).toEqual([
    404,
    'thing-not-found',
    ['lines.0.foodId'],
  ]);
  expect(await booksOf(app)).not.toBe(before); // the other storehouse was founded
  const buy = bodyOf(await plan(), 201);
  const elsewhere = await other.coordinator.get(`${other.path}/buys/${buy.id}`);
  expect([elsewhere.status, elsewhere.body.code]).toEqual([404, 'thing-not-found']);
  const inside = await other.coordinator.post(`${storehouse.path}/buys/${buy.id}/stage`, { to: 'gathering' });
  expect([inside.status, inside.body.code]).toEqual([404, 'storehouse-not-found']);
});

test('two buys never share a name', async () => {
  bodyOf(await plan({ name: 'Winter beans' }), 201);
  const again = await plan({ name: 'Winter beans' });
  expect([again.status, again.body.code, fieldsOf(again)]).toEqual([409, 'already-there', ['name']]);
});

test('a buy opens for pledges once it has a food with a quote, and each move is written down', async () => {
  const buy = await aBuy(app, storehouse, { isOpen: false });
  await openForPledges(storehouse, buy);
  const { moves } = bodyOf(await birchall.caller.get(`${buy.path}/stage-moves`));
  expect(moves).toMatchObject([{ from: 'planning', to: 'gathering', movedAt: app.clock.now.toISOString() }]);
});

test('a gathering buy waits for its bags to be filled, and for a quote when it lost its last', async () => {
  const buy = await aBuy(app, storehouse);
  const codesOf = async () => {
    const { next } = bodyOf(await birchall.caller.get(buy.path));
    return [next.to, ...next.missing.map(({ code }: { code: string }) => code)];
  };
  expect(await codesOf()).toEqual(['fixed', 'fill-not-run']);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/quotes/${buy.quoteId}/withdrawal`, { version: 1 }));
  expect(await codesOf()).toEqual(['fixed', 'no-quote', 'fill-not-run']);
});

test('a buy without a quote stays in planning', async () => {
  const buy = await aBuy(app, storehouse, { quote: null });
  const before = await booksOf(app);
  const refused = await storehouse.coordinator.post(`${buy.path}/stage`, { to: 'gathering' });
  expect([refused.status, refused.body.code]).toEqual([409, 'buy-guard-unmet']);
  expect(refused.body.missing).toEqual([{ code: 'no-quote', words: expect.any(String) }]);
  expect(await booksOf(app)).toBe(before);
});

// Job map 2: gathering closes before the last day of every quote. 23:00 UTC on the 20th is the 20th in Chicago too.
test.for([
  { validUntil: '2026-09-20', opens: false },
  { validUntil: '2026-09-21', opens: true },
])(
  'a quote until $validUntil lets a gathering that closes on the 20th open: $opens',
  async ({ validUntil, opens }) => {
    const buy = await aBuy(app, storehouse, { isOpen: false, quote: { validUntil } });
    const moved = await storehouse.coordinator.post(`${buy.path}/stage`, { to: 'gathering' });
    expect(moved.status).toBe(opens ? 200 : 409);
    if (!opens)
      expect(moved.body.missing).toMatchObject([
        { code: 'quote-lapses-before-close', count: 1, ids: [buy.quoteId] },
      ]);
  },
);

test('the closing day is the storehouse’s own: 03:00 UTC on the 21st is still the 20th in Chicago', async () => {
  const buy = await aBuy(app, storehouse, {
    isOpen: false,
    gatheringClosesAt: '2026-09-21T03:00:00Z',
    quote: { validUntil: '2026-09-21' },
  });
  expect((await storehouse.coordinator.post(`${buy.path}/stage`, { to: 'gathering' })).status).toBe(200);
});

test.for([
  { to: 'fixed', code: 'buy-stage-wrong' },
  { to: 'ordered', code: 'buy-stage-wrong' },
  { to: 'landed', code: 'buy-stage-wrong' },
  { to: 'shared-out', code: 'buy-stage-wrong' },
  { to: 'closed', code: 'buy-stage-wrong' },
  { to: 'planning', code: 'buy-stage-wrong' },
  { to: 'called-off', code: 'invalid-input' },
  { to: 'finished', code: 'invalid-input' },
])('a planned buy does not become $to by a wish', async ({ to, code }) => {
  const buy = await aBuy(app, storehouse, { isOpen: false });
  const before = await booksOf(app);
  const refused = await storehouse.coordinator.post(`${buy.path}/stage`, { to });
  expect([refused.body.code, fieldsOf(refused)]).toEqual([code, ['to']]);
  expect(await booksOf(app)).toBe(before);
});

test('a gathering that should have closed already does not open', async () => {
  const buy = await aBuy(app, storehouse, { isOpen: false, gatheringClosesAt: '2026-09-02T12:00:00Z' });
  const now = app.clock.now;
  app.clock.now = new Date('2026-09-02T12:00:00Z');
  const refused = await storehouse.coordinator.post(`${buy.path}/stage`, { to: 'gathering' });
  app.clock.now = now;
  expect([refused.body.code, fieldsOf(refused)]).toEqual(['deadline-passed', ['gatheringClosesAt']]);
});

test('only the coordinator plans and moves a buy', async () => {
  const buy = await aBuy(app, storehouse, { isOpen: false });
  for (const answer of [
    await birchall.caller.post(`${storehouse.path}/buys`, {}),
    await birchall.caller.put(buy.path, {}),
    await birchall.caller.post(`${buy.path}/lines`, {}),
    await birchall.caller.post(`${buy.path}/stage`, { to: 'gathering' }),
    await birchall.caller.delete(`${buy.path}/lines/${buy.lines['wheat-hard-red-winter']}`),
  ])
    expect([answer.status, answer.body.code]).toEqual([403, 'duty-missing']);
});

test('an edit names the version that was read, and the refused one gets the newer state', async () => {
  const buy = bodyOf(await plan(), 201);
  const path = `${storehouse.path}/buys/${buy.id}`;
  const { lines: _, ...facts } = aWish();
  const edited = bodyOf(
    await storehouse.coordinator.put(path, { ...facts, version: 1, orderOn: '2026-09-26' }),
  );
  expect(edited).toMatchObject({ orderOn: '2026-09-26', version: 2 });
  const stale = await storehouse.coordinator.put(path, { ...facts, version: 1 });
  expect([stale.status, stale.body.code, stale.body.newer.orderOn]).toEqual([
    409,
    'stale-version',
    '2026-09-26',
  ]);
});

test('an open gathering may be prolonged while every quote outlives it, and not beyond', async () => {
  const buy = await aBuy(app, storehouse, { quote: { validUntil: '2026-09-30' } });
  const facts = { name: `Plan ${++names}`, orderOn: '2026-10-03', version: buy.version };
  const beyond = await storehouse.coordinator.put(buy.path, {
    ...facts,
    gatheringClosesAt: '2026-09-30T20:00:00Z',
  });
  expect([beyond.body.code, beyond.body.missing[0].code]).toEqual([
    'buy-guard-unmet',
    'quote-lapses-before-close',
  ]);
  const until = bodyOf(
    await storehouse.coordinator.put(buy.path, { ...facts, gatheringClosesAt: '2026-09-29T20:00:00Z' }),
  );
  expect(until.gatheringClosesAt).toBe('2026-09-29T20:00:00.000Z');
});

test('foods come and go while nobody has pledged', async () => {
  const buy = await aBuy(app, storehouse);
  const rye = { foodId: foodIds.rye, massUnit: 'kg', stepUnits: 1 };
  const added = bodyOf(await storehouse.coordinator.post(`${buy.path}/lines`, rye), 201);
  const ryeLine = added.lines.find((line: { food: { foodCode: string } }) => line.food.foodCode === 'rye');
  expect((await storehouse.coordinator.post(`${buy.path}/lines`, rye)).body.code).toBe('already-there');
  const gone = bodyOf(await storehouse.coordinator.delete(`${buy.path}/lines/${ryeLine.id}`));
  expect(gone.lines).toHaveLength(1);
  const quoted = await storehouse.coordinator.delete(
    `${buy.path}/lines/${buy.lines['wheat-hard-red-winter']}`,
  );
  expect([quoted.status, quoted.body.code]).toEqual([409, 'in-use']);
  await aPledge(birchall.caller, buy, { wanted: 50 });
  const late = await storehouse.coordinator.post(`${buy.path}/lines`, rye);
  expect([late.status, late.body.code]).toEqual([409, 'in-use']);
});

test('the offers of a withdrawn quote go along with the food', async () => {
  const buy = await aBuy(app, storehouse, { foods: ['rye', 'spelt'], quote: null });
  const quoteId = await aQuote(storehouse, buy, { offers: [{ foodCode: 'rye' }, { foodCode: 'spelt' }] });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/quotes/${quoteId}/withdrawal`, { version: 1 }));
  const left = bodyOf(await storehouse.coordinator.delete(`${buy.path}/lines/${buy.lines.rye}`));
  expect(left.lines.map((line: { food: { foodCode: string } }) => line.food.foodCode)).toEqual(['spelt']);
  const { quotes } = bodyOf(await storehouse.coordinator.get(`${buy.path}/quotes`));
  expect(quotes[0].offers).toMatchObject([{ buyLineId: buy.lines.spelt }]);
});

test('the steps of a line stay once someone pledged in them; rule and cap may change until it is fixed', async () => {
  const buy = await aBuy(app, storehouse);
  const lineId = buy.lines['wheat-hard-red-winter'];
  const path = `${buy.path}/lines/${lineId}`;
  const versionOf = async () => bodyOf(await storehouse.coordinator.get(buy.path)).lines[0].version;
  await aPledge(birchall.caller, buy, { wanted: 50 });
  const change = { splitRule: 'equal-awards', commonCapGrams: 11_340 };
  const steps = await storehouse.coordinator.put(path, {
    ...change,
    version: await versionOf(),
    stepUnits: 10,
  });
  expect([steps.body.code, fieldsOf(steps)]).toEqual(['in-use', ['stepUnits']]);
  const version = await versionOf();
  const changed = bodyOf(await storehouse.coordinator.put(path, { ...change, version, stepUnits: 5 }));
  expect(changed.lines[0]).toMatchObject({ ...change, version: version + 1 });
  const stale = await storehouse.coordinator.put(path, { ...change, version, stepUnits: 5 });
  expect([stale.body.code, stale.body.newer]).toEqual([
    'stale-version',
    expect.objectContaining({ version: version + 1 }),
  ]);
});

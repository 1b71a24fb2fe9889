import { gramsOfPhysicalUnit } from '@sheafbook/units';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Answer, openTestApp, type TestApp } from '../support/app.ts';
import { booksOf } from '../support/books-text.ts';
import { aBuy, aPledge, aQuote, bodyOf, pledgeBody, type TestBuy } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

const STARTS_AT = '2026-09-01T15:00:00Z';
const CLOSES_AT = '2026-09-20T23:00:00Z';
const lb = (count: number) => gramsOfPhysicalUnit(count, 'lb');

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let corran: TestHousehold;
let buy: TestBuy;
beforeAll(async () => {
  app = await openTestApp(STARTS_AT);
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  corran = await aHousehold(app, storehouse, 'Corran');
  buy = await aBuy(app, storehouse, { foods: ['wheat-hard-red-winter', 'rye'] });
});
afterAll(() => app.close());

const fieldsOf = (answer: Answer): string[] =>
  answer.body.fields.map(({ field }: { field: string }) => field);
const pledges = (at: { path: string }) => `${at.path}/pledges`;

/** Runs at another time and puts the clock back. */
async function at<Result>(instant: string, act: () => Promise<Result>): Promise<Result> {
  const { now } = app.clock;
  app.clock.now = new Date(instant);
  try {
    return await act();
  } finally {
    app.clock.now = now;
  }
}

test('a household sees its own pledge whole, with what was typed and its ceiling', async () => {
  const own = await aBuy(app, storehouse);
  const pledge = await aPledge(birchall.caller, own, {
    wanted: 60,
    least: 50,
    most: 100,
    ceilingMinorUnits: 85,
  });
  expect(pledge).toMatchObject({
    householdId: birchall.householdId,
    leastGrams: 22_680, // 50 × 453.59237 = 22,679.6
    wantedGrams: 27_216, // 60 × 453.59237 = 27,215.5
    mostGrams: 45_359, // 100 × 453.59237 = 45,359.2
    ceilingMinorUnits: 85,
    ceilingPerGrams: 454,
    asTyped: '60 lb',
    pledgedAt: '2026-09-01T15:00:00.000Z',
    rankedAt: '2026-09-01T15:00:00.000Z',
    enteredBy: birchall.personId,
    isEnteredFor: false,
    version: 1,
  });
  expect(bodyOf(await birchall.caller.get(pledges(own))).own).toEqual([pledge]);
});

const grams = (leastGrams: unknown, wantedGrams: unknown, mostGrams: unknown) => ({
  leastGrams,
  wantedGrams,
  mostGrams,
});
test.for([
  { field: 'wantedGrams', wish: grams(0, 0, lb(5)), because: 'zero' },
  { field: 'leastGrams', wish: grams(-lb(5), lb(5), lb(5)), because: 'negative' },
  { field: 'wantedGrams', wish: grams(0, 2268.5, lb(5)), because: 'fractional' },
  { field: 'mostGrams', wish: grams(0, lb(5), 2 ** 53), because: 'enormous' },
  { field: 'mostGrams', wish: grams(0, lb(5), 1_000_000_001), because: 'more than a thousand tonnes' },
  { field: 'mostGrams', wish: grams(0, lb(5), undefined), because: 'missing' },
  { field: 'wantedGrams', wish: grams(0, '2268', lb(5)), because: 'a text' },
  { field: 'ceilingPerGrams', wish: { ceilingMinorUnits: 85 }, because: 'a ceiling for no mass' },
  {
    field: 'ceilingMinorUnits',
    wish: { ceilingMinorUnits: 0, ceilingPerGrams: 454 },
    because: 'a ceiling of nothing',
  },
  { field: 'buyLineId', wish: { buyLineId: 'wheat' }, because: 'no id' },
  { field: 'householdId', wish: { householdId: 'x' }, because: 'an unknown field' },
])('a pledge is refused at $field: $because', async ({ field, wish }) => {
  const before = await booksOf(app);
  const answer = await birchall.caller.post(pledges(buy), { ...pledgeBody(buy, { wanted: 5 }), ...wish });
  expect([answer.status, answer.body.code]).toEqual([400, 'invalid-input']);
  expect(fieldsOf(answer)).toContain(field);
  expect(await booksOf(app)).toBe(before);
});

test.for([
  { least: 20, wanted: 10, most: 30, fields: ['leastGrams'] },
  { least: 10, wanted: 30, most: 20, fields: ['mostGrams'] },
  { least: 30, wanted: 20, most: 10, fields: ['leastGrams', 'mostGrams'] },
])('a pledge of $least to $wanted to $most is out of order', async ({ fields, ...masses }) => {
  const before = await booksOf(app);
  const answer = await birchall.caller.post(pledges(buy), pledgeBody(buy, masses));
  expect([answer.status, answer.body.code, fieldsOf(answer)]).toEqual([422, 'pledge-not-in-order', fields]);
  expect(await booksOf(app)).toBe(before);
});

test('a mass between two steps names the nearest ones, in the words and grams of the line', async () => {
  const before = await booksOf(app);
  const answer = await birchall.caller.post(
    pledges(buy),
    pledgeBody(buy, { least: 45, wanted: 47, most: 50 }),
  );
  expect([answer.status, answer.body.code]).toEqual([422, 'pledge-off-step']);
  expect(answer.body.fields).toEqual([
    { field: 'wantedGrams', message: 'The nearest masses are 45 lb (20412 g) and 50 lb (22680 g).' },
  ]);
  expect(answer.body.nearest).toEqual([
    { field: 'wantedGrams', below: { units: 45, grams: 20_412 }, above: { units: 50, grams: 22_680 } },
  ]);
  expect(await booksOf(app)).toBe(before);
});

test('6.14: grams that no whole count of pounds weighs are off step: 50 × 1 lb rounded singly is 22,700 g', async () => {
  // ledger-notes 6.14; a 50 lb bag is 22,680 g.
  const answer = await birchall.caller.post(pledges(buy), {
    ...pledgeBody(buy, { wanted: 50 }),
    mostGrams: 22_700,
  });
  expect(answer.body.nearest).toEqual([
    { field: 'mostGrams', below: { units: 50, grams: 22_680 }, above: { units: 55, grams: 24_948 } },
  ]);
});

test('a line in kilograms has its own steps', async () => {
  const own = await aBuy(app, storehouse, {
    massUnit: 'kg',
    stepUnits: 2,
    quote: { offers: [{ bagSize: 25 }] },
  });
  const off = await birchall.caller.post(pledges(own), pledgeBody(own, { wanted: 5, massUnit: 'kg' }));
  expect(off.body.nearest[0]).toMatchObject({
    below: { units: 4, grams: 4000 },
    above: { units: 6, grams: 6000 },
  });
  await aPledge(birchall.caller, own, { wanted: 6, massUnit: 'kg' });
});

test('a whole-bag pledge counts in the bags of the quote that was chosen', async () => {
  const own = await aBuy(app, storehouse);
  await aQuote(storehouse, own, { offers: [{ bagSize: 25 }] });
  bodyOf(
    await storehouse.coordinator.put(`${own.path}/lines/${own.lines['wheat-hard-red-winter']}/quote`, {
      quoteId: own.quoteId,
      version: bodyOf(await storehouse.coordinator.get(own.path)).lines[0].version,
    }),
  );
  const off = await birchall.caller.post(pledges(own), pledgeBody(own, { wanted: 75, wholeBags: true }));
  expect([off.status, off.body.code]).toEqual([422, 'pledge-off-step']);
  expect(off.body.nearest[0]).toMatchObject({ below: { units: 50 }, above: { units: 100, grams: 45_359 } });
  await aPledge(birchall.caller, own, { least: 0, wanted: 50, most: 150, wholeBags: true });
});

test('without a chosen quote any offered bag will do, but one size for least, wanted and most', async () => {
  const own = await aBuy(app, storehouse, { quote: { offers: [{ bagSize: 50 }, { bagSize: 40 }] } });
  const lineId = own.lines['wheat-hard-red-winter'];
  const { version } = bodyOf(await storehouse.coordinator.get(own.path)).lines[0];
  bodyOf(await storehouse.coordinator.put(`${own.path}/lines/${lineId}/quote`, { quoteId: null, version }));
  const mixed = await birchall.caller.post(
    pledges(own),
    pledgeBody(own, { least: 40, wanted: 50, most: 80, wholeBags: true }),
  );
  expect([mixed.status, mixed.body.code]).toEqual([422, 'pledge-off-step']);
  await aPledge(birchall.caller, own, { least: 40, wanted: 80, most: 120, wholeBags: true });
});

test('whole bags can’t be pledged while nobody says how large a bag is', async () => {
  const own = await aBuy(app, storehouse);
  bodyOf(await storehouse.coordinator.post(`${own.path}/quotes/${own.quoteId}/withdrawal`, { version: 1 }));
  const answer = await birchall.caller.post(pledges(own), pledgeBody(own, { wanted: 50, wholeBags: true }));
  expect([answer.body.code, fieldsOf(answer)]).toEqual(['quote-not-valid', ['wholeBags']]);
});

test('a substitute is another food of the same buy', async () => {
  const body = pledgeBody(buy, { wanted: 10 });
  const itself = await birchall.caller.post(pledges(buy), { ...body, substituteLineId: body.buyLineId });
  expect([itself.status, fieldsOf(itself)]).toEqual([400, ['substituteLineId']]);
  const other = await aBuy(app, storehouse);
  const elsewhere = { ...body, substituteLineId: other.lines['wheat-hard-red-winter'] };
  const foreign = await birchall.caller.post(pledges(buy), elsewhere);
  expect([foreign.status, foreign.body.code, fieldsOf(foreign)]).toEqual([
    404,
    'thing-not-found',
    ['substituteLineId'],
  ]);
  const line = await birchall.caller.post(pledges(buy), {
    ...body,
    buyLineId: other.lines['wheat-hard-red-winter'],
  });
  expect([line.status, fieldsOf(line)]).toEqual([404, ['buyLineId']]);
  const own = await aPledge(corran.caller, buy, { wanted: 10, substitute: 'rye' });
  expect(own.substituteLineId).toBe(buy.lines.rye);
});

test('a household pledges once for a food', async () => {
  const own = await aBuy(app, storehouse);
  await aPledge(birchall.caller, own, { wanted: 50 });
  const before = await booksOf(app);
  const again = await birchall.caller.post(pledges(own), pledgeBody(own, { wanted: 5 }));
  expect([again.status, again.body.code, fieldsOf(again)]).toEqual([409, 'already-pledged', ['buyLineId']]);
  expect(await booksOf(app)).toBe(before);
});

test('a retry of a pledge gets the first answer, and its key with another body is refused', async () => {
  const own = await aBuy(app, storehouse);
  const headers = { 'Idempotency-Key': 'pledge-of-wheat' };
  const first = await birchall.caller.post(pledges(own), pledgeBody(own, { wanted: 50 }), headers);
  const before = await booksOf(app);
  const retry = await birchall.caller.post(pledges(own), pledgeBody(own, { wanted: 50 }), headers);
  expect([retry.status, retry.body]).toEqual([201, first.body]);
  const other = await birchall.caller.post(pledges(own), pledgeBody(own, { wanted: 55 }), headers);
  expect([other.status, other.body.code]).toEqual([409, 'idempotency-key-reused']);
  const missing = await corran.caller.post(pledges(own), pledgeBody(own, { wanted: 50 }), {
    'Idempotency-Key': '',
  });
  expect([missing.status, missing.body.code]).toEqual([400, 'idempotency-key-missing']);
  expect(await booksOf(app)).toBe(before);
});

test('nobody pledges in a buy that is planned', async () => {
  const own = await aBuy(app, storehouse, { isOpen: false });
  const before = await booksOf(app);
  const answer = await birchall.caller.post(pledges(own), pledgeBody(own, { wanted: 50 }));
  expect([answer.status, answer.body.code, answer.body.stage]).toEqual([409, 'buy-stage-wrong', 'planning']);
  expect(await booksOf(app)).toBe(before);
});

test('a pledge after the deadline is refused, from the very instant', async () => {
  const own = await aBuy(app, storehouse);
  await at('2026-09-20T22:59:59.999Z', () => aPledge(birchall.caller, own, { wanted: 50 }));
  const before = await booksOf(app);
  const late = await at(CLOSES_AT, () => corran.caller.post(pledges(own), pledgeBody(own, { wanted: 50 })));
  expect([late.status, late.body.code, fieldsOf(late)]).toEqual([409, 'deadline-passed', ['wantedGrams']]);
  expect(await booksOf(app)).toBe(before);
});

test('after the deadline a pledge can shrink and be withdrawn, and not grow in any way', async () => {
  const own = await aBuy(app, storehouse, { foods: ['wheat-hard-red-winter', 'rye'] });
  const pledge = await aPledge(birchall.caller, own, { least: 20, wanted: 50, most: 60 });
  const path = `${pledges(own)}/${pledge.id}`;
  const change = (
    version: number,
    masses: { least: number; wanted: number; most: number; substitute?: string },
  ) => {
    const { buyLineId: _, ...body } = pledgeBody(own, masses);
    return at('2026-09-21T09:00:00Z', () => birchall.caller.put(path, { ...body, version }));
  };
  for (const [field, masses] of [
    ['leastGrams', { least: 25, wanted: 50, most: 60 }],
    ['wantedGrams', { least: 20, wanted: 55, most: 60 }],
    ['mostGrams', { least: 20, wanted: 50, most: 65 }],
    ['substituteLineId', { least: 20, wanted: 50, most: 60, substitute: 'rye' }],
  ] as const) {
    const grown = await change(1, masses);
    expect([grown.body.code, fieldsOf(grown)]).toEqual(['deadline-passed', [field]]);
  }
  const shrunk = bodyOf(await change(1, { least: 0, wanted: 40, most: 60 }));
  expect(shrunk).toMatchObject({ wantedGrams: lb(40), version: 2, rankedAt: '2026-09-01T15:00:00.000Z' });
  const withdrawn = await at('2026-09-21T09:00:00Z', () =>
    birchall.caller.post(`${path}/withdrawal`, { version: 2 }),
  );
  expect(bodyOf(withdrawn).isWithdrawn).toBe(true);
});

// Job map 18: late edits of a pledge keep the first time unless wanted or most rises.
test.for([
  { to: { least: 20, wanted: 50, most: 60 }, keeps: true, because: 'nothing rose' },
  { to: { least: 30, wanted: 50, most: 60 }, keeps: true, because: 'only the least rose' },
  { to: { least: 20, wanted: 40, most: 60 }, keeps: true, because: 'the wanted fell' },
  { to: { least: 20, wanted: 55, most: 60 }, keeps: false, because: 'the wanted rose' },
  { to: { least: 20, wanted: 40, most: 65 }, keeps: false, because: 'the most rose' },
])('a changed pledge keeps its rank ($keeps): $because', async ({ to, keeps }) => {
  const own = await aBuy(app, storehouse);
  const pledge = await aPledge(birchall.caller, own, { least: 20, wanted: 50, most: 60 });
  const { buyLineId: _, ...body } = pledgeBody(own, to);
  const later = '2026-09-05T08:00:00.000Z';
  const changed = await at(later, () =>
    birchall.caller.put(`${pledges(own)}/${pledge.id}`, { ...body, version: 1 }),
  );
  expect(bodyOf(changed)).toMatchObject({
    pledgedAt: pledge.pledgedAt,
    rankedAt: keeps ? pledge.rankedAt : later,
    version: 2,
  });
});

test('a change names the version that was read, and the refused one gets the newer state', async () => {
  const own = await aBuy(app, storehouse);
  const pledge = await aPledge(birchall.caller, own, { wanted: 50, ceilingMinorUnits: 90 });
  const { buyLineId: _, ...body } = pledgeBody(own, { wanted: 60 });
  const path = `${pledges(own)}/${pledge.id}`;
  const changed = bodyOf(await birchall.caller.put(path, { ...body, version: 1 }));
  expect([changed.wantedGrams, changed.ceilingMinorUnits]).toEqual([lb(60), null]);
  const before = await booksOf(app);
  const stale = await birchall.caller.put(path, { ...body, version: 1 });
  expect([stale.status, stale.body.code, stale.body.newer]).toEqual([409, 'stale-version', changed]);
  expect((await birchall.caller.post(`${path}/withdrawal`, { version: 1 })).body.code).toBe('stale-version');
  expect(await booksOf(app)).toBe(before);
});

test('a withdrawn pledge is gone for good, and the household may pledge anew with a new rank', async () => {
  const own = await aBuy(app, storehouse);
  const pledge = await aPledge(birchall.caller, own, { wanted: 50, ceilingMinorUnits: 90 });
  const path = `${pledges(own)}/${pledge.id}`;
  bodyOf(await birchall.caller.post(`${path}/withdrawal`, { version: 1 }));
  const { buyLineId: _, ...body } = pledgeBody(own, { wanted: 60 });
  const changed = await birchall.caller.put(path, { ...body, version: 2 });
  expect([changed.status, changed.body.code]).toEqual([404, 'thing-not-found']);
  expect(bodyOf(await birchall.caller.get(pledges(own))).own).toEqual([]);
  const anew = await at('2026-09-03T08:00:00Z', () => aPledge(birchall.caller, own, { wanted: 50 }));
  expect(anew.rankedAt).toBe('2026-09-03T08:00:00.000Z');
});

test('nobody touches another household’s pledge, not even the coordinator', async () => {
  const own = await aBuy(app, storehouse);
  const pledge = await aPledge(birchall.caller, own, { wanted: 50 });
  const { buyLineId: _, ...body } = pledgeBody(own, { wanted: 5 });
  const before = await booksOf(app);
  for (const caller of [corran.caller, storehouse.coordinator]) {
    const changed = await caller.put(`${pledges(own)}/${pledge.id}`, { ...body, version: 1 });
    expect([changed.status, changed.body.code]).toEqual([403, 'not-your-household']);
    const withdrawn = await caller.post(`${pledges(own)}/${pledge.id}/withdrawal`, { version: 1 });
    expect([withdrawn.status, withdrawn.body.code]).toEqual([403, 'not-your-household']);
  }
  const other = await anotherStorehouse(app);
  const foreign = await other.coordinator.post(
    `${other.path}/buys/${own.buyId}/pledges`,
    pledgeBody(own, { wanted: 5 }),
  );
  expect([foreign.status, foreign.body.code]).toEqual([404, 'thing-not-found']);
  expect((await app.as().post(pledges(own), {})).body.code).toBe('not-signed-in');
  const [withoutOther] = [await booksOf(app)];
  expect(JSON.parse(withoutOther).pledges).toEqual(JSON.parse(before).pledges);
});

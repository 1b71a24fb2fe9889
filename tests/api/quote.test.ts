import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { booksOf } from '../support/books-text.ts';
import { aBuy, aSupplier, bodyOf, type TestBuy } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

const WHEAT = 'wheat-hard-red-winter';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let supplierId: string;
let buy: TestBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  supplierId = await aSupplier(storehouse, 'Heron Mill');
  buy = await aBuy(app, storehouse, { quote: null });
});
afterAll(() => app.close());

let references = 0;
const anOffer = (changed: Record<string, unknown> = {}) => ({
  buyLineId: buy.lines[WHEAT],
  bagSize: 50,
  breaks: [{ fromBags: 1, bagPriceMinorUnits: 2700 }],
  ...changed,
});
const aWish = (changed: Record<string, unknown> = {}) => ({
  supplierId,
  reference: `Q-${++references}`,
  validUntil: '2026-10-31',
  offers: [anOffer()],
  ...changed,
});
const enter = (changed: Record<string, unknown> = {}, path = buy.path) =>
  storehouse.coordinator.post(`${path}/quotes`, aWish(changed));
const fieldsOf = (answer: { body: { fields: { field: string }[] } }) =>
  answer.body.fields.map(({ field }) => field);

test('a quote keeps bags, breaks, minimum, freight and what was said beside them', async () => {
  const wish = {
    reference: '2026/118',
    minimumGoodsMinorUnits: 30_000,
    minimumGrams: 226_796,
    freightSteps: [
      { fromGrams: 0, minorUnits: 9500 },
      { fromGrams: 500_000, minorUnits: 14_000 },
    ],
    freightFreeFromMinorUnits: 60_000,
    leadDays: 10,
    cropYear: 2026,
    moistureNote: '11.2 % on the certificate',
    foreignPriceNote: '38.10 CAD a bag',
    offers: [
      anOffer({
        breaks: [
          { fromBags: 1, bagPriceMinorUnits: 2700 },
          { fromBags: 10, bagPriceMinorUnits: 2550 },
          { fromBags: 20, bagPriceMinorUnits: 2400 },
        ],
        mostBags: 400,
      }),
      anOffer({ bagSize: 25, breakKind: 'incremental' }),
    ],
  };
  const quote = bodyOf(await enter(wish), 201);
  const { offers, ...terms } = wish;
  expect(quote).toMatchObject({
    ...terms,
    supplier: { id: supplierId, name: 'Heron Mill' },
    warnings: [],
    version: 1,
  });
  // 50 lb × 453.59237 g = 22,679.6185 g and 25 lb = 11,339.80925 g: one bag is rounded once.
  expect(quote.offers).toMatchObject([
    { bagSize: 25, bagGrams: 11_340, bagLabel: '25 lb', breakKind: 'incremental', mostBags: null },
    { bagSize: 50, bagGrams: 22_680, bagLabel: '50 lb', breaks: offers[0]?.breaks, mostBags: 400 },
  ]);
  const { quotes } = bodyOf(await birchall.caller.get(`${buy.path}/quotes`));
  expect(quotes.find((known: { id: string }) => known.id === quote.id)).toEqual(quote);
  const csv = await birchall.caller.get(`${buy.path}/quotes?format=csv`);
  expect(csv.body.split('\r\n').filter((row: string) => row.includes('2026/118'))).toHaveLength(4);
});

const steps = (...fromGrams: number[]) => fromGrams.map((from) => ({ fromGrams: from, minorUnits: 100 }));
const breaksAt = (...fromBags: number[]) => [
  anOffer({ breaks: fromBags.map((from) => ({ fromBags: from, bagPriceMinorUnits: 2700 })) }),
];
const pricedAt = (bagPriceMinorUnits: unknown) => [
  anOffer({ breaks: [{ fromBags: 1, bagPriceMinorUnits }] }),
];
test.for([
  {
    field: 'offers.0.breaks.0.bagPriceMinorUnits',
    wish: () => ({ offers: pricedAt(0) }),
    because: 'nothing is free',
  },
  {
    field: 'offers.0.breaks.0.bagPriceMinorUnits',
    wish: () => ({ offers: pricedAt(-5) }),
    because: 'it is negative',
  },
  {
    field: 'offers.0.breaks.0.bagPriceMinorUnits',
    wish: () => ({ offers: pricedAt(27.5) }),
    because: 'cents are whole',
  },
  {
    field: 'offers.0.breaks.0.bagPriceMinorUnits',
    wish: () => ({ offers: pricedAt(1e15) }),
    because: 'it is enormous',
  },
  {
    field: 'offers.0.breaks.0.bagPriceMinorUnits',
    wish: () => ({ offers: pricedAt(undefined) }),
    because: 'it is missing',
  },
  {
    field: 'offers.0.breaks.0.fromBags',
    wish: () => ({ offers: breaksAt(2) }),
    because: 'one bag has no price',
  },
  {
    field: 'offers.0.breaks.2.fromBags',
    wish: () => ({ offers: breaksAt(1, 20, 10) }),
    because: 'breaks must ascend',
  },
  {
    field: 'offers.0.breaks.1.fromBags',
    wish: () => ({ offers: breaksAt(1, 1) }),
    because: 'one bag has two prices',
  },
  {
    field: 'offers.0.bagSize',
    wish: () => ({ offers: [anOffer({ bagSize: 0 })] }),
    because: 'a bag holds something',
  },
  {
    field: 'offers.0.bagSize',
    wish: () => ({ offers: [anOffer({ bagSize: 22.5 })] }),
    because: 'sizes are whole',
  },
  {
    field: 'offers.1.bagSize',
    wish: () => ({ offers: [anOffer(), anOffer()] }),
    because: 'a size stands once',
  },
  { field: 'offers', wish: () => ({ offers: [] }), because: 'a quote offers something' },
  {
    field: 'freightSteps.0.fromGrams',
    wish: () => ({ freightSteps: steps(1000) }),
    because: 'light loads have no price',
  },
  {
    field: 'freightSteps.2.fromGrams',
    wish: () => ({ freightSteps: steps(0, 9, 5) }),
    because: 'steps must ascend',
  },
  { field: 'validUntil', wish: () => ({ validUntil: '2026-02-30' }), because: 'there is no such day' },
  { field: 'validUntil', wish: () => ({ validUntil: undefined }), because: 'a quote has a last day' },
  { field: 'minimumGrams', wish: () => ({ minimumGrams: -1 }), because: 'a minimum is not negative' },
  { field: 'leadDays', wish: () => ({ leadDays: 366 }), because: 'nobody waits longer than a year' },
  { field: 'discount', wish: () => ({ discount: 5 }), because: 'there is no such field' },
])('a quote is refused at $field: $because', async ({ field, wish }) => {
  const before = await booksOf(app);
  const answer = await enter(wish());
  expect([answer.status, answer.body.code]).toEqual([400, 'invalid-input']);
  expect(fieldsOf(answer)).toContain(field);
  expect(await booksOf(app)).toBe(before);
});

// ledger-notes 6.13: one currency a storehouse; a foreign price is a note.
test('a quote in another currency is refused by that field, and its price belongs in the note', async () => {
  const before = await booksOf(app);
  const mixed = await enter({ currency: 'CAD' });
  expect([mixed.status, mixed.body.code, fieldsOf(mixed)]).toEqual([422, 'currency-mixed', ['currency']]);
  expect(await booksOf(app)).toBe(before);
  expect((await enter({ currency: 'USD' })).status).toBe(201);
});

test('a quote of a stranger, for a line of another buy, or lapsed already is refused', async () => {
  const other = await aBuy(app, storehouse, { quote: null });
  const before = await booksOf(app);
  const line = await enter({ offers: [anOffer({ buyLineId: other.lines[WHEAT] })] });
  expect([line.status, line.body.code, fieldsOf(line)]).toEqual([
    404,
    'thing-not-found',
    ['offers.0.buyLineId'],
  ]);
  const mill = await enter({ supplierId: other.buyId });
  expect([mill.status, mill.body.code, fieldsOf(mill)]).toEqual([404, 'thing-not-found', ['supplierId']]);
  const lapsed = await enter({ validUntil: '2026-08-31' });
  expect([lapsed.status, lapsed.body.code, fieldsOf(lapsed)]).toEqual([
    409,
    'quote-not-valid',
    ['validUntil'],
  ]);
  expect(await booksOf(app)).toBe(before);
});

test('a supplier’s reference stands once among the quotes of a buy that are not withdrawn', async () => {
  const first = bodyOf(await enter({ reference: 'spring list' }), 201);
  const again = await enter({ reference: 'spring list' });
  expect([again.status, again.body.code, fieldsOf(again)]).toEqual([409, 'already-there', ['reference']]);
  const path = `${buy.path}/quotes/${first.id}/withdrawal`;
  expect(bodyOf(await storehouse.coordinator.post(path, { version: 1 }))).toMatchObject({
    isWithdrawn: true,
    version: 2,
  });
  expect((await enter({ reference: 'spring list' })).status).toBe(201);
  const twice = await storehouse.coordinator.post(path, { version: 2 });
  expect([twice.status, twice.body.code]).toEqual([409, 'quote-not-valid']);
});

// Job map 2.3: warn when valid until less than three days after the planned order (24 September), or for a crop more
// than one year old; the clock stands in 2026.
test.for([
  { wish: { validUntil: '2026-09-26' }, codes: ['valid-until-close-to-order'] },
  { wish: { validUntil: '2026-09-27' }, codes: [] },
  { wish: { cropYear: 2024 }, codes: ['crop-year-old'] },
  { wish: { cropYear: 2025 }, codes: [] },
])('a quote with $wish carries the cautions $codes', async ({ wish, codes }) => {
  const quote = bodyOf(await enter(wish), 201);
  expect(quote.warnings.map((warning: { code: string }) => warning.code)).toEqual(codes);
});

test('a bag that is no whole number of steps carries a caution', async () => {
  const quote = bodyOf(await enter({ offers: [anOffer({ bagSize: 44 })] }), 201);
  expect(quote.warnings).toMatchObject([{ code: 'bag-size-off-step' }]);
});

test('a quote is replaced whole by who read it last, and a line it no longer offers loses the choice', async () => {
  const own = await aBuy(app, storehouse, { foods: ['rye', 'spelt'] });
  const path = `${own.path}/quotes/${own.quoteId}`;
  const terms = {
    version: 1,
    validUntil: '2026-10-15',
    offers: [{ buyLineId: own.lines.rye, bagSize: 25, breaks: [{ fromBags: 1, bagPriceMinorUnits: 1900 }] }],
  };
  const replaced = bodyOf(await storehouse.coordinator.put(path, terms));
  expect(replaced).toMatchObject({ version: 2, validUntil: '2026-10-15', offers: [{ bagSize: 25 }] });
  const { lines } = bodyOf(await storehouse.coordinator.get(own.path));
  expect(lines.map((line: { quoteId: string | null }) => line.quoteId)).toEqual([own.quoteId, null]);
  const before = await booksOf(app);
  const stale = await storehouse.coordinator.put(path, terms);
  expect([stale.status, stale.body.code, stale.body.newer.version]).toEqual([409, 'stale-version', 2]);
  expect(await booksOf(app)).toBe(before);
});

test('while pledges are gathered every quote must outlive the gathering', async () => {
  const open = await aBuy(app, storehouse);
  const offers = [
    { buyLineId: open.lines[WHEAT], bagSize: 50, breaks: [{ fromBags: 1, bagPriceMinorUnits: 1 }] },
  ];
  const late = await enter({ validUntil: '2026-09-20', offers }, open.path);
  expect([late.status, late.body.code, fieldsOf(late)]).toEqual([409, 'quote-not-valid', ['validUntil']]);
  expect((await enter({ validUntil: '2026-09-21', offers }, open.path)).status).toBe(201);
});

test('withdrawing a quote leaves the lines that chose it without one', async () => {
  const own = await aBuy(app, storehouse);
  bodyOf(await storehouse.coordinator.post(`${own.path}/quotes/${own.quoteId}/withdrawal`, { version: 1 }));
  const { lines, quotes } = bodyOf(await storehouse.coordinator.get(own.path));
  expect([lines[0].quoteId, quotes]).toEqual([null, { standing: 0, withdrawnOrLapsed: 1 }]);
});

test('members read quotes; entering, choosing and comparing are for duties; strangers find nothing', async () => {
  const own = await aBuy(app, storehouse);
  for (const answer of [
    await birchall.caller.post(`${own.path}/quotes`, {}),
    await birchall.caller.put(`${own.path}/quotes/${own.quoteId}`, {}),
    await birchall.caller.post(`${own.path}/quotes/${own.quoteId}/withdrawal`, {}),
    await birchall.caller.put(`${own.path}/lines/${own.lines[WHEAT]}/quote`, {}),
    await birchall.caller.get(`${own.path}/comparison`),
  ])
    expect([answer.status, answer.body.code]).toEqual([403, 'duty-missing']);
  const other = await anotherStorehouse(app);
  const theirs = await other.coordinator.get(`${other.path}/buys/${own.buyId}/quotes`);
  expect([theirs.status, theirs.body.code]).toEqual([404, 'thing-not-found']);
  const cross = await enter({ supplierId: await aSupplier(other) });
  expect([cross.status, fieldsOf(cross)]).toEqual([404, ['supplierId']]);
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, aPledge, aQuote, bodyOf, chooseQuote } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

const WHEAT = 'wheat-hard-red-winter';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
});
afterAll(() => app.close());

const fieldsOf = (answer: { body: { fields: { field: string }[] } }) =>
  answer.body.fields.map(({ field }) => field);

test('a line chooses a quote that offers it and stands', async () => {
  const own = await aBuy(app, storehouse, { foods: ['rye', 'spelt'], quote: null });
  const ryeOnly = await aQuote(storehouse, own, { offers: [{ foodCode: 'rye' }] });
  const put = (line: string | undefined, body: unknown) =>
    storehouse.coordinator.put(`${own.path}/lines/${line}/quote`, body);
  const elsewhere = await put(own.lines.spelt, { quoteId: ryeOnly, version: 1 });
  expect([elsewhere.body.code, fieldsOf(elsewhere)]).toEqual(['quote-not-valid', ['quoteId']]);
  const unknown = await put(own.lines.spelt, { quoteId: own.buyId, version: 1 });
  expect([unknown.status, fieldsOf(unknown)]).toEqual([404, ['quoteId']]);
  const stale = await put(own.lines.rye, { quoteId: null, version: 1 });
  expect([stale.body.code, stale.body.newer.version]).toEqual(['stale-version', 2]);
  bodyOf(await storehouse.coordinator.post(`${own.path}/quotes/${ryeOnly}/withdrawal`, { version: 1 }));
  const withdrawn = await put(own.lines.rye, { quoteId: ryeOnly, version: 3 });
  expect([withdrawn.body.code, fieldsOf(withdrawn)]).toEqual(['quote-not-valid', ['quoteId']]);
  expect((await put(own.buyId, { quoteId: null, version: 1 })).body.code).toBe('thing-not-found');
});

test('choosing other bags says how many whole-bag pledges they do not fit', async () => {
  const own = await aBuy(app, storehouse);
  await aPledge(birchall.caller, own, { wanted: 50, wholeBags: true });
  await aPledge(storehouse.coordinator, own, { wanted: 100, wholeBags: true });
  const other = await aQuote(storehouse, own, { offers: [{ bagSize: 40 }] });
  const choice = await chooseQuote(storehouse, own, { lineId: own.lines[WHEAT] ?? '', quoteId: other });
  expect(choice.pledgesOffBagSize).toBe(2);
  const smaller = await aQuote(storehouse, own, { reference: 'small', offers: [{ bagSize: 25 }] });
  const back = await chooseQuote(storehouse, own, { lineId: own.lines[WHEAT] ?? '', quoteId: smaller });
  expect(back.pledgesOffBagSize).toBe(0);
});

/*
 * Job map 4.5: 50 lb bags at 27.00, 25.50 from 10 and 24.00 from 20 bags, freight 95.00, free from 600.00. 18 bags cost
 * 459.00 + 95.00 = 554.00. A second mill asks 26.00 flat with 40.00 freight: 18 bags cost 468.00 + 40.00 = 508.00.
 */
test('quotes stand side by side on landed cost at what is pledged', async () => {
  const own = await aBuy(app, storehouse, {
    quote: {
      offers: [
        {
          breaks: [
            { fromBags: 1, bagPriceMinorUnits: 2700 },
            { fromBags: 10, bagPriceMinorUnits: 2550 },
            { fromBags: 20, bagPriceMinorUnits: 2400 },
          ],
        },
      ],
      freightSteps: [{ fromGrams: 0, minorUnits: 9500 }],
      freightFreeFromMinorUnits: 60_000,
    },
  });
  const flat = await aQuote(storehouse, own, {
    offers: [{ bagPriceMinorUnits: 2600 }],
    freightSteps: [{ fromGrams: 0, minorUnits: 4000 }],
  });
  await aPledge(birchall.caller, own, { least: 500, wanted: 600, most: 600 });
  await aPledge(storehouse.coordinator, own, { least: 0, wanted: 300, most: 650 });
  const { lines, basket } = bodyOf(await storehouse.coordinator.get(`${own.path}/comparison`));
  const at = (name: string) => lines.find((row: { at: string }) => row.at === name);
  expect(at('wanted').quotes).toMatchObject([
    { quoteId: own.quoteId, goodsMinorUnits: 45_900, freightMinorUnits: 9500, totalMinorUnits: 55_400 },
    { quoteId: flat, goodsMinorUnits: 46_800, freightMinorUnits: 4000, totalMinorUnits: 50_800 },
  ]);
  expect(at('wanted').cheapestQuoteId).toBe(flat);
  // 1,250 lb are 25 bags: the first mill asks 25 × 24.00 = 600.00 with free freight, the second 650.00 + 40.00.
  expect(at('most').quotes.map((quote: { totalMinorUnits: number }) => quote.totalMinorUnits)).toEqual([
    60_000, 69_000,
  ]);
  expect(at('most').cheapestQuoteId).toBe(own.quoteId);
  expect(basket).toMatchObject({ totalMinorUnits: 50_800, lines: [{ quoteId: flat, bags: [{ bags: 18 }] }] });
});

test('fifty pledged pounds are one bag of fifty, however they were pledged', async () => {
  // Ten pledges of 1 lb are 4,540 g and a bag of 10 lb is 4,536 g (ledger-notes 6.14): still one bag.
  const own = await aBuy(app, storehouse, { stepUnits: 1, quote: { offers: [{ bagSize: 2 }] } });
  await aPledge(birchall.caller, own, { wanted: 1 });
  await aPledge(storehouse.coordinator, own, { wanted: 1 });
  const { lines } = bodyOf(await storehouse.coordinator.get(`${own.path}/comparison`));
  // 2 × 454 g = 908 g pledged; a bag of 2 lb is 907 g.
  expect(lines[0].quotes[0].bags).toMatchObject([{ bags: 1 }]);
});

test('foods of one mill share its freight in the cheapest basket', async () => {
  /*
   * 50 lb each of rye and spelt. Mill A: 30.00 and 30.00, freight 20.00. Mill B: 28.00 and 28.00, freight 30.00.
   * All from A: 60 + 20 = 80.00; all from B: 56 + 30 = 86.00; one each: 58 + 50 = 108.00.
   */
  const own = await aBuy(app, storehouse, {
    foods: ['rye', 'spelt'],
    quote: {
      offers: [
        { foodCode: 'rye', bagPriceMinorUnits: 3000 },
        { foodCode: 'spelt', bagPriceMinorUnits: 3000 },
      ],
      freightSteps: [{ fromGrams: 0, minorUnits: 2000 }],
    },
  });
  await aQuote(storehouse, own, {
    offers: [
      { foodCode: 'rye', bagPriceMinorUnits: 2800 },
      { foodCode: 'spelt', bagPriceMinorUnits: 2800 },
    ],
    freightSteps: [{ fromGrams: 0, minorUnits: 3000 }],
  });
  const { lines, basket } = bodyOf(await storehouse.coordinator.get(`${own.path}/comparison?grams=22680`));
  expect(lines.map((row: { at: string }) => row.at)).toEqual(['asked', 'asked']);
  expect(basket).toMatchObject({
    totalMinorUnits: 8000,
    quotes: [{ quoteId: own.quoteId, freightMinorUnits: 2000 }],
  });
});

test('a comparison that could not be tried through in time says so', async () => {
  const own = await aBuy(app, storehouse, {
    quote: { offers: [{ bagSize: 1 }, { bagSize: 2 }, { bagSize: 3 }] },
  });
  const answer = bodyOf(await storehouse.coordinator.get(`${own.path}/comparison?grams=1000000000`));
  expect(answer.lines[0]).toMatchObject({ quotes: [], tooManyWays: [own.quoteId], cheapestQuoteId: null });
  expect([answer.basket, answer.basketAbsent]).toEqual([null, 'too-large']);
  const none = bodyOf(await storehouse.coordinator.get(`${own.path}/comparison`));
  expect([none.lines, none.basketAbsent]).toEqual([[], 'nothing-wanted']);
  expect(fieldsOf(await storehouse.coordinator.get(`${own.path}/comparison?grams=-5`))).toEqual(['grams']);
});

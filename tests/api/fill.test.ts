import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { aBuy, aPledge, aQuote, bodyOf, chooseQuote, pledgeBody, type TestBuy } from '../support/buy.ts';
import { changeRules, fixedBooksOf, type GrainHouseholds, openGrain } from '../support/fixed-buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

const WHEAT = 'wheat-hard-red-winter';
const OATS = 'oats-rolled';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let eskdale: TestHousehold;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
  eskdale = await aHousehold(app, storehouse, 'Eskdale');
});
afterAll(() => app.close());

/** The fill as the coordinator sees it, with each household's units of a line in the order of the pledges. */
async function fillOf(buy: TestBuy) {
  const fill = bodyOf(await storehouse.coordinator.get(`${buy.path}/fill`));
  const [line] = fill.lines;
  const units = line.pledges.map((pledge: { units: number }) => pledge.units);
  const bags = line.bags.map((bag: { bags: number }) => bag.bags);
  return { fill, line, units, bags };
}

async function aBuyI1(): Promise<TestBuy> {
  const buy = await aBuy(app, storehouse);
  const { Ashdown, Birchall, Corran, Dell } = households;
  await aPledge(Ashdown.caller, buy, { least: 20, wanted: 30, most: 40 });
  await aPledge(Birchall.caller, buy, { least: 25, wanted: 45, most: 50 });
  await aPledge(Corran.caller, buy, { least: 10, wanted: 20, most: 30 });
  await aPledge(Dell.caller, buy, { least: 10, wanted: 15, most: 25 });
  await aPledge(eskdale.caller, buy, { least: 20, wanted: 30, most: 50 });
  return buy;
}

test('instance I1 of the job map is filled to its optimum, with the proof beside it', async () => {
  // Job map 5.6, I1: wants of 140 lb, three bags, ties onto the latest pledges; key (0, 0, 0, 10, 5).
  const { fill, line, units, bags } = await fillOf(await aBuyI1());
  expect(units).toEqual([30, 45, 20, 20, 35]);
  expect(bags).toEqual([3]);
  expect(line).toMatchObject({ commonUnits: 0, goodsMinorUnits: 10_800 });
  expect(line.pledges.map((pledge: { grams: number }) => pledge.grams)).toEqual([
    // 3 × 22,680 g shared 30/45/20/20/35 of 150: 13,608, 20,412, 9,072, 9,072, 15,876, all exact.
    13_608, 20_412, 9_072, 9_072, 15_876,
  ]);
  const { certificate } = fill.baskets[0];
  expect(certificate.isProvenBest).toBe(true);
  expect(certificate.levels.slice(0, 5).map((level: { value: number }) => level.value)).toEqual([
    0, 0, 0, 10, 5,
  ]);
  expect(
    certificate.levels.every((level: { value: number; bound: number }) => level.value === level.bound),
  ).toBe(true);
});

test('instance I2 mixes whole bags with shares of a bag', async () => {
  // Job map 5.6, I2: Ashdown and Eskdale take whole bags only; 100, 40, 30, 30, 50 in five bags.
  const buy = await aBuy(app, storehouse);
  const { Ashdown, Birchall, Corran, Dell } = households;
  await aPledge(Ashdown.caller, buy, { least: 50, wanted: 100, most: 100, wholeBags: true });
  await aPledge(Birchall.caller, buy, { least: 25, wanted: 35, most: 40 });
  await aPledge(Corran.caller, buy, { least: 20, wanted: 25, most: 30 });
  await aPledge(Dell.caller, buy, { wanted: 30 });
  await aPledge(eskdale.caller, buy, { least: 50, wanted: 50, most: 100, wholeBags: true });
  const { line, units, bags } = await fillOf(buy);
  expect(units).toEqual([100, 40, 30, 30, 50]);
  expect([bags, line.commonUnits]).toEqual([[5], 0]);
  expect(line.pledges[0]).toMatchObject({ wholeBags: true, grams: 45_360 }); // two bags of 22,680 g, not 100 lb
});

test.for([
  { capGrams: 0, because: 'K = 0 drops the last', units: [30, 20, 0], common: 0, bags: 1 },
  { capGrams: 4_536, because: 'K = 10 lb is not enough', units: [30, 20, 0], common: 0, bags: 1 },
  { capGrams: 11_340, because: 'K = 25 lb serves all three', units: [30, 25, 20], common: 25, bags: 2 },
])('instance I3: $because', async ({ capGrams, units, common, bags }) => {
  // Job map 5.6, I3.
  await changeRules(storehouse, { commonCapGrams: capGrams });
  const buy = await aBuy(app, storehouse);
  await aPledge(households.Ashdown.caller, buy, { wanted: 30 });
  await aPledge(households.Birchall.caller, buy, { least: 20, wanted: 25, most: 25 });
  await aPledge(households.Corran.caller, buy, { least: 15, wanted: 15, most: 20 });
  const found = await fillOf(buy);
  expect(found.units).toEqual(units);
  expect([found.line.commonUnits, found.bags]).toEqual([common, [bags]]);
  await changeRules(storehouse, { commonCapGrams: 0 });
});

/** The price list of job map 4.5: 27.00, from 10 bags 25.50, from 20 bags 24.00; freight 95.00, free from 600.00. */
const PRICE_LIST = {
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
};

test('the tipping line says what two more bags cost and save, the household its own part only', async () => {
  // Job map 4.5 at 18 bags: 554.00; 20 bags cost 21.00 more. Those in save 554.00 − 18 × 28.75 = 36.50.
  const buy = await aBuy(app, storehouse, { quote: PRICE_LIST });
  await aPledge(households.Birchall.caller, buy, { wanted: 600 });
  await aPledge(households.Dell.caller, buy, { wanted: 300 });
  const { fill, line } = await fillOf(buy);
  expect(fill).toMatchObject({ goodsMinorUnits: 45_900, freightMinorUnits: 9500, totalMinorUnits: 55_400 });
  expect(line.tips).toMatchObject({ wantedUnits: 900, toNextBagUnits: 0, isDeadZone: false, freeTip: null });
  expect(line.tips.tip).toMatchObject({
    extraBags: 2,
    extraUnits: 100,
    bags: 20,
    reachesBreak: true,
    reachesFreeFreight: false,
    extraCostMinorUnits: 2100,
    savedMinorUnits: 3650,
  });
  // 36.50 over 600 and 300 lb: 24.333 and 12.166.
  expect(line.tips.tip.savings).toEqual([
    { ownerId: households.Birchall.householdId, minorUnits: 2433 },
    { ownerId: households.Dell.householdId, minorUnits: 1217 },
  ]);
  const seen = bodyOf(await households.Dell.caller.get(`${buy.path}/fill`));
  expect(seen.lines[0].tips.tip.ownSavedMinorUnits).toBe(1217);
  expect(seen.lines[0].tips.tip).not.toHaveProperty('savings');
});

test('a dead zone is named, with the larger order that costs less in all', async () => {
  // Job map 4.5: 19 bags cost 579.50, 20 cost 575.00.
  const buy = await aBuy(app, storehouse, { quote: PRICE_LIST });
  await aPledge(households.Birchall.caller, buy, { wanted: 950 });
  const { line } = await fillOf(buy);
  expect(line.tips).toMatchObject({ isDeadZone: true });
  expect(line.tips.freeTip).toMatchObject({ extraBags: 1, bags: 20, extraCostMinorUnits: -450 });
  const fixing = bodyOf(await storehouse.coordinator.get(`${buy.path}/fixing`));
  expect(fixing.warnings).toContainEqual({
    code: 'cheaper-to-order-more',
    lineId: line.lineId,
    bags: 20,
    extraCostMinorUnits: -450,
  });
});

test('a member sees bags, prices and its own promise, and nothing of another household', async () => {
  const buy = await aBuy(app, storehouse);
  await aPledge(households.Birchall.caller, buy, { wanted: 50, ceilingMinorUnits: 77 });
  const dear = await aPledge(households.Corran.caller, buy, { wanted: 50, ceilingMinorUnits: 71 });
  const own = await aPledge(households.Dell.caller, buy, { least: 50, wanted: 50, most: 55 });
  const answer = await households.Dell.caller.get(`${buy.path}/fill`);
  const text = JSON.stringify(answer.body);
  // Wheat comes to 36.00 for 22,680 g, 0.72 a pound: Corran's 0.71 keeps it out, which only Corran and the duties learn.
  expect(answer.body.lines[0].bags[0].bags).toBe(2);
  expect(answer.body.lines[0].own.map((pledge: { pledgeId: string }) => pledge.pledgeId)).toEqual([own.id]);
  for (const secret of [households.Birchall.householdId, households.Corran.householdId, dear.id, 'ceiling'])
    expect(text).not.toContain(secret);
  expect(answer.body.lines[0]).not.toHaveProperty('pledges');
  expect(answer.body.lines[0].tips.wantedUnits).toBeNull();
  expect(answer.body.baskets[0].certificate).not.toHaveProperty('levels');
  expect(answer.body.baskets[0].certificate).not.toHaveProperty('note');
  const told = bodyOf(await households.Corran.caller.get(`${buy.path}/fill`));
  expect(told.lines[0].own).toMatchObject([{ units: 0, dropped: 'ceiling' }]);
  // Nobody but its own household ever reads a ceiling, the coordinator no more than the neighbours.
  const coordinators = JSON.stringify((await storehouse.coordinator.get(`${buy.path}/fixing`)).body);
  expect(coordinators).not.toMatch(/"ceiling":|ceilingMinorUnits|"minorUnits":7[17][,}]/);
});

test('what is wanted in all is shown to a member over five other households', async () => {
  const others = [];
  for (const name of ['Fell', 'Garth']) others.push(await aHousehold(app, storehouse, name));
  const buy = await aBuy(app, storehouse);
  for (const { caller } of [...Object.values(households), eskdale])
    await aPledge(caller, buy, { wanted: 50 });
  const wanted = async ({ caller }: TestHousehold) =>
    bodyOf(await caller.get(`${buy.path}/fill`)).lines[0].tips.wantedUnits;
  expect(await wanted(households.Dell)).toBeNull(); // four others: whoever knows its own could almost tell
  const [fell] = others;
  if (fell) expect(await wanted(fell)).toBe(250); // five others, and it has no pledge itself
});

test('a duty that looks at everybody’s promises leaves a trace with each household', async () => {
  const buy = await aBuyI1();
  await households.Birchall.caller.get(`${buy.path}/fill`); // the treasurer
  const [seen] = await app.admin<{ count: string }[]>`select count(*) from book.private_read r
    join book.household h using (storehouse_id, household_id)
    where h.name = 'Dell' and r.what = 'pledges' and r.purpose = 'fill of a buy'
      and r.person_id = ${households.Birchall.personId}`;
  expect(Number(seen?.count)).toBeGreaterThan(0);
});

test('a pledge kept out by its ceiling is served from its substitute, and the answer says so', async () => {
  const buy = await aBuy(app, storehouse, {
    foods: [WHEAT, OATS],
    quote: {
      offers: [
        { foodCode: WHEAT, bagPriceMinorUnits: 3600 },
        { foodCode: OATS, bagPriceMinorUnits: 3000 },
      ],
    },
  });
  await aPledge(households.Birchall.caller, buy, { foodCode: WHEAT, wanted: 50 });
  await aPledge(households.Corran.caller, buy, {
    foodCode: WHEAT,
    wanted: 50,
    ceilingMinorUnits: 65,
    substitute: OATS,
  });
  const own = bodyOf(await households.Corran.caller.get(`${buy.path}/fill`));
  const ownOn = (code: string) =>
    own.lines.find((line: { lineId: string }) => line.lineId === buy.lines[code]).own;
  expect(ownOn(WHEAT)).toMatchObject([{ units: 0, dropped: 'substitute' }]);
  expect(ownOn(OATS)).toMatchObject([{ units: 50, isSubstitute: true, dropped: null }]);
  const fixing = bodyOf(await storehouse.coordinator.get(`${buy.path}/fixing`));
  expect(fixing.dropped).toMatchObject([{ reason: 'substitute', substituteLineId: buy.lines[OATS] }]);
});

test('a substitute that is too dear as well leaves the pledge out and fills the rest again', async () => {
  const buy = await aBuy(app, storehouse, { foods: [WHEAT, OATS] });
  await aPledge(households.Birchall.caller, buy, { foodCode: OATS, wanted: 50 });
  await aPledge(households.Corran.caller, buy, {
    foodCode: WHEAT,
    wanted: 50,
    ceilingMinorUnits: 60,
    substitute: OATS,
  });
  const fixing = bodyOf(await storehouse.coordinator.get(`${buy.path}/fixing`));
  expect(fixing.dropped).toMatchObject([{ reason: 'ceiling', substituteLineId: null }]);
  const oats = fixing.lines.find((line: { lineId: string }) => line.lineId === buy.lines[OATS]);
  expect(oats.bags).toMatchObject([{ bags: 1 }]);
  expect(oats.pledges).toHaveLength(1);
});

test('a line without a chosen quote is filled from the cheapest basket that stands', async () => {
  const buy = await aBuy(app, storehouse);
  const cheaper = await aQuote(storehouse, buy, { offers: [{ bagPriceMinorUnits: 3400 }] });
  await chooseQuote(storehouse, buy, { lineId: Object.values(buy.lines)[0] ?? '', quoteId: null });
  await aPledge(households.Dell.caller, buy, { wanted: 100 });
  const { line } = await fillOf(buy);
  expect(line).toMatchObject({ quoteId: cheaper, goodsMinorUnits: 6800 });
});

test('a preview prices a pledge at today’s fill, at all least, at all most and at the next break', async () => {
  // 36.00 a bag, from three bags 30.00. Birchall wants one bag and would take two; Corran thinks about one.
  const buy = await aBuy(app, storehouse, {
    quote: {
      offers: [
        {
          breaks: [
            { fromBags: 1, bagPriceMinorUnits: 3600 },
            { fromBags: 3, bagPriceMinorUnits: 3000 },
          ],
        },
      ],
    },
  });
  await aPledge(households.Birchall.caller, buy, { wanted: 50, most: 100 });
  const before = await fixedBooksOf(app);
  const answer = await households.Corran.caller.post(`${buy.path}/preview`, pledgeBody(buy, { wanted: 50 }));
  expect(answer.status).toBe(200);
  expect(answer.body).toMatchObject({
    landedPrice: { minorUnits: 10, grams: 63 }, // 36.00 for 22,680 g in lowest terms
    atFill: { units: 50, grams: 22_680, landedMinorUnits: 3600, buyMinorUnits: 3600, dropped: null },
    allAtLeast: { units: 50, buyMinorUnits: 3600 },
    allAtMost: { units: 50, buyMinorUnits: 3000 }, // 150 lb are three bags
    tips: {
      toNextBagUnits: 0,
      // Three bags for 90.00 instead of two for 72.00: those in save 72.00 − 2 × 30.00 = 12.00, half of it Corran's.
      tip: {
        extraBags: 1,
        extraUnits: 50,
        reachesBreak: true,
        extraCostMinorUnits: 1800,
        ownSavedMinorUnits: 600,
      },
    },
  });
  expect(JSON.stringify(answer.body)).not.toContain(households.Birchall.householdId);
  expect(await fixedBooksOf(app)).toBe(before);
});

test('a preview says what is missing to the next bag, and changes a pledge that is there', async () => {
  const buy = await aBuy(app, storehouse);
  await aPledge(households.Birchall.caller, buy, { wanted: 45 });
  await aPledge(households.Corran.caller, buy, { wanted: 20 });
  const preview = pledgeBody(buy, { wanted: 35, least: 5 });
  const answer = bodyOf(await households.Corran.caller.post(`${buy.path}/preview`, preview));
  // 45 + 35 want 80, so 20 more would fill the second bag. Now one bag holds 45 and 5.
  expect(answer).toMatchObject({ atFill: { units: 5 }, tips: { toNextBagUnits: 20 } });
});

test.for([
  { because: 'least above wanted', change: { leastGrams: 30_000 }, status: 422, code: 'pledge-not-in-order' },
  {
    because: 'a line of no buy',
    change: { buyLineId: '01a00000-0000-7000-8000-000000000000' },
    status: 404,
    code: 'thing-not-found',
  },
  { because: 'a negative mass', change: { wantedGrams: -5 }, status: 400, code: 'invalid-input' },
  { because: 'an unknown field', change: { wish: 5 }, status: 400, code: 'invalid-input' },
])('a preview is refused for $because', async ({ change, status, code }) => {
  const buy = await aBuy(app, storehouse);
  const body = { ...pledgeBody(buy, { wanted: 50 }), ...change };
  const answer = await households.Corran.caller.post(`${buy.path}/preview`, body);
  expect([answer.status, answer.body.code]).toEqual([status, code]);
});

test('the fill of an unknown buy is not found, and a stranger is not let in', async () => {
  const path = `${storehouse.path}/buys/01a00000-0000-7000-8000-000000000000/fill`;
  expect((await storehouse.coordinator.get(path)).body.code).toBe('thing-not-found');
  expect((await app.as().get(path)).body.code).toBe('not-signed-in');
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf } from '../support/buy.ts';
import { fixedBooksOf } from '../support/fixed-buy.ts';
import { aHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

const WHEAT = 'wheat-hard-red-winter';
const OATS = 'oats-rolled';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

test('a household reads what its pledge did for the others, once the buy is fixed', async () => {
  // Job map 4.5: wheat at 25.50 from 10 bags and 24.00 from 20, freight 95.00. Oats are nobody's but Dell's.
  const buy = await aBuy(app, storehouse, {
    foods: [WHEAT, OATS],
    quote: {
      freightSteps: [{ fromGrams: 0, minorUnits: 9500 }],
      offers: [
        {
          foodCode: WHEAT,
          bagSize: 50,
          breaks: [
            { fromBags: 1, bagPriceMinorUnits: 2700 },
            { fromBags: 10, bagPriceMinorUnits: 2550 },
            { fromBags: 20, bagPriceMinorUnits: 2400 },
          ],
        },
        { foodCode: OATS, bagSize: 50, bagPriceMinorUnits: 3750 },
      ],
    },
  });
  const corran = await aHousehold(app, storehouse, 'Corran');
  const dell = await aHousehold(app, storehouse, 'Dell');
  const eskdale = await aHousehold(app, storehouse, 'Eskdale');
  await aPledge(corran.caller, buy, { foodCode: WHEAT, wanted: 900 });
  await aPledge(dell.caller, buy, { foodCode: WHEAT, wanted: 100 });
  const early = await dell.caller.get(`${buy.path}/pledge-effect`);
  expect({ status: early.status, code: early.body.code }).toEqual({ status: 409, code: 'buy-stage-wrong' });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/fixing`, {}), 201);
  const before = await fixedBooksOf(app);
  // 18 bags alone cost 554.00; as 18 of 20 they cost 517.50: 36.50 saved, of which 9.50 is freight.
  expect(bodyOf(await dell.caller.get(`${buy.path}/pledge-effect`))).toMatchObject({
    buyId: buy.buyId,
    currency: 'USD',
    effect: {
      savedMinorUnits: 3650,
      freightSavedMinorUnits: 950,
      lines: [{ lineId: buy.lines[WHEAT], savedMinorUnits: 3650, isBoughtOnlyWithIt: false }],
    },
  });
  expect(bodyOf(await eskdale.caller.get(`${buy.path}/pledge-effect`)).effect).toBeNull();
  expect(await fixedBooksOf(app)).toBe(before);
});

test('a food that comes together by one pledge alone is named, and somebody else’s buy is not found', async () => {
  const buy = await aBuy(app, storehouse, { foods: [OATS] });
  const fenner = await aHousehold(app, storehouse, 'Fenner');
  await aPledge(fenner.caller, buy, { foodCode: OATS, wanted: 50 });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/fixing`, {}), 201);
  const { effect } = bodyOf(await fenner.caller.get(`${buy.path}/pledge-effect`));
  expect(effect).toMatchObject({
    savedMinorUnits: 0,
    lines: [{ lineId: buy.lines[OATS], isBoughtOnlyWithIt: true, landedWithout: null }],
  });
  const stray = await fenner.caller.get(
    `${storehouse.path}/buys/00000000-0000-7000-8000-000000000000/pledge-effect`,
  );
  expect(stray.status).toBe(404);
});

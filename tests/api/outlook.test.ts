import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf } from '../support/buy.ts';
import { fixedBooksOf } from '../support/fixed-buy.ts';
import { aHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

test('the whole buy has a price now, and one at everybody’s least and most', async () => {
  const buy = await aBuy(app, storehouse, {
    quote: {
      freightSteps: [{ fromGrams: 0, minorUnits: 900 }],
      offers: [{ bagSize: 50, bagPriceMinorUnits: 3600 }],
    },
  });
  const dell = await aHousehold(app, storehouse, 'Dell');
  await aPledge(dell.caller, buy, { least: 50, wanted: 100, most: 150 });
  const before = await fixedBooksOf(app);
  // Two bags at 36.00 and 9.00 of freight now; one bag and three at the ends.
  expect(bodyOf(await storehouse.coordinator.get(`${buy.path}/outlook`))).toEqual({
    buyId: buy.buyId,
    currency: 'USD',
    atFill: whole({ bags: 2 }),
    allAtLeast: whole({ bags: 1 }),
    allAtMost: whole({ bags: 3 }),
  });
  expect(await fixedBooksOf(app)).toBe(before);
  const member = await dell.caller.get(`${buy.path}/outlook`);
  expect({ status: member.status, code: member.body.code }).toEqual({ status: 403, code: 'duty-missing' });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/fixing`, {}), 201);
  const late = await storehouse.coordinator.get(`${buy.path}/outlook`);
  expect({ status: late.status, code: late.body.code }).toEqual({ status: 409, code: 'buy-stage-wrong' });
});

const whole = ({ bags }: { bags: number }) => ({
  goodsMinorUnits: bags * 3600,
  freightMinorUnits: 900,
  levyMinorUnits: 0,
  totalMinorUnits: bags * 3600 + 900,
  grams: bags * 22_680,
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aFixedBuy, type GrainHouseholds, openGrain, payDeposits } from '../support/fixed-buy.ts';
import {
  aLandedBuy,
  claimGrain,
  GRAIN_BAGS,
  grainInvoice,
  offersOf,
  receiveBags,
} from '../support/landed-buy.ts';
import { aPlainBuy, splitPlain } from '../support/plain-buy.ts';
import { balancesOf, chargeOf, sharesOf, splitGrain } from '../support/shared-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

const sumOf = (row: Record<string, number>) => Object.values(row).reduce((sum, part) => sum + part, 0);

test('a household that withdraws once the food is ordered pays its part per household, and gets the rest back', async () => {
  // Job map 4.7: Corran takes Dell's wheat, Birchall its oats, common stock its 12 lb of beans.
  const before = await balancesOf(app, households);
  const buy = await aLandedBuy(app, storehouse, { households });
  const withdrawal = { reason: 'We are moving away.' };
  bodyOf(await households.Dell.caller.post(`${buy.path}/withdrawals`, withdrawal), 201);
  await splitGrain(storehouse, buy);
  const charges = bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  expect(chargeOf(charges)).toEqual({ Ashdown: 16_548, Birchall: 15_884, Corran: 15_194, Dell: 1100 });
  expect(charges).toMatchObject({
    commonStockMinorUnits: 1124,
    chargedMinorUnits: 49_850,
    clearingMinorUnits: 0,
  });
  expect(sharesOf(charges, 'freight:by-weight')).toEqual({
    Ashdown: 1494,
    Birchall: 1437,
    Corran: 1372,
    Dell: 0,
    common: 97,
  });
  const after = await balancesOf(app, households);
  expect((after.Dell ?? 0) - (before.Dell ?? 0)).toBe(1100 - 2300); // 12.00 of its deposit stand to its credit
  const stockOfBeans = async () => {
    const [lot] = await app.admin<{ balance: string }[]>`
      select a.inflow - a.outflow as balance from book.account a
      join book.lot l on l.lot_id = a.cause_id and l.buy_line_id = ${buy.beans} where a.kind = 'common_stock'`;
    return Number(lot?.balance); // 1400 is kept by lot
  };
  expect(await stockOfBeans()).toBe(1124);
  // Money that comes back on the beans goes by 40, 28, 20 and 12 lb. Common stock's part takes what stands of it off
  // the books, and what goes beyond that is the store fund's.
  const chargeLineId = charges.lines.find(
    (line: { costLine: string }) => line.costLine === `goods:${buy.beans}`,
  ).id;
  const credit = { chargeLineId, till: 'bank', reason: 'Goodwill of the mill.' };
  const path = `${buy.path}/late-credits`;
  const small = bodyOf(await buy.treasurer.post(path, { ...credit, minorUnits: 400 }), 201);
  expect(sharesOf(small, `late:goods:${buy.beans}`)).toEqual({
    Ashdown: -160,
    Birchall: -112,
    Corran: -80,
    Dell: 0,
    common: -48,
  });
  expect(await stockOfBeans()).toBe(1124 - 48);
  bodyOf(await buy.treasurer.post(path, { ...credit, minorUnits: 20_000 }), 201);
  expect(await stockOfBeans()).toBe(0);
  const fund = (await balancesOf(app, households)).store_fund ?? 0;
  expect(fund - (before.store_fund ?? 0)).toBe(-(2400 - 1076));
});

test('what a withdrawal left of its deposit before the order lowers everyone’s cost, by weight', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  await payDeposits(buy);
  const reason = 'We are moving away.';
  const gone = bodyOf(await households.Dell.caller.post(`${buy.path}/withdrawals`, { reason }), 201);
  expect(gone.withheldMinorUnits).toBeGreaterThan(0);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/order-consents`, { duty: 'coordinator' }), 201);
  bodyOf(await buy.treasurer.post(`${buy.path}/order-consents`, { duty: 'treasurer' }), 201);
  const offers = await offersOf(storehouse, buy);
  const delivery = await receiveBags(app, storehouse, { buy, offers, bags: GRAIN_BAGS });
  const claims = await claimGrain(buy);
  bodyOf(await buy.treasurer.post(`${buy.path}/invoices`, grainInvoice(buy)), 201);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/landing`));
  await splitGrain(storehouse, { ...buy, ...delivery, offers, claims, invoiceId: null });
  const charges = bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  expect(sumOf(sharesOf(charges, 'withheld'))).toBe(-gone.withheldMinorUnits);
  expect(charges).toMatchObject({
    chargedMinorUnits: 49_850 - gone.withheldMinorUnits,
    clearingMinorUnits: 0,
  });
  expect(Object.keys(chargeOf(charges))).toEqual(['Ashdown', 'Birchall', 'Corran']); // it ordered nothing
});

test('a household that comes in from the waitlist bears goods and weight, and no part per household', async () => {
  // Job map 5.6, I3 without common stock: Corran is dropped. Ashdown leaves its 30 lb: Birchall takes 5 more up to its
  // most, Corran its 15, and 10 stay Ashdown's, with its part per household.
  const buy = await aPlainBuy(app, storehouse, {
    treasurer: households.Birchall.caller,
    rules: { commonCapGrams: 0, freightBasis: 'per-household' },
    freightMinorUnits: 3000,
    foods: [
      {
        pledges: [
          { by: households.Ashdown.caller, wanted: 30 },
          { by: households.Birchall.caller, least: 20, wanted: 25 },
          { by: households.Corran.caller, least: 15, wanted: 15, most: 20 },
        ],
        bags: [{}],
      },
    ],
  });
  const reason = 'No room in the pantry.';
  bodyOf(await households.Ashdown.caller.post(`${buy.path}/withdrawals`, { reason }), 201);
  await splitPlain(storehouse, buy);
  const charges = bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  // 36.00 by 10, 25 and 15 lb of 50; 30.00 by the two who were in from the start.
  expect(chargeOf(charges)).toEqual({ Ashdown: 720 + 1500, Birchall: 1800 + 1500, Corran: 1080 });
});

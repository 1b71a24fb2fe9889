import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { changeRules, type GrainHouseholds, openGrain } from '../support/fixed-buy.ts';
import { aLandedBuy, receiveBags } from '../support/landed-buy.ts';
import { refusalOf } from '../support/money-books.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aPlainBuy, splitPlain } from '../support/plain-buy.ts';
import {
  aSharedBuy,
  balancesOf,
  chargeOf,
  creditClaims,
  sharesOf,
  splitGrain,
} from '../support/shared-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

const sumOf = (row: Record<string, number>) => Object.values(row).reduce((sum, part) => sum + part, 0);

test('sharing out is refused with the list of all that is missing, and changes nothing', async () => {
  const buy = await aLandedBuy(app, storehouse, { households, hasInvoice: false });
  const path = `${buy.path}/sharing-out`;
  const refused = await refusalOf(app, () => storehouse.coordinator.post(path));
  expect(refused).toMatchObject({ status: 409, code: 'buy-guard-unmet', isUnchanged: true });
  const { missing } = (await storehouse.coordinator.post(path)).body;
  expect(missing.map((lack: { code: string }) => lack.code)).toEqual([
    'line-not-split',
    'mass-not-shared',
    'mass-not-shared',
    'mass-not-shared',
    'invoice-missing',
  ]);
  expect(missing[0].ids.toSorted()).toEqual([buy.wheat, buy.oats, buy.beans].toSorted());
  expect(missing[4].ids).toEqual([buy.supplierId]);
  await splitGrain(storehouse, buy);
  const { body } = await storehouse.coordinator.post(path);
  expect(body.missing).toMatchObject([{ code: 'invoice-missing', ids: [buy.supplierId] }]);
});

test('two who share out at once charge everyone once, and a retry gets the first answer back', async () => {
  const buy = await aLandedBuy(app, storehouse, { households, isLanded: false });
  const path = `${buy.path}/sharing-out`;
  const early = await refusalOf(app, () => storehouse.coordinator.post(path));
  expect(early).toMatchObject({ status: 409, code: 'buy-stage-wrong', isUnchanged: true });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/landing`));
  await splitGrain(storehouse, buy);
  const keys = ['the first hand', 'the second hand'].map((key) => ({ 'Idempotency-Key': key }));
  const both = await Promise.all(keys.map((key) => storehouse.coordinator.post(path, undefined, key)));
  expect(both.map((answer) => answer.status).toSorted()).toEqual([201, 409]);
  const first = both.findIndex((answer) => answer.status === 201);
  const again = await storehouse.coordinator.post(path, undefined, keys[first]);
  expect([again.status, again.headers.get('Idempotent-Replay')]).toEqual([201, 'true']);
  expect(again.body).toEqual(both[first]?.body);
  const charges = bodyOf(await storehouse.coordinator.get(`${buy.path}/charges`));
  expect(charges).toMatchObject({ chargedMinorUnits: 49_850, clearingMinorUnits: 0 });
  expect(charges.lines).toHaveLength(5);
});

// Job map 4.3, last paragraph: the same freight of 88.00 under each basis; goods 139.54, 125.97, 105.62 and 39.37.
test.for([
  { freightBasis: 'by-weight', freight: { Ashdown: 2987, Birchall: 2713, Corran: 2260, Dell: 840 } },
  { freightBasis: 'by-value', freight: { Ashdown: 2991, Birchall: 2701, Corran: 2264, Dell: 844 } },
  { freightBasis: 'per-household', freight: { Ashdown: 2200, Birchall: 2200, Corran: 2200, Dell: 2200 } },
])('freight of 88.00 $freightBasis', async ({ freightBasis, freight }) => {
  // The grain builder sets a blend; the buy freezes what is in force when it is fixed, so the rule changes before.
  const buy = await aPlainBuy(app, storehouse, {
    treasurer: households.Birchall.caller,
    rules: { freightBasis },
    freightMinorUnits: 8800,
    foods: [
      {
        pledges: [
          { by: households.Ashdown.caller, wanted: 120 },
          { by: households.Birchall.caller, wanted: 100 },
          { by: households.Corran.caller, wanted: 50 },
          { by: households.Dell.caller, wanted: 30 },
        ],
        bags: [{}, {}, {}, {}, {}, { netGrams: 20_412 }],
      },
      {
        foodCode: 'oats-rolled',
        bagPriceMinorUnits: 3750,
        pledges: [
          { by: households.Ashdown.caller, wanted: 30 },
          { by: households.Birchall.caller, wanted: 40 },
          { by: households.Corran.caller, wanted: 70 },
          { by: households.Dell.caller, wanted: 10 },
        ],
        bags: [{}, {}, {}],
      },
      {
        foodCode: 'beans-black',
        bagSize: 25,
        bagPriceMinorUnits: 2140,
        pledges: [
          { by: households.Ashdown.caller, wanted: 50 },
          { by: households.Birchall.caller, wanted: 35 },
          { by: households.Corran.caller, wanted: 25 },
          { by: households.Dell.caller, wanted: 15 },
        ],
        bags: [{}, {}, {}, {}],
      },
    ],
  });
  const { supplierId } = buy;
  for (const claim of [
    { buyLineId: buy.lines['wheat-hard-red-winter'], kind: 'damage', minorUnits: 360, because: 'Torn.' },
    { buyLineId: buy.lines['beans-black'], kind: 'short', minorUnits: 2140, because: 'One short.' },
  ])
    bodyOf(await buy.treasurer.post(`${buy.path}/claims`, { supplierId, ...claim }), 201);
  for (const [code, rule] of [
    ['wheat-hard-red-winter', 'equal-awards'],
    ['oats-rolled', 'proportional'],
    ['beans-black', 'proportional'],
  ] as const)
    bodyOf(await storehouse.coordinator.post(`${buy.path}/lines/${buy.lines[code]}/splits`, { rule }), 201);
  const charges = bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  expect(sharesOf(charges, `freight:${freightBasis}`)).toEqual(freight);
  expect(sumOf(chargeOf(charges))).toBe(49_850);
});

test('the store fund’s levy is a cost line of its own, on top of the bills', async () => {
  const buy = await aPlainBuy(app, storehouse, {
    treasurer: households.Birchall.caller,
    rules: { levyHundredthsOfPercent: 250, freightBasis: 'by-weight' },
    foods: [
      {
        pledges: [
          { by: households.Ashdown.caller, wanted: 50 },
          { by: households.Corran.caller, wanted: 50 },
        ],
        bags: [{}, {}],
      },
    ],
  });
  const before = await balancesOf(app, households);
  await splitPlain(storehouse, buy);
  const charges = bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  expect(sharesOf(charges, 'levy')).toEqual({ Ashdown: 90, Corran: 90 }); // 2.5 % of 72.00 is 1.80
  expect(charges).toMatchObject({ chargedMinorUnits: 7200 + 180, clearingMinorUnits: 0 });
  expect((await balancesOf(app, households)).store_fund).toBe((before.store_fund ?? 0) - 180);
  await changeRules(storehouse, { levyHundredthsOfPercent: 0 });
});

test('a food that was billed and never came must be claimed back first', async () => {
  const buy = await aPlainBuy(app, storehouse, {
    treasurer: households.Birchall.caller,
    foods: [
      { pledges: [{ by: households.Ashdown.caller, wanted: 50 }], bags: [{}] },
      { foodCode: 'oats-rolled', pledges: [{ by: households.Dell.caller, wanted: 50 }], bags: [] },
    ],
  });
  bodyOf(
    await storehouse.coordinator.post(`${buy.path}/lines/${buy.lines['wheat-hard-red-winter']}/splits`, {}),
    201,
  );
  const oats = buy.lines['oats-rolled'];
  const refused = await refusalOf(app, () => storehouse.coordinator.post(`${buy.path}/sharing-out`));
  expect(refused).toMatchObject({ status: 422, code: 'does-not-add-up', isUnchanged: true });
  const { supplierId } = buy;
  const claim = { supplierId, buyLineId: oats, kind: 'short', minorUnits: 3600, because: 'It never came.' };
  bodyOf(await buy.treasurer.post(`${buy.path}/claims`, claim), 201);
  const charges = bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  expect(chargeOf(charges)).toEqual({ Ashdown: 3600 });
});

test('a food that was lost altogether and not made good is charged to those it was promised to', async () => {
  const buy = await aLandedBuy(app, storehouse, { households });
  for (const bag of buy.bags.oats) {
    const path = `${storehouse.path}/bags/${bag.id}`;
    bodyOf(await storehouse.coordinator.post(`${path}/holds`, { reason: 'A smell of oil.' }), 201);
    bodyOf(await storehouse.coordinator.post(`${path}/discard`, { finding: 'Oil in every bag.' }), 201);
  }
  for (const lineId of [buy.wheat, buy.beans])
    bodyOf(await storehouse.coordinator.post(`${buy.path}/lines/${lineId}/splits`, {}), 201);
  const { supplierId } = buy;
  const wish = { supplierId, buyLineId: buy.oats, kind: 'damage', minorUnits: 11_250, because: 'Oil.' };
  const claim = bodyOf(await buy.treasurer.post(`${buy.path}/claims`, wish), 201);
  const before = bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  expect(sharesOf(before, `goods:${buy.oats}`)).toEqual({});
  const granted = { minorUnits: 2250 };
  bodyOf(await buy.treasurer.post(`${storehouse.path}/claims/${claim.id}/credit`, granted), 201);
  const charges = bodyOf(await buy.treasurer.post(`${buy.path}/recharging`), 201);
  // 112.50 less 22.50 by the promises of 30, 40, 70 and 10 lb.
  expect(sharesOf(charges, `goods:${buy.oats}`)).toEqual({
    Ashdown: 1800,
    Birchall: 2400,
    Corran: 4200,
    Dell: 600,
  });
  expect(charges).toMatchObject({ clearingMinorUnits: 0, chargedMinorUnits: 49_850 - 2250 });
  await creditClaims(storehouse, buy);
  expect(bodyOf(await buy.treasurer.post(`${buy.path}/closing`), 201)).toMatchObject({ stage: 'closed' });
  const { findings } = bodyOf(await buy.treasurer.get(`${storehouse.path}/audit`));
  expect(findings.filter((finding: { holds: boolean }) => !finding.holds)).toEqual([]);
});

test('a claim refused before the close is charged again by the same weights, and the clearing comes to 0.00', async () => {
  const buy = await aSharedBuy(app, storehouse, { households });
  const claims = `${storehouse.path}/claims`;
  bodyOf(await buy.treasurer.post(`${claims}/${buy.claims?.short}/credit`, { minorUnits: 1640 }), 201);
  bodyOf(await buy.treasurer.post(`${claims}/${buy.claims?.torn}/refusal`, { because: 'Signed for.' }), 201);
  const open = bodyOf(await buy.treasurer.get(`${buy.path}/closing`));
  expect(open.missing).toMatchObject([
    { code: 'clearing-not-zero', minorUnits: 860 },
    { code: 'charges-behind' },
  ]);
  const charges = bodyOf(await buy.treasurer.post(`${buy.path}/recharging`), 201);
  expect(charges).toMatchObject({ clearingMinorUnits: 0, chargedMinorUnits: 49_850 + 860 });
  // 3.60 by 115/100/50/30 of 295 lb: 140.3, 122.0, 61.0 and 36.6; 5.00 by 40/28/20/12 of 100 lb.
  const wheat = [8280 + 140, 7200 + 122, 3600 + 61, 2160 + 37];
  const beans = [3424 + 200, 2397 + 140, 1712 + 100, 1027 + 60];
  expect(Object.values(sharesOf(charges, `goods:${buy.wheat}`))).toEqual(wheat);
  expect(Object.values(sharesOf(charges, `goods:${buy.beans}`))).toEqual(beans);
  const again = await refusalOf(app, () => buy.treasurer.post(`${buy.path}/recharging`));
  expect(again).toMatchObject({ status: 409, code: 'nothing-to-post', isUnchanged: true });
  expect(bodyOf(await buy.treasurer.post(`${buy.path}/closing`), 201).stage).toBe('closed');
  // A bill that comes still later goes by the line’s weights too, and leaves the closed clearing account alone.
  const chargeLineId = charges.lines.find(
    (line: { costLine: string }) => line.costLine === 'freight:per-household',
  ).id;
  const { supplierId } = buy;
  const late = { chargeLineId, minorUnits: -1000, supplierId, reason: 'A toll that was forgotten.' };
  const billed = bodyOf(await buy.treasurer.post(`${buy.path}/late-credits`, late), 201);
  const quarter = { Ashdown: 250, Birchall: 250, Corran: 250, Dell: 250 };
  expect(sharesOf(billed, 'late:freight:per-household')).toEqual(quarter);
  expect(billed).toMatchObject({ stage: 'closed', clearingMinorUnits: 0 });
});

test('a carrier’s bill that comes after sharing out is charged by the frozen basis', async () => {
  const buy = await aSharedBuy(app, storehouse, { households });
  const supplierId = bodyOf(
    await storehouse.coordinator.post(`${storehouse.path}/suppliers`, { name: 'Carrier' }),
  ).id;
  const bill = {
    supplierId,
    number: 'C-1',
    onDay: '2026-09-01',
    lines: [{ kind: 'freight', minorUnits: 1200 }],
  };
  bodyOf(await buy.treasurer.post(`${buy.path}/invoices`, bill), 201);
  const charges = bodyOf(await buy.treasurer.post(`${buy.path}/recharging`), 201);
  // Half by 185/168/140/52 of 545 lb, half by four.
  expect(sharesOf(charges, 'freight:by-weight')).toEqual({
    Ashdown: 1494 + 204,
    Birchall: 1356 + 185,
    Corran: 1130 + 154,
    Dell: 420 + 57,
  });
  expect(Object.values(sharesOf(charges, 'freight:per-household'))).toEqual([1250, 1250, 1250, 1250]);
  expect(charges.clearingMinorUnits).toBe(0);
});

test('beans that come late are split on what was still owed, and everyone pays as if all had come at once', async () => {
  const buy = await aSharedBuy(app, storehouse, { households });
  await receiveBags(app, storehouse, { buy, offers: buy.offers, bags: { beans: [{}] } });
  const path = `${buy.path}/lines/${buy.beans}/splits`;
  const late = bodyOf(await storehouse.coordinator.post(path, {}), 201);
  // 25 lb on remaining claims of 10, 7, 5 and 3 lb (4536, 3175, 2268 and 1361 g): all are met to the gram.
  expect(late).toMatchObject({ roundNo: 2, rule: 'proportional', landedGrams: 11_340 });
  expect(late.shares.map((share: { awardGrams: number }) => share.awardGrams)).toEqual([
    4536, 3175, 2268, 1361,
  ]);
  const closing = bodyOf(await buy.treasurer.get(`${buy.path}/closing`));
  expect(closing.missing.map((lack: { code: string }) => lack.code)).toEqual([
    'claim-open',
    'charges-behind',
  ]);
  // The supplier sent the bag after all: nothing is short any more, so that claim is refused.
  const because = 'It came with the next lorry.';
  bodyOf(
    await buy.treasurer.post(`${storehouse.path}/claims/${buy.claims?.short}/refusal`, { because }),
    201,
  );
  const charges = bodyOf(await buy.treasurer.post(`${buy.path}/recharging`), 201);
  // 107.00 by 50/35/25/15 of 125 lb.
  expect(sharesOf(charges, `goods:${buy.beans}`)).toEqual({
    Ashdown: 4280,
    Birchall: 2996,
    Corran: 2140,
    Dell: 1284,
  });
  // 44.00 by 195/175/145/55 of 570 lb.
  expect(sharesOf(charges, 'freight:by-weight')).toEqual({
    Ashdown: 1505,
    Birchall: 1351,
    Corran: 1119,
    Dell: 425,
  });
  expect(charges).toMatchObject({ chargedMinorUnits: 49_850 + 2140, clearingMinorUnits: 0 });
});

test.for([
  { wrong: { minorUnits: 0 }, status: 400, code: 'invalid-input', fields: ['minorUnits'] },
  { wrong: { minorUnits: 1.5 }, status: 400, code: 'invalid-input', fields: ['minorUnits'] },
  { wrong: { till: undefined }, status: 400, code: 'invalid-input', fields: ['till'] },
  { wrong: { reason: ' ' }, status: 400, code: 'invalid-input', fields: ['reason'] },
  { wrong: { currency: 'EUR' }, status: 422, code: 'currency-mixed', fields: ['currency'] },
  { wrong: { onDay: '2026-02-30' }, status: 400, code: 'invalid-input', fields: ['onDay'] },
  { wrong: { shares: [] }, status: 400, code: 'invalid-input', fields: ['shares'] },
  {
    wrong: { chargeLineId: '01a05d7b-f580-7e1a-8e5b-7f707f5faeb0' },
    status: 404,
    code: 'thing-not-found',
    fields: [],
  },
])('a late credit with $wrong is refused and changes nothing', async ({ wrong, ...expected }) => {
  const buy = await theSharedBuy();
  const chargeLineId = buy.charges.lines[0].id;
  const credit = { chargeLineId, minorUnits: 100, till: 'bank', reason: 'Goodwill.', ...wrong };
  const refused = await refusalOf(app, () => buy.treasurer.post(`${buy.path}/late-credits`, credit));
  expect(refused).toEqual({ ...expected, isUnchanged: true });
});

test('a member sees the bills and their own part of them, the treasurer everyone’s', async () => {
  const buy = await theSharedBuy();
  const own = bodyOf(await households.Dell.caller.get(`${buy.path}/charges`));
  expect(chargeOf(own)).toEqual({ Dell: 5457 });
  expect(own.lines.every((line: { shares: unknown[] }) => line.shares.length === 1)).toBe(true);
  expect(own.chargedMinorUnits).toBe(49_850);
  const all = bodyOf(await buy.treasurer.get(`${buy.path}/charges`));
  expect(sumOf(chargeOf(all))).toBe(49_850);
  const looks = bodyOf(
    await households.Dell.caller.get(
      `${storehouse.path}/households/${households.Dell.householdId}/private-reads`,
    ),
  );
  expect(JSON.stringify(looks)).toContain('charges of a buy');
});

test.for([
  { path: 'sharing-out', body: undefined },
  { path: 'recharging', body: undefined },
  { path: 'late-credits', body: {} },
])('$path is not for members, and not there for another storehouse', async ({ path, body }) => {
  const buy = await theSharedBuy();
  const member = await refusalOf(app, () => households.Dell.caller.post(`${buy.path}/${path}`, body));
  expect(member).toMatchObject({ status: 403, code: 'duty-missing', isUnchanged: true });
  const foreign = await refusalOf(app, () => other.coordinator.post(`${buy.path}/${path}`, body));
  expect(foreign).toMatchObject({ status: 404, code: 'storehouse-not-found', isUnchanged: true });
  const inTheirs = buy.path.replace(storehouse.storehouseId, other.storehouseId);
  const strayed = await refusalOf(app, () => other.coordinator.post(`${inTheirs}/${path}`, body));
  expect(strayed.status).toBe(path === 'late-credits' ? 403 : 404);
  expect(strayed.isUnchanged).toBe(true);
});

let shared: Awaited<ReturnType<typeof aSharedBuy>> | undefined;
let other: TestStorehouse;
beforeAll(async () => {
  other = await anotherStorehouse(app);
});
/** One shared-out buy for the tests that leave it as it is. */
async function theSharedBuy() {
  shared ??= await aSharedBuy(app, storehouse, { households });
  return shared;
}

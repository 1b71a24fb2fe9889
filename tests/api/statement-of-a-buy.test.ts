import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import type { GrainHouseholds } from '../support/fixed-buy.ts';
import { aSharedBuy, creditClaims, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

// The figures of the job map's whole buy, its sections 4.3 and 4.4.
let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
});
afterAll(() => app.close());

const statementOf = async (name: keyof GrainHouseholds, query = '') => {
  const { householdId, caller } = buy.households[name];
  return bodyOf(await caller.get(`${storehouse.path}/households/${householdId}/statement${query}`));
};
const treasurer = async (path: string) => bodyOf(await buy.treasurer.get(`${storehouse.path}${path}`));

test.for([
  { name: 'Ashdown', goods: [8280, 2250, 3424], freight: 1494 + 1100, total: 16_548, closing: 9348 },
  { name: 'Birchall', goods: [7200, 3000, 2397], freight: 1356 + 1100, total: 15_053, closing: 8753 },
  { name: 'Corran', goods: [3600, 5250, 1712], freight: 1130 + 1100, total: 12_792, closing: 7492 },
  { name: 'Dell', goods: [2160, 750, 1027], freight: 420 + 1100, total: 5457, closing: 3157 },
] as const)('$name finds on its statement what its charge is made of', async (expected) => {
  const statement = await statementOf(expected.name);
  const [of] = statement.buys;
  expect(statement.buys).toHaveLength(1);
  expect(of.foods.map((food: { goodsMinorUnits: number }) => food.goodsMinorUnits)).toEqual(expected.goods);
  expect(of).toMatchObject({
    buyId: buy.buyId,
    freightMinorUnits: expected.freight,
    otherMinorUnits: 0,
    totalMinorUnits: expected.total,
  });
  expect(statement).toMatchObject({
    closingMinorUnits: expected.closing,
    closing: 'you-owe',
    deposits: [],
    tieBreak: 'lower-seat',
  });
  const charge = statement.lines.find((line: { what: string }) => line.what === 'shared-out');
  expect(charge).toMatchObject({ chargeMinorUnits: expected.total, buyId: buy.buyId });
});

test('the grams of a statement are those of the splits, the odd cent is marked', async () => {
  const [{ foods, costLines }] = (await statementOf('Birchall')).buys;
  // Birchall is awarded 100 lb of wheat, 40 lb of oats and 28 lb of beans, from whole bags of 22,680 and 11,340 g.
  expect(foods.map((food: { food: { en: string }; awardGrams: number }) => food.awardGrams)).toEqual([
    45_360, 18_144, 12_701,
  ]);
  const spare = costLines.filter((line: { gotSpareUnit: boolean }) => line.gotSpareUnit);
  expect(spare).toMatchObject([{ costLine: `goods:${buy.beans}`, minorUnits: 2397, lineMinorUnits: 8560 }]);
});

test('the clearing account is shown on its way down to 0.00', async () => {
  const clearing = await treasurer(`/clearing/${buy.buyId}`);
  expect(clearing).toMatchObject({
    invoicedMinorUnits: 52_350,
    creditedMinorUnits: 2500,
    chargedMinorUnits: 49_850,
    forfeitedMinorUnits: 0,
    fundMinorUnits: 0,
    otherMinorUnits: 0,
    balanceMinorUnits: 0,
  });
  const steps = clearing.steps.map(
    (step: { what: string; amountMinorUnits: number; balanceMinorUnits: number }) => [
      step.what,
      step.amountMinorUnits,
      step.balanceMinorUnits,
    ],
  );
  expect(steps).toEqual([
    ['claim-raised', -360, -360],
    ['claim-raised', -2140, -2500],
    ['supplier-invoiced', 52_350, 49_850],
    ['shared-out', -49_850, 0],
  ]);
  const asCoordinator = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/clearing/${buy.buyId}`));
  expect(asCoordinator.balanceMinorUnits).toBe(0);
  expect(asCoordinator.steps.every((step: { note: string }) => step.note === '')).toBe(true);
  const member = await buy.households.Dell.caller.get(`${storehouse.path}/clearing/${buy.buyId}`);
  expect([member.status, member.body.code]).toEqual([403, 'duty-missing']);
});

test('what the supplier still owes is listed until it is credited', async () => {
  const before = await treasurer('/claims-outstanding');
  expect(before).toMatchObject({ outstandingMinorUnits: 2500 });
  expect(
    before.claims.map((claim: { kind: string; ageDays: number }) => [claim.kind, claim.ageDays]),
  ).toEqual(
    expect.arrayContaining([
      ['damage', 0],
      ['short', 0],
    ]),
  );
  await creditClaims(storehouse, buy);
  expect(await treasurer('/claims-outstanding')).toMatchObject({ claims: [], outstandingMinorUnits: 0 });
});

test('the supplier is paid what its bill comes to after the credits, by the bill', async () => {
  const bill = { supplierId: buy.supplierId, invoiceId: buy.invoiceId, till: 'bank' };
  const pay = (minorUnits: number) =>
    buy.treasurer.post(`${storehouse.path}/supplier-payments`, { ...bill, minorUnits });
  expect((await pay(49_851)).body).toMatchObject({ code: 'not-enough-left' });
  const paid = bodyOf(await pay(49_850), 201);
  const entry = await treasurer(`/entries/${paid.entryId}`);
  expect(entry).toMatchObject({ buyId: buy.buyId, subjectId: buy.invoiceId });
});

test('a bill of another supplier is not paid by mistake', async () => {
  const { id: supplierId } = bodyOf(
    await storehouse.coordinator.post(`${storehouse.path}/suppliers`, { name: 'Another mill' }),
    201,
  );
  const wish = { supplierId, invoiceId: buy.invoiceId, minorUnits: 5, till: 'bank' };
  const answer = await buy.treasurer.post(`${storehouse.path}/supplier-payments`, wish);
  expect([answer.status, answer.body.fields[0].field]).toEqual([400, 'invoiceId']);
});

test.for(['bag-landed', 'split-made', 'supplier-invoiced', 'claim-credited', 'shared-out'])(
  'the entry "%s" is mended where it was made, since a record stands beside it',
  async (what) => {
    const [row] = await app.admin<
      { entry_id: string }[]
    >`select entry_id from book.entry where what = ${what} limit 1`;
    const path = `${storehouse.path}/entries/${row?.entry_id ?? ''}/reversal`;
    const answer = await buy.treasurer.post(path, { reason: 'a slip' });
    expect([answer.status, answer.body.code, answer.body.what]).toEqual([409, 'cannot-reverse', what]);
    expect(answer.body.detail).toMatch(/instead|again|late credit|Mend/);
  },
);

test('with the balances received the book of the job map stands: nothing owed, nothing held', async () => {
  const owed = { Ashdown: 9348, Birchall: 8753, Corran: 7492, Dell: 3157 };
  for (const [name, minorUnits] of Object.entries(owed)) {
    const { householdId } = buy.households[name as keyof GrainHouseholds];
    const wish = { householdId, minorUnits, till: 'bank' };
    bodyOf(await buy.treasurer.post(`${storehouse.path}/payments`, wish), 201);
  }
  // J1 to J8: 211.00 of deposits, 498.50 to the supplier, 287.50 of balances.
  const balance = await treasurer('/trial-balance');
  expect(balance).toMatchObject({ agrees: true, debitMinorUnits: 0, creditMinorUnits: 0 });
  expect((await statementOf('Dell')).closing).toBe('nothing-due');
});

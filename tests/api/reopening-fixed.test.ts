import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import {
  aFixedBuy,
  aGrainBuy,
  asksOf,
  fixedRefusalOf,
  type GrainHouseholds,
  openGrain,
  payDeposits,
} from '../support/fixed-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

test('a fixed buy is opened again with a reason: promises, asks and bags go, the fill and the deposits stay', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  await payDeposits(buy, { Dell: 2300 });
  const reopening = { reason: 'two more households' };
  const untold = await fixedRefusalOf(app, () =>
    storehouse.coordinator.post(`${buy.path}/reopening`, reopening),
  );
  expect(untold).toMatchObject({ missing: ['deposit-holder-not-told'], isUnchanged: true });
  const toldHouseholdIds = [households.Dell.householdId];
  const opened = await storehouse.coordinator.post(`${buy.path}/reopening`, {
    ...reopening,
    toldHouseholdIds,
  });
  expect([opened.status, opened.body.stage]).toEqual([201, 'gathering']);
  const { allotments } = bodyOf(await storehouse.coordinator.get(`${buy.path}/allotments`));
  expect(allotments).toEqual([]);
  const own = bodyOf(await households.Dell.caller.get(`${buy.path}/deposits/own`));
  expect(own).toMatchObject({ heldMinorUnits: 2300, askedMinorUnits: null });
  expect(await app.admin`select from book.fill where buy_id = ${buy.buyId}`).toHaveLength(1);
  const again = bodyOf(await storehouse.coordinator.post(`${buy.path}/fixing`, {}), 201);
  expect(again.stage).toBe('fixed');
  expect((await asksOf(buy, households)).map(([, , asked]) => asked)).toEqual([7200, 6300, 5300, 2300]);
});

test('a deposit of somebody who gets nothing when the buy is fixed again goes back on its balance', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  await payDeposits(buy, { Dell: 2300 });
  const toldHouseholdIds = [households.Dell.householdId];
  bodyOf(
    await storehouse.coordinator.post(`${buy.path}/reopening`, { reason: 'prices', toldHouseholdIds }),
    201,
  );
  const { own } = bodyOf(await households.Dell.caller.get(`${buy.path}/pledges`));
  for (const { id, version } of own)
    bodyOf(await households.Dell.caller.post(`${buy.path}/pledges/${id}/withdrawal`, { version }));
  bodyOf(await storehouse.coordinator.post(`${buy.path}/fixing`, {}), 201);
  const [row] = await app.admin<{ balance: string }[]>`select inflow - outflow as balance from book.account
    where kind = 'household' and owner_id = ${households.Dell.householdId}`;
  expect(Number(row?.balance)).toBe(-2300);
  expect(bodyOf(await households.Dell.caller.get(`${buy.path}/deposits/own`)).heldMinorUnits).toBe(0);
});

test('opening again needs a coordinator, a reason and a buy that is fixed', async () => {
  const buy = await aGrainBuy(app, storehouse, { households });
  const reopen = (body: unknown) => storehouse.coordinator.post(`${buy.path}/reopening`, body);
  expect((await reopen({ reason: 'why not' })).body.code).toBe('buy-stage-wrong');
  expect((await reopen({ reason: ' ' })).body.fields[0].field).toBe('reason');
  expect((await households.Dell.caller.post(`${buy.path}/reopening`, { reason: 'why' })).body.code).toBe(
    'duty-missing',
  );
});

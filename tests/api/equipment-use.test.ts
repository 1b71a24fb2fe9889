import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import {
  anItem,
  aShed,
  book,
  bringBack,
  handOut,
  type TestItem,
  type TestShed,
  ticksOf,
} from '../support/equipment.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';

/*
 * The sealer is there from 1 September 2026, 00:00 in Chicago (05:00 UTC). It is out from 1 September, 16:00 UTC, to the next
 * day, 22:00: 30 hours, six of them late. Read on 3 September at 05:00 UTC it was there for 48 hours: 30 of 48 is 62.5 %.
 * Ten cans were closed. 45.00 was paid for its repair and 24.00 charged for a lost gauge: 21.00 over ten is 2.10 each.
 */
let app: TestApp;
let shed: TestShed;
let sealer: TestItem;
let treasurer: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  shed = await aShed(app);
  treasurer = await aHousehold(app, shed, 'Till', { duties: ['treasurer'] });
  const free = { depositMinorUnits: 0, feeMinorUnits: 0, lateFeeMinorUnits: 0 };
  sealer = await anItem(shed, { ...free, name: 'Sealer' });
  await anItem(shed, { ...free, name: 'Dolly', units: 2 }, []);
  app.clock.now = new Date('2026-09-01T15:30:00Z');
  const booked = bodyOf(await book(shed.hale.caller, sealer, ['2026-09-01T11:00', '2026-09-02T11:00']), 201);
  const waitFor = (from: string, until: string) =>
    shed.moss.caller.post(`${sealer.path}/waiting`, { from, until });
  const taken = bodyOf(await waitFor('2026-09-02T09:00', '2026-09-02T12:00'), 201);
  await shed.moss.caller.delete(`${shed.path}/equipment-waiting/${taken.id}`);
  bodyOf(await waitFor('2026-09-10T09:00', '2026-09-10T12:00'), 201); // free, so it is offered at once
  app.clock.now = new Date('2026-09-01T16:00:00Z');
  const { id } = bodyOf(await handOut(shed.hale.caller, shed, booked.id, sealer), 201);
  app.clock.now = new Date('2026-09-02T22:00:00Z');
  const back = { uses: 10, parts: ticksOf(sealer, { 'Seam gauge': 0 }) };
  bodyOf(await bringBack(shed.hale.caller, shed, id, sealer, back), 201);
  const money = { minorUnits: 4500, currency: 'USD', onDay: '2026-09-02', till: 'bank' };
  bodyOf(await treasurer.caller.post(`${shed.path}/fund-receipts`, { ...money, minorUnits: 9000 }), 201);
  bodyOf(await treasurer.caller.post(`${shed.path}/fund-spendings`, { ...money, itemId: sealer.id }), 201);
  app.clock.now = new Date('2026-09-03T05:00:00Z');
});
afterAll(() => app.close());

const readUse = async () => bodyOf(await shed.keeper.caller.get(`${shed.path}/equipment-use`));

test('a year of a thing: its hours, what was late, what a use cost, and who waited', async () => {
  const { fromOn, toOn, items } = await readUse();
  expect([fromOn, toOn]).toEqual(['2025-09-04', '2026-09-03']);
  expect(items).toEqual([
    {
      ...{ itemId: expect.any(String), itemName: 'Dolly', pieces: 2, uses: 0 },
      ...{ usedHours: 0, thereHours: 96, usedTenthsPercent: 0 },
      ...{ lateLoans: 0, dueLoans: 0, lateTenthsPercent: null },
      ...{ costMinorUnits: 0, costPerUseMinorUnits: null, waited: { served: 0, waiting: 0, without: 0 } },
    },
    {
      ...{ itemId: sealer.id, itemName: 'Sealer', pieces: 1, uses: 10 },
      ...{ usedHours: 30, thereHours: 48, usedTenthsPercent: 625 },
      ...{ lateLoans: 1, dueLoans: 1, lateTenthsPercent: 1000 },
      ...{ costMinorUnits: 2100, costPerUseMinorUnits: 210 },
      waited: { served: 0, waiting: 1, without: 1 }, // one stopped waiting, one is offered its time
    },
  ]);
});

test('what a year’s end carries into the store fund is no cost', async () => {
  const before = (await readUse()).items;
  app.clock.now = new Date('2026-09-03T06:00:00Z');
  const ending = await treasurer.caller.post(`${shed.path}/year-ends`, { throughOn: '2026-09-02', note: '' });
  expect([ending.status, ending.body.code]).toEqual([201, undefined]);
  const [, sealed] = (await readUse()).items;
  expect(sealed.costMinorUnits).toBe(before[1].costMinorUnits);
});

test('a member reads none of it', async () => {
  expect((await shed.moss.caller.get(`${shed.path}/equipment-use`)).body.code).toBe('duty-missing');
});

import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anItem, aShed, book, bringBack, handOut, type TestShed } from '../support/equipment.ts';
import type { TestHousehold } from '../support/household.ts';
import { aHall, aPackingSession, cansOf } from '../support/packing.ts';

let app: TestApp;
let shed: TestShed;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
});
afterAll(() => app.close());

const SATURDAY = ['2026-09-05T09:00', '2026-09-05T18:00'] as const;
const leavingOf = ({ path }: { path: string }, { householdId }: TestHousehold) =>
  `${path}/households/${householdId}/leaving`;
const unsettled = async (storehouse: { path: string }, household: TestHousehold) =>
  bodyOf(await household.caller.get(leavingOf(storehouse, household))).unsettled;

test('a household that a packing day is to pack for takes its wishes and its time back first', async () => {
  const hall = await aHall(app, shed);
  const { Dell } = hall.buy.households;
  const day = await aPackingSession(shed, hall);
  const ofDays = async () =>
    (await unsettled(shed, Dell)).filter(({ what }: { what: string }) => what === 'packing-day');
  expect(await ofDays()).toEqual([]);
  const wish = (wishes: unknown[]) => Dell.caller.put(`${day}/wishes`, { wishes });
  bodyOf(await wish([cansOf(hall, { containers: 1 })]));
  const slot = await Dell.caller.post(`${day}/slots`, { startsAt: '2026-12-05T18:00:00Z', orWait: false });
  expect(await ofDays()).toMatchObject([{ stage: 'open', message: expect.stringMatching(/is to pack for/) }]);
  bodyOf(await wish([]));
  expect(await ofDays()).toHaveLength(1); // its time is still booked
  expect((await Dell.caller.post(`${day}/slots/${bodyOf(slot, 201).id}/giving-back`)).status).toBe(204);
  expect(await ofDays()).toEqual([]);
});

test('a household is told for which thing its deposit is held, and has it back with the thing', async () => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  const mill = await anItem(shed, { name: 'Stone mill', depositMinorUnits: 4000, feeMinorUnits: 0 });
  const { id } = bodyOf(await book(shed.moss.caller, mill, SATURDAY), 201);
  app.clock.now = new Date('2026-09-05T14:00:00Z');
  const loan = bodyOf(await handOut(shed.keeper.caller, shed, id, mill, { depositFrom: 'cash' }), 201);
  const left = await unsettled(shed, shed.moss);
  expect(left).toMatchObject([
    { what: 'deposit', thing: 'Stone mill', message: expect.stringMatching(/ is held for Stone mill\.$/) },
    { what: 'on-loan', thing: 'Stone mill' },
  ]);
  app.clock.now = new Date('2026-09-05T20:00:00Z');
  bodyOf(await bringBack(shed.keeper.caller, shed, loan.id, mill, { refundTo: 'cash' }), 201);
  expect(await unsettled(shed, shed.moss)).toEqual([]);
});

test('a household with a thing that is booked or out is told which, and leaves once it is back', async () => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  const sealer = await anItem(shed, { name: 'Crank sealer', depositMinorUnits: 0, feeMinorUnits: 0 });
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  expect(await unsettled(shed, shed.hale)).toMatchObject([
    { what: 'booked', bookingId: id, thing: 'Crank sealer' },
  ]);
  app.clock.now = new Date('2026-09-05T14:00:00Z');
  const loan = bodyOf(await handOut(shed.keeper.caller, shed, id, sealer), 201);
  const refused = await shed.hale.caller.post(leavingOf(shed, shed.hale), { version: 1 });
  expect(refused.status).toBe(409);
  expect(refused.body).toMatchObject({
    code: 'household-not-settled',
    detail: 'Crank sealer is still out with the household. It is to be brought back first.',
  });
  app.clock.now = new Date('2026-09-05T20:00:00Z');
  bodyOf(await bringBack(shed.keeper.caller, shed, loan.id, sealer), 201);
  bodyOf(await shed.hale.caller.post(leavingOf(shed, shed.hale), { version: 1 }));
});

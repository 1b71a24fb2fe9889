import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { anItem, aShed, book, type TestItem, type TestShed } from '../support/equipment.ts';
import type { TestHousehold } from '../support/household.ts';
import { refusalOf } from '../support/money-books.ts';
import { aHall, aPackingSession, cansOf, type TestHall } from '../support/packing.ts';

// It is Friday, 20 November 2026, 09:00 on the wall in Chicago; the canning day is 5 December, 11:00 to 17:00 there.
const NOW = new Date('2026-11-20T15:00:00Z');
const FIRST = ['2026-11-28T09:00', '2026-11-28T18:00'] as const;
const NEXT = ['2026-11-28T18:00', '2026-11-29T12:00'] as const;
const AFTER_THE_DAY = ['2026-12-06T09:00', '2026-12-06T12:00'] as const;
let app: TestApp;
let shed: TestShed;
let hall: TestHall;
let foodsOf: Record<string, string>;
let mill: TestItem;
let count = 0;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
  hall = await aHall(app, shed);
  foodsOf = await foodIdsOf(shed);
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.now = NOW;
  const mealy = { touchesFood: true, postMinutes: 60, depositMinorUnits: 0 };
  mill = await anItem(shed, { name: `Grain mill ${++count}`, ...mealy }, []);
});

const through = (...codes: string[]) => ({ foodIds: codes.map((code) => foodsOf[code]) });
const waitFor = ({ caller }: TestHousehold, [from, until]: readonly [string, string], more = {}) =>
  caller.post(`${mill.path}/waiting`, { from, until, ...more });
const ownOf = async ({ caller }: TestHousehold) =>
  bodyOf(await caller.get(`${shed.path}/bookings`)).bookings.filter(
    ({ itemId }: { itemId: string }) => itemId === mill.id,
  );
const cancel = async ({ caller }: TestHousehold, id: string) =>
  bodyOf(await caller.post(`${shed.path}/bookings/${id}/cancelling`));
const accept = ({ caller }: TestHousehold, id: string, more?: Record<string, unknown>) =>
  caller.post(`${shed.path}/bookings/${id}/acceptance`, more);

test('whoever waits for a mill says what goes through it, as whoever books it does', async () => {
  bodyOf(await book(shed.hale.caller, mill, FIRST, through('rice-white-long')), 201);
  const silent = await refusalOf(app, () => waitFor(shed.moss, FIRST));
  expect(silent).toMatchObject({ code: 'invalid-input', fields: ['foodIds'], isUnchanged: true });
  const unknown = await refusalOf(app, () => waitFor(shed.moss, FIRST, { foodIds: [mill.id] }));
  expect(unknown).toMatchObject({ code: 'thing-not-found', fields: ['foodIds.0'], isUnchanged: true });
  bodyOf(await waitFor(shed.moss, FIRST, through('wheat-hard-red-winter')), 201);
});

test('a time that comes free carries the foods of who waited, so that wheat is never handed straight to rice', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, mill, FIRST, through('rice-white-long')), 201);
  bodyOf(await waitFor(shed.moss, FIRST, through('wheat-hard-red-winter')), 201);
  await cancel(shed.hale, id);
  const [offered] = await ownOf(shed.moss);
  expect(offered).toMatchObject({
    ...{ state: 'offered', areFoodsTold: true, foods: [{ id: foodsOf['wheat-hard-red-winter'] }] },
  });
  bodyOf(await accept(shed.moss, offered.id));
  const rice = { ...through('rice-white-long'), byRelay: true };
  const clash = await refusalOf(app, () => book(shed.hale.caller, mill, NEXT, rice));
  expect(clash).toMatchObject({ code: 'relay-refused', isUnchanged: true });
  const later = ['2026-11-29T09:00', '2026-11-29T12:00'] as const;
  const fetched = bodyOf(await book(shed.hale.caller, mill, later, through('rice-white-long')), 201);
  expect(fetched).toMatchObject({ leftBehind: ['gluten', 'wheat'], isLeftBehindUntold: false });
});

test('whoever waited since before anybody was asked says what goes through it when taking the time', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, mill, FIRST, through('rice-white-long')), 201);
  const waits = bodyOf(await waitFor(shed.moss, FIRST, through('wheat-hard-red-winter')), 201);
  await app.admin`delete from book.equipment_wish_food where equipment_wish_id = ${waits.id}`;
  await cancel(shed.hale, id);
  const [offered] = await ownOf(shed.moss);
  expect(offered).toMatchObject({ state: 'offered', areFoodsTold: false, foods: [] });
  const silent = await refusalOf(app, () => accept(shed.moss, offered.id));
  expect(silent).toMatchObject({ code: 'invalid-input', fields: ['foodIds'], isUnchanged: true });
  const unknown = await refusalOf(app, () => accept(shed.moss, offered.id, { foodIds: [mill.id] }));
  expect(unknown).toMatchObject({ code: 'thing-not-found', fields: ['foodIds.0'], isUnchanged: true });
  const wheat = through('wheat-hard-red-winter');
  expect(bodyOf(await accept(shed.moss, offered.id, wheat))).toMatchObject({
    ...{ state: 'booked', areFoodsTold: true, foods: [{ id: wheat.foodIds[0] }] },
  });
  const rice = { ...through('rice-white-long'), byRelay: true };
  const clash = await refusalOf(app, () => book(shed.hale.caller, mill, NEXT, rice));
  expect(clash).toMatchObject({ code: 'relay-refused', isUnchanged: true });
});

test('foods that the wish named are not told anew when taking the time', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, mill, FIRST, through('rice-white-long')), 201);
  bodyOf(await waitFor(shed.moss, FIRST, through('wheat-hard-red-winter')), 201);
  await cancel(shed.hale, id);
  const [offered] = await ownOf(shed.moss);
  const other = await refusalOf(app, () => accept(shed.moss, offered.id, through('rice-white-long')));
  expect(other).toMatchObject({ code: 'invalid-input', fields: ['foodIds'], isUnchanged: true });
  bodyOf(await accept(shed.moss, offered.id));
});

test('what nobody told is not the same as nothing: the next one is told so', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, mill, FIRST, through('rice-white-long')), 201);
  expect(bodyOf(await shed.hale.caller.get(`${shed.path}/bookings`)).bookings).toContainEqual(
    expect.objectContaining({ id, isLeftBehindUntold: false }), // nothing ran before it
  );
  await app.admin`delete from book.booking_food where booking_id = ${id}`; // as one from before anybody was asked
  const [untold] = await ownOf(shed.hale);
  expect(untold).toMatchObject({ foods: [], areFoodsTold: false });
  const later = ['2026-11-29T09:00', '2026-11-29T12:00'] as const;
  const next = bodyOf(await book(shed.moss.caller, mill, later, through('rice-white-long')), 201);
  expect(next).toMatchObject({ leftBehind: [], isLeftBehindUntold: true, areFoodsTold: true });
  const { bookings } = bodyOf(await shed.hale.caller.get(`${mill.path}/bookings`));
  expect(bookings.at(-1)).toMatchObject({ household: null, isLeftBehindUntold: false }); // another’s matter
});

test('what a packing day means to run through it counts as much as what a household did', async () => {
  const day = await aPackingSession(shed, hall);
  const { booked } = bodyOf(await hall.lead.caller.post(`${day}/equipment`, { itemId: mill.id }), 201);
  expect(booked).toMatchObject([{ purpose: 'session', areFoodsTold: false }]);
  const rice = through('rice-white-long');
  const before = bodyOf(await book(shed.moss.caller, mill, AFTER_THE_DAY, rice), 201);
  expect(before).toMatchObject({ isLeftBehindUntold: true });
  const { Dell } = hall.buy.households;
  bodyOf(await Dell.caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 1 })] }));
  expect(await ownOf(shed.moss)).toMatchObject([
    { id: before.id, leftBehind: ['gluten', 'wheat'], isLeftBehindUntold: false },
  ]);
  const { booked: told } = bodyOf(await hall.lead.caller.get(`${day}/equipment`));
  expect(told).toMatchObject([{ areFoodsTold: true, foods: [{ id: hall.wheatId }] }]);
});

test('whose mill a far packing day takes is offered another time with the foods that were told', async () => {
  const times = ['2026-12-19T12:00', '2026-12-19T16:00'] as const;
  bodyOf(await book(shed.moss.caller, mill, times, through('rice-white-long')), 201);
  const far = { startsAt: '2026-12-19T17:00:00Z', endsAt: '2026-12-19T23:00:00Z' };
  const day = await aPackingSession(shed, hall, far);
  expect(bodyOf(await hall.lead.caller.post(`${day}/equipment`, { itemId: mill.id }), 201).outranked).toBe(1);
  expect(await ownOf(shed.moss)).toMatchObject([
    { state: 'offered', foods: [{ id: foodsOf['rice-white-long'] }] },
  ]);
});

import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
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
} from '../support/equipment.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { refusalOf } from '../support/money-books.ts';

// Hale has it from Saturday 5 September 2026, 09:00 to 18:00 in Chicago, and does not bring it back.
const [BEFORE, START] = [new Date('2026-09-01T15:00:00Z'), new Date('2026-09-05T14:00:00Z')];
const [DUE, LATE] = [new Date('2026-09-05T23:00:00Z'), new Date('2026-09-07T15:00:00Z')];
const SATURDAY = ['2026-09-05T09:00', '2026-09-05T18:00'] as const;
const NEXT_WEEK = ['2026-09-12T09:00', '2026-09-12T18:00'] as const;
let app: TestApp;
let shed: TestShed;
let lead: TestHousehold;
let sealer: TestItem;
let loanId: string;
let count = 0;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
  lead = await aHousehold(app, shed, 'Lead', { duties: ['packing_lead'] });
});
afterAll(() => app.close());
beforeEach(async () => {
  sealer = await lend({ name: `Sealer ${++count}` });
  app.clock.now = LATE;
});

/** A thing of which Hale has a piece out. */
async function lend(wish: Record<string, unknown>): Promise<TestItem> {
  app.clock.now = BEFORE;
  const item = await anItem(shed, wish, []);
  const { id } = bodyOf(await book(shed.hale.caller, item, SATURDAY), 201);
  app.clock.now = START;
  loanId = bodyOf(await handOut(shed.hale.caller, shed, id, item), 201).id;
  return item;
}
const freeOf = async (item = sealer) =>
  bodyOf(await shed.moss.caller.get(`${item.path}/free-times?days=14&leastMinutes=60`));
const ownOf = async ({ caller }: TestHousehold, item = sealer) =>
  bodyOf(await caller.get(`${shed.path}/bookings`)).bookings.filter(
    ({ itemId }: { itemId: string }) => itemId === item.id,
  );

test('what is out and late is free at no time, and what is only out is free once it was cleaned', async () => {
  app.clock.now = DUE;
  expect(await freeOf()).toMatchObject({ free: [{ startsAt: '2026-09-06T11:00:00.000Z' }], late: [] });
  app.clock.now = new Date(DUE.getTime() + 1);
  expect(await freeOf()).toMatchObject({ free: [], late: [{ unitNo: 1, dueAt: DUE.toISOString() }] });
  app.clock.now = LATE;
  expect(await freeOf()).toMatchObject({ free: [], late: [{ unitNo: 1, dueAt: DUE.toISOString() }] });
  bodyOf(await bringBack(shed.hale.caller, shed, loanId, sealer), 201);
  expect(await freeOf()).toMatchObject({ free: [{ startsAt: '2026-09-08T03:00:00.000Z' }], late: [] });
});

test('a booking of what is out and late is refused with that reason, and a wish for it waits until it is back', async () => {
  const refused = await refusalOf(app, () => book(shed.moss.caller, sealer, NEXT_WEEK));
  expect(refused).toMatchObject({ code: 'equipment-taken', fields: ['from'], isUnchanged: true });
  const { detail, isLate, freeTimes } = (await book(shed.moss.caller, sealer, NEXT_WEEK)).body;
  expect([detail, isLate, freeTimes]).toEqual([
    expect.stringMatching(/^It is out and late; nobody knows when it is back\./),
    true,
    [],
  ]);
  const [from, until] = NEXT_WEEK;
  bodyOf(await shed.moss.caller.post(`${sealer.path}/waiting`, { from, until }), 201);
  expect(await ownOf(shed.moss)).toEqual([]);
  bodyOf(await bringBack(shed.hale.caller, shed, loanId, sealer), 201);
  expect(await ownOf(shed.moss)).toMatchObject([{ state: 'offered', outUntil: null }]);
});

test('a time that somebody else has booked is not called late', async () => {
  app.clock.now = START;
  bodyOf(await book(shed.moss.caller, sealer, NEXT_WEEK), 201);
  app.clock.now = LATE;
  const { body } = await book(shed.keeper.caller, sealer, NEXT_WEEK);
  expect(body).toMatchObject({ code: 'equipment-taken', isLate: false });
  expect(body.detail).not.toMatch(/late/);
});

test('of two dollies with one late the other is lent, and a third wish is refused', async () => {
  const dollies = await lend({ name: `Dolly ${count}`, units: 2, postMinutes: 0 });
  app.clock.now = LATE;
  const { free, late } = await freeOf(dollies);
  expect(free.map(({ unitNo }: { unitNo: number }) => unitNo)).toEqual([2]);
  expect(late).toMatchObject([{ unitNo: 1 }]);
  expect(bodyOf(await book(shed.moss.caller, dollies, NEXT_WEEK), 201)).toMatchObject({ unitNo: 2 });
  const last = await refusalOf(app, () => book(shed.keeper.caller, dollies, NEXT_WEEK));
  expect(last).toMatchObject({ code: 'equipment-taken', isUnchanged: true });
  const { peaks } = bodyOf(await shed.keeper.caller.get(`${shed.path}/equipment-desk`));
  expect(peaks.find(({ itemId }: { itemId: string }) => itemId === dollies.id)).toMatchObject({
    mostAtOnce: 2, // the late one is out still when Moss has the other
  });
});

test('whoever comes next reads that it is out and since when it should be back', async () => {
  app.clock.now = START;
  bodyOf(await book(shed.moss.caller, sealer, NEXT_WEEK), 201);
  app.clock.now = LATE;
  expect(await ownOf(shed.moss)).toMatchObject([{ state: 'booked', outUntil: DUE.toISOString() }]);
  const { items } = bodyOf(await shed.moss.caller.get(`${shed.path}/next-steps`));
  expect(items).toContainEqual(
    expect.objectContaining({
      words: `Whoever has it before you is late: ${sealer.name}. See what else is free.`,
    }),
  );
  expect(await ownOf(shed.hale)).toMatchObject([{ state: 'out', outUntil: null }]);
});

test.for([
  { ahead: 'within two weeks', day: '2026-09-19', free: 0, lateFree: 0, status: 409 },
  { ahead: 'further ahead', day: '2026-09-26', free: 1, lateFree: 1, status: 201 },
])('a packing day $ahead counts $free of one that is out and late', async (row) => {
  const facts = { name: `Canning ${++count}`, place: 'the hall' };
  const times = { startsAt: `${row.day}T14:00:00Z`, endsAt: `${row.day}T20:00:00Z` };
  const { id } = bodyOf(await lead.caller.post(`${shed.path}/packing-sessions`, { ...facts, ...times }), 201);
  const day = `${shed.path}/packing-sessions/${id}`;
  const { items } = bodyOf(await lead.caller.get(`${day}/equipment`));
  expect(items.find((item: { id: string }) => item.id === sealer.id)).toMatchObject({
    ...{ free: row.free, lateFree: row.lateFree, outranking: 0 },
  });
  const booked = await lead.caller.post(`${day}/equipment`, { itemId: sealer.id });
  expect(booked.status).toBe(row.status);
  if (row.status === 409) expect(booked.body).toMatchObject({ code: 'equipment-taken', isLate: true });
  else expect(booked.body.booked).toMatchObject([{ unitNo: 1, outUntil: DUE.toISOString() }]);
});

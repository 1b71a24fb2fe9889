import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anItem, aShed, book, type TestItem, type TestShed } from '../support/equipment.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { refusalOf } from '../support/money-books.ts';

const NOW = new Date('2026-09-01T15:00:00Z');
/** Saturday, 26 September, 09:00 to 15:00 in Chicago: 25 days ahead. */
const FAR = { startsAt: '2026-09-26T14:00:00Z', endsAt: '2026-09-26T20:00:00Z' };
/** Saturday, 12 September: 11 days ahead. */
const NEAR = { startsAt: '2026-09-12T14:00:00Z', endsAt: '2026-09-12T20:00:00Z' };
const ON_FAR = ['2026-09-26T10:00', '2026-09-26T18:00'] as const;
const ON_NEAR = ['2026-09-12T10:00', '2026-09-12T18:00'] as const;
let app: TestApp;
let shed: TestShed;
let lead: TestHousehold;
let sealer: TestItem;
let count = 0;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
  lead = await aHousehold(app, shed, 'Lead', { duties: ['packing_lead'] });
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.now = NOW;
  sealer = await anItem(shed, { name: `Sealer ${++count}` });
});

async function aDay(times = FAR): Promise<string> {
  const facts = { name: `Canning ${++count}`, place: 'the hall', ...times };
  const { id } = bodyOf(await lead.caller.post(`${shed.path}/packing-sessions`, facts), 201);
  return `${shed.path}/packing-sessions/${id}`;
}
const bookFor = (day: string, item = sealer) => lead.caller.post(`${day}/equipment`, { itemId: item.id });
type Booking = {
  id: string;
  itemId: string;
  state: string;
  startsAt: string;
  endsAt: string;
  unitNo: number;
};
const bookedOf = async (day: string): Promise<Booking[]> =>
  bodyOf(await lead.caller.get(`${day}/equipment`)).booked;
const ownOf = async (of: TestHousehold, item = sealer): Promise<Booking[]> =>
  bodyOf(await of.caller.get(`${shed.path}/bookings`)).bookings.filter(
    ({ itemId }: Booking) => itemId === item.id,
  );
const toldTo = async (of: TestHousehold): Promise<string[]> =>
  bodyOf(await of.caller.get(`${shed.path}/notices`)).notices.map(({ words }: { words: string }) => words);

test('the lead books a thing for the whole day, and nobody else gets it then', async () => {
  const day = await aDay(NEAR);
  const { booked, outranked } = bodyOf(await bookFor(day), 201);
  expect([booked, outranked]).toMatchObject([[{ ...sessionTimes(NEAR), state: 'booked', unitNo: 1 }], 0]);
  const asked = await book(shed.hale.caller, sealer, ON_NEAR);
  expect(asked.body).toMatchObject({ status: 409, code: 'equipment-taken' });
  expect(asked.body.freeTimes.length).toBeGreaterThan(0);
  const second = () => bookFor(day);
  expect(await refusalOf(app, second)).toMatchObject({ code: 'equipment-taken', isUnchanged: true });
});
const sessionTimes = ({ startsAt, endsAt }: typeof FAR) => ({
  ...{ startsAt: new Date(startsAt).toISOString(), endsAt: new Date(endsAt).toISOString() },
});

test('of dollies that are alike a day books one after the other, until none is left', async () => {
  const dolly = await anItem(shed, { name: `Dolly ${count}`, units: 2, postMinutes: 0 }, []);
  const day = await aDay();
  const freeOf = async () =>
    bodyOf(await lead.caller.get(`${day}/equipment`)).items.find(({ id }: { id: string }) => id === dolly.id)
      ?.free;
  expect(await freeOf()).toBe(2);
  bodyOf(await bookFor(day, dolly), 201);
  expect(await freeOf()).toBe(1);
  bodyOf(await bookFor(day, dolly), 201);
  expect((await bookedOf(day)).map(({ unitNo }) => unitNo).toSorted()).toEqual([1, 2]);
  expect((await bookFor(day, dolly)).body.code).toBe('equipment-taken');
});

test('a day that is more than 14 days ahead outranks a private loan: it is told, and its hours are kept on another day', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, sealer, ON_FAR), 201);
  const day = await aDay();
  const { items } = bodyOf(await lead.caller.get(`${day}/equipment`));
  expect(items.find((item: { id: string }) => item.id === sealer.id)).toMatchObject({
    free: 0,
    outranking: 1,
  });
  expect(bodyOf(await bookFor(day), 201).outranked).toBe(1);
  const own = await ownOf(shed.hale);
  expect(own.find((booking) => booking.id === id)).toBeUndefined();
  // The sealer is cleaned for 12 hours after the day, so the Sunday's hours are the first that are free.
  expect(own).toMatchObject([
    { state: 'offered', startsAt: '2026-09-27T15:00:00.000Z', endsAt: '2026-09-27T23:00:00.000Z' },
  ]);
  expect((await toldTo(shed.hale))[0]).toMatch(
    new RegExp(`needs the ${sealer.name} at your time\\. The same hours of another day are kept for you`),
  );
  bodyOf(await shed.hale.caller.post(`${shed.path}/bookings/${own[0]?.id}/acceptance`));
  expect(await ownOf(shed.hale)).toMatchObject([{ state: 'booked' }]);
});

test('a day within 14 days outranks nobody, and says when it is free', async () => {
  bodyOf(await book(shed.hale.caller, sealer, ON_NEAR), 201);
  const day = await aDay(NEAR);
  expect(await refusalOf(app, () => bookFor(day))).toMatchObject({
    ...{ status: 409, code: 'equipment-taken', isUnchanged: true },
  });
  expect(await ownOf(shed.hale)).toMatchObject([{ state: 'booked' }]);
});

test('of two days at one time the earlier that booked keeps it', async () => {
  const [first, second] = [await aDay(), await aDay()];
  bodyOf(await bookFor(first), 201);
  expect(await refusalOf(app, () => bookFor(second))).toMatchObject({
    ...{ code: 'equipment-taken', isUnchanged: true },
  });
});

test('of several pieces the one gives way that the fewest have booked', async () => {
  const scale = await anItem(shed, { name: `Scale ${count}`, units: 2, postMinutes: 60 }, []);
  bodyOf(await book(shed.hale.caller, scale, ['2026-09-26T09:00', '2026-09-26T10:00']), 201);
  bodyOf(await book(shed.moss.caller, scale, ['2026-09-26T09:00', '2026-09-26T15:00']), 201);
  bodyOf(await book(lead.caller, scale, ['2026-09-26T12:00', '2026-09-26T14:00']), 201); // beside Hale's
  const day = await aDay();
  expect(bodyOf(await bookFor(day, scale), 201).outranked).toBe(1);
  expect(await ownOf(shed.moss, scale)).toMatchObject([{ state: 'offered' }]);
  expect(await ownOf(shed.hale, scale)).toMatchObject([{ state: 'booked' }]);
});

test('a day that moves takes its things along; what is not free then is told to who leads packing', async () => {
  const mill = await anItem(shed, { name: `Mill ${count}` }, []);
  const day = await aDay(NEAR);
  for (const item of [sealer, mill]) bodyOf(await bookFor(day, item), 201);
  bodyOf(await book(shed.moss.caller, mill, ['2026-09-13T09:00', '2026-09-13T12:00']), 201);
  const { session } = bodyOf(await lead.caller.get(day));
  const moved = { startsAt: '2026-09-13T14:00:00Z', endsAt: '2026-09-13T20:00:00Z' };
  const { id: _, stage: __, endedBecause: ___, ...facts } = session;
  const { name, place, version } = facts;
  bodyOf(await lead.caller.put(day, { name, place, version, ...moved }));
  expect(await bookedOf(day)).toMatchObject([{ ...sessionTimes(moved), itemId: sealer.id }]);
  expect(await toldTo(lead)).toContain(
    `${name} has no ${mill.name} at its new time. Look for another day or another thing.`,
  );
  bodyOf(await book(shed.hale.caller, sealer, ON_NEAR), 201); // the old time is free again
});

test('a day that moves by an hour keeps its thing, though somebody waits for it', async () => {
  const day = await aDay(NEAR);
  bodyOf(await bookFor(day), 201);
  const wish = { from: '2026-09-12T09:30', until: '2026-09-12T11:00' };
  bodyOf(await shed.moss.caller.post(`${sealer.path}/waiting`, wish), 201);
  const { session } = bodyOf(await lead.caller.get(day));
  const { name, place, version } = session;
  const moved = { startsAt: '2026-09-12T15:00:00Z', endsAt: '2026-09-12T21:00:00Z' };
  bodyOf(await lead.caller.put(day, { name, place, version, ...moved }));
  expect(await bookedOf(day)).toMatchObject([sessionTimes(moved)]);
  expect(await ownOf(shed.moss)).toEqual([]);
});

test('a day that is called off frees its things, and whoever waits is offered them', async () => {
  const day = await aDay(NEAR);
  bodyOf(await bookFor(day), 201);
  const wish = { from: ON_NEAR[0], until: ON_NEAR[1] };
  bodyOf(await shed.moss.caller.post(`${sealer.path}/waiting`, wish), 201);
  bodyOf(await lead.caller.post(`${day}/calling-off`, { because: 'the hall is shut' }));
  expect(await bookedOf(day)).toEqual([]);
  expect(await ownOf(shed.moss)).toMatchObject([{ state: 'offered' }]);
});

test('a piece is given back from the day, and a booking of somebody else’s is not the day’s to give', async () => {
  const day = await aDay(NEAR);
  const { booked } = bodyOf(await bookFor(day), 201);
  const other = bodyOf(await book(shed.hale.caller, sealer, ON_FAR), 201);
  const wrong = () => lead.caller.delete(`${day}/equipment/${other.id}`);
  expect(await refusalOf(app, wrong)).toMatchObject({ code: 'thing-not-found', isUnchanged: true });
  expect(bodyOf(await lead.caller.delete(`${day}/equipment/${booked[0].id}`)).booked).toEqual([]);
  bodyOf(await book(shed.moss.caller, sealer, ON_NEAR), 201);
});

test('after a day has begun nothing more is booked for it', async () => {
  const day = await aDay(NEAR);
  app.clock.now = new Date(NEAR.startsAt);
  bodyOf(await lead.caller.post(`${day}/start`));
  expect(await refusalOf(app, () => bookFor(day))).toMatchObject({
    ...{ code: 'session-stage-wrong', isUnchanged: true },
  });
});

test('whoever was to take it straight from a loan that gives way is told too', async () => {
  bodyOf(await book(shed.hale.caller, sealer, ['2026-09-26T08:00', '2026-09-26T11:00']), 201);
  const wish = ['2026-09-26T11:00', '2026-09-26T14:00'] as const;
  bodyOf(await book(shed.moss.caller, sealer, wish, { byRelay: true }), 201);
  const day = await aDay();
  expect(bodyOf(await bookFor(day), 201).outranked).toBe(2);
  for (const household of [shed.hale, shed.moss])
    expect(await ownOf(household)).toMatchObject([{ state: 'offered' }]);
});

test('what was to be handed straight on is fetched at the store once the one before gives the time back', async () => {
  const before = bodyOf(await book(shed.hale.caller, sealer, ['2026-09-26T08:00', '2026-09-26T11:00']), 201);
  const wish = ['2026-09-26T11:00', '2026-09-26T14:00'] as const;
  const { id, version } = bodyOf(await book(shed.moss.caller, sealer, wish, { byRelay: true }), 201);
  bodyOf(await shed.hale.caller.post(`${shed.path}/bookings/${id}/relay-answer`, { version, agrees: true }));
  bodyOf(await shed.hale.caller.post(`${shed.path}/bookings/${before.id}/cancelling`));
  expect(await ownOf(shed.moss)).toMatchObject([{ state: 'booked', relayFromId: null, relayAgreedAt: null }]);
});

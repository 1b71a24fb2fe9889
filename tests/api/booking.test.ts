import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { anItem, aShed, book, type TestItem, type TestShed } from '../support/equipment.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { refusalOf } from '../support/money-books.ts';
import { doWork } from '../support/work.ts';

// It is Tuesday, 1 September 2026, 10:00 on the wall in Chicago.
const NOW = new Date('2026-09-01T15:00:00Z');
let app: TestApp;
let shed: TestShed;
let orr: TestHousehold;
let sealer: TestItem;
let count = 0;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
  orr = await aHousehold(app, shed, 'Orr');
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.now = NOW;
  sealer = await anItem(shed, { name: `Sealer ${++count}` });
});

const SATURDAY = ['2026-09-05T09:00', '2026-09-05T18:00'] as const;
const freeOf = async (item: TestItem, query = 'fromDay=2026-09-05&days=3&leastMinutes=60') =>
  bodyOf(await shed.moss.caller.get(`${item.path}/free-times?${query}`));
/** What a household has, is asked for and waits for of the sealer. */
async function ownOf({ caller }: TestHousehold) {
  const { bookings, asked } = bodyOf(await caller.get(`${shed.path}/bookings`));
  const isSealer = ({ itemId }: { itemId: string }) => itemId === sealer.id;
  return { bookings: bookings.filter(isSealer), asked: asked.filter(isSealer) };
}

test('a household books a time, and the time that cleaning takes after it is nobody’s', async () => {
  const booked = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  expect(booked).toMatchObject({
    ...{ startsAt: '2026-09-05T14:00:00.000Z', endsAt: '2026-09-05T23:00:00.000Z', state: 'booked' },
    ...{ blockedTo: '2026-09-06T11:00:00.000Z', unitNo: 1, household: { name: 'Hale' } },
  });
  const { free } = await freeOf(sealer);
  expect(free).toEqual([
    { startsAt: '2026-09-06T11:00:00.000Z', endsAt: '2026-09-08T05:00:00.000Z', unitNo: 1 },
  ]);
});

test('a time that touches is free, one that overlaps by a minute is refused with the next free times', async () => {
  bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  const overlapping = () => book(shed.moss.caller, sealer, ['2026-09-06T05:59', '2026-09-06T12:00']);
  expect(await refusalOf(app, overlapping)).toMatchObject({
    ...{ status: 409, code: 'equipment-taken', fields: ['from'], isUnchanged: true },
  });
  const { freeTimes } = (await overlapping()).body;
  expect(freeTimes[0]).toEqual({
    ...{ startsAt: '2026-09-01T15:00:00.000Z', endsAt: '2026-09-05T02:00:00.000Z', unitNo: 1 },
  });
  expect((await book(shed.moss.caller, sealer, ['2026-09-06T06:00', '2026-09-06T12:00'])).status).toBe(201);
});

test.for([
  { times: ['2026-09-05T18:00', '2026-09-05T09:00'], field: 'until', because: 'it runs backwards' },
  { times: ['2026-09-05T09:00', '2026-09-05T09:00'], field: 'until', because: 'it is empty' },
  { times: ['2026-08-31T09:00', '2026-08-31T12:00'], field: 'from', because: 'the day is past' },
  { times: ['2026-09-01T09:59', '2026-09-01T12:00'], field: 'from', because: 'a minute is past' },
  { times: ['2026-09-05T09:00', '2026-09-08T09:01'], field: 'until', because: 'three days are the most' },
  { times: ['2026-12-01T09:00', '2026-12-01T12:00'], field: 'from', because: '90 days ahead are the most' },
  { times: ['2026-09-05', '2026-09-06'], field: 'from', because: 'a day is no time' },
])('a booking of $times is refused, since $because', async ({ times, field }) => {
  const [from = '', until = ''] = times;
  const refused = await refusalOf(app, () => book(shed.hale.caller, sealer, [from, until]));
  expect(refused).toMatchObject({ status: 400, code: 'invalid-input', isUnchanged: true });
  expect(refused.fields).toContain(field);
});

test('the ninetieth day ahead is booked to its minute, and not a minute later', async () => {
  // 90 × 24 hours after 15:00 UTC; the clocks have gone back by then, so the wall shows 09:00.
  const late = () => book(shed.hale.caller, sealer, ['2026-11-30T09:01', '2026-11-30T12:00']);
  expect(await refusalOf(app, late)).toMatchObject({ code: 'invalid-input', fields: ['from'] });
  expect((await book(shed.hale.caller, sealer, ['2026-11-30T09:00', '2026-11-30T12:00'])).status).toBe(201);
});

test('the keeper books nothing for a household that left', async () => {
  const gone = await aHousehold(app, shed, 'Gone');
  const { householdId } = gone;
  bodyOf(await gone.caller.post(`${shed.path}/households/${householdId}/leaving`, { version: 1 }));
  const forGone = () =>
    shed.keeper.caller.post(`${sealer.path}/bookings`, {
      from: SATURDAY[0],
      until: SATURDAY[1],
      householdId,
    });
  expect(await refusalOf(app, forGone)).toMatchObject({ code: 'household-has-left', isUnchanged: true });
});

test('three days by the clock are three days, also where an hour comes twice', async () => {
  app.clock.now = new Date('2026-10-20T15:00:00Z');
  // Chicago, job map 8: 1 November 2026 has 25 hours.
  const booked = bodyOf(await book(shed.hale.caller, sealer, ['2026-10-30T09:00', '2026-11-02T09:00']), 201);
  expect(Date.parse(booked.endsAt) - Date.parse(booked.startsAt)).toBe((3 * 24 + 1) * 3_600_000);
  const night = bodyOf(await book(shed.moss.caller, sealer, ['2026-11-08T00:00', '2026-11-08T06:00']), 201);
  expect(Date.parse(night.endsAt) - Date.parse(night.startsAt)).toBe(6 * 3_600_000);
});

test('the night of 1 November 2026 has seven hours before six, and that of 14 March 2027 has five', async () => {
  app.clock.now = new Date('2026-10-20T15:00:00Z');
  const autumn = bodyOf(await book(shed.hale.caller, sealer, ['2026-11-01T00:00', '2026-11-01T06:00']), 201);
  expect(Date.parse(autumn.endsAt) - Date.parse(autumn.startsAt)).toBe(7 * 3_600_000);
  app.clock.now = new Date('2027-03-01T15:00:00Z');
  const newer = await anItem(shed, { name: 'Newer sealer' });
  const spring = bodyOf(await book(shed.moss.caller, newer, ['2027-03-14T00:00', '2027-03-14T06:00']), 201);
  expect(Date.parse(spring.endsAt) - Date.parse(spring.startsAt)).toBe(5 * 3_600_000);
  const skipped = await book(orr.caller, newer, ['2027-03-14T02:30', '2027-03-14T23:00']);
  expect(skipped.body).toMatchObject({ code: 'invalid-input', nextWallTime: '2027-03-14T03:00' });
});

test('of an hour that comes twice the first is taken unless the second is asked for', async () => {
  app.clock.now = new Date('2026-10-20T15:00:00Z');
  const times = ['2026-11-01T01:30', '2026-11-01T04:00'] as const;
  const scale = await anItem(shed, { name: 'Scale', units: 2, postMinutes: 60 }, []);
  const first = bodyOf(await book(shed.hale.caller, scale, times), 201);
  const second = bodyOf(await book(shed.moss.caller, scale, times, { isFromSecond: true }), 201);
  expect(first.startsAt).toBe('2026-11-01T06:30:00.000Z');
  expect(second.startsAt).toBe('2026-11-01T07:30:00.000Z');
});

test('a household has one open booking of a thing, and none for a neighbour', async () => {
  bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  const again = () => book(shed.hale.caller, sealer, ['2026-09-10T09:00', '2026-09-10T12:00']);
  expect(await refusalOf(app, again)).toMatchObject({ code: 'already-booked', isUnchanged: true });
  const { householdId } = shed.hale;
  const forHale = () =>
    book(shed.moss.caller, sealer, ['2026-09-10T09:00', '2026-09-10T12:00'], { householdId });
  expect(await refusalOf(app, forHale)).toMatchObject({ code: 'not-your-household', isUnchanged: true });
});

test('members see that a thing is busy, and not with whom; its keeper sees whom', async () => {
  bodyOf(await book(shed.hale.caller, sealer, SATURDAY, { note: 'wheat for Ida' }), 201);
  const seenBy = async ({ caller }: TestHousehold) =>
    bodyOf(await caller.get(`${sealer.path}/bookings`)).bookings[0];
  expect(await seenBy(shed.moss)).toMatchObject({ household: null, note: '' });
  expect(await seenBy(shed.keeper)).toMatchObject({ household: { name: 'Hale' }, note: 'wheat for Ida' });
  expect(await seenBy(shed.hale)).toMatchObject({ household: { name: 'Hale' } });
  expect((await ownOf(shed.moss)).bookings).toEqual([]);
});

test('of dollies that are alike the next booking gets the one that was free longest, and the last is refused', async () => {
  const dollies = await anItem(shed, { name: 'Dolly', units: 2, postMinutes: 0 }, []);
  expect(new Set(dollies.units.map(({ code }) => code)).size).toBe(2);
  const one = bodyOf(await book(shed.hale.caller, dollies, ['2026-09-05T09:00', '2026-09-05T12:00']), 201);
  const two = bodyOf(await book(shed.moss.caller, dollies, ['2026-09-05T10:00', '2026-09-05T11:00']), 201);
  expect([one.unitNo, two.unitNo]).toEqual([1, 2]);
  const third = () => book(orr.caller, dollies, ['2026-09-05T10:30', '2026-09-05T10:45']);
  expect(await refusalOf(app, third)).toMatchObject({ code: 'equipment-taken', isUnchanged: true });
  const later = bodyOf(await book(orr.caller, dollies, ['2026-09-05T12:00', '2026-09-05T13:00']), 201);
  expect(later.unitNo).toBe(2); // free since 11:00, the other since 12:00
});

test('what is given back is offered to the earliest who waits and fits, and is theirs once they say so', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  const wait = ({ caller }: TestHousehold, from: string, until: string) =>
    caller.post(`${sealer.path}/waiting`, { from, until });
  app.clock.now = new Date(NOW.getTime() + 60_000);
  bodyOf(await wait(orr, '2026-09-05T08:00', '2026-09-05T18:00'), 201);
  app.clock.now = new Date(NOW.getTime() + 120_000);
  bodyOf(await wait(shed.moss, '2026-09-05T10:00', '2026-09-05T12:00'), 201);
  expect((await wait(shed.moss, '2026-09-05T10:00', '2026-09-05T12:00')).body.code).toBe('already-waiting');
  bodyOf(await shed.hale.caller.post(`${shed.path}/bookings/${id}/cancelling`));
  const [offered] = (await ownOf(orr)).bookings;
  expect(offered).toMatchObject({ state: 'offered', startsAt: '2026-09-05T13:00:00.000Z' });
  expect(Date.parse(offered.offeredUntil) - app.clock.now.getTime()).toBe(12 * 3_600_000);
  expect((await ownOf(shed.moss)).bookings).toEqual([]);
  const path = `${shed.path}/bookings/${offered.id}/acceptance`;
  expect((await shed.moss.caller.post(path)).body.code).toBe('not-your-household');
  expect(bodyOf(await orr.caller.post(path))).toMatchObject({ state: 'booked', offeredUntil: null });
});

test('an offer that nobody takes within its hours goes to the next who waits', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  for (const { caller } of [orr, shed.moss]) {
    bodyOf(
      await caller.post(`${sealer.path}/waiting`, { from: '2026-09-05T09:00', until: '2026-09-05T18:00' }),
      201,
    );
    app.clock.now = new Date(app.clock.now.getTime() + 60_000);
  }
  bodyOf(await shed.hale.caller.post(`${shed.path}/bookings/${id}/cancelling`));
  const [offered] = (await ownOf(orr)).bookings;
  app.clock.now = new Date(app.clock.now.getTime() + 12 * 3_600_000);
  const late = await orr.caller.post(`${shed.path}/bookings/${offered.id}/acceptance`);
  expect(late.body.code).toBe('booking-not-open');
  await doWork(app);
  expect((await ownOf(orr)).bookings).toEqual([]);
  expect((await ownOf(shed.moss)).bookings).toMatchObject([{ state: 'offered' }]);
});

test('what was not fetched is free four hours after its start, and not before', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  const path = `${shed.path}/bookings/${id}/not-fetched`;
  app.clock.now = new Date('2026-09-05T17:59:00Z');
  expect((await shed.keeper.caller.post(path)).body).toMatchObject({ code: 'booking-not-open' });
  app.clock.now = new Date('2026-09-05T18:00:00Z');
  expect(bodyOf(await shed.keeper.caller.post(path)).state).toBe('not-fetched');
  expect((await book(shed.moss.caller, sealer, ['2026-09-05T13:00', '2026-09-05T18:00'])).status).toBe(201);
});

test('what nobody fetched is freed by itself, its household is told, and whoever waits is asked', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  const wish = { from: '2026-09-05T14:00', until: '2026-09-05T17:00' };
  bodyOf(await orr.caller.post(`${sealer.path}/waiting`, wish), 201);
  const goRound = async (at: string) => {
    app.clock.now = new Date(at);
    await enqueueEverywhere(app.outside, 'free-unfetched-equipment');
    expect(await doWork(app)).toMatchObject({ later: 0, dead: 0 });
  };
  await goRound('2026-09-05T17:59:00Z');
  expect((await ownOf(shed.hale)).bookings).toMatchObject([{ id, state: 'booked' }]);
  await goRound('2026-09-05T18:00:00Z'); // four hours after 09:00 in Chicago
  expect((await ownOf(shed.hale)).bookings).toEqual([]);
  const [told] = bodyOf(await shed.hale.caller.get(`${shed.path}/notices`)).notices;
  expect(told).toMatchObject({ kind: 'equipment', about: sealer.name, writtenBy: null });
  expect(told.words).toContain('did not fetch it within 4 hours');
  expect((await ownOf(orr)).bookings).toMatchObject([
    { state: 'offered', startsAt: '2026-09-05T19:00:00.000Z' },
  ]);
  const count = async () => bodyOf(await shed.hale.caller.get(`${shed.path}/notices`)).notices.length;
  const before = await count();
  await goRound('2026-09-05T18:15:00Z');
  expect(await count()).toBe(before);
});

test('nobody loses a time because the piece was not there to be fetched', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  const [unit] = sealer.units;
  const dirty = { version: 1, condition: 'dirty', conditionNote: '', missing: [] };
  bodyOf(await shed.keeper.caller.put(`${shed.path}/equipment-units/${unit?.id}`, dirty));
  app.clock.now = new Date('2026-09-05T18:30:00Z');
  await enqueueEverywhere(app.outside, 'free-unfetched-equipment');
  await doWork(app);
  expect((await ownOf(shed.hale)).bookings).toMatchObject([{ id, state: 'booked' }]);
});

test('a piece that is broken, lacks a critical part or is due for service is booked by nobody', async () => {
  const [unit] = sealer.units;
  const chuck = sealer.parts.find(({ name }) => name === 'Chuck');
  const edit = async (change: Record<string, unknown>, version: number) =>
    bodyOf(
      await shed.keeper.caller.put(`${shed.path}/equipment-units/${unit?.id}`, {
        ...{ version, condition: 'ready', conditionNote: '', missing: [] },
        ...change,
      }),
    );
  const tryIt = () => book(shed.hale.caller, sealer, SATURDAY);
  await edit({ condition: 'broken' }, 1);
  expect((await tryIt()).body).toMatchObject({ code: 'equipment-unfit', blockers: ['broken'] });
  await edit({ missing: [{ partId: chuck?.id, pieces: 1 }] }, 2);
  expect((await tryIt()).body).toMatchObject({
    code: 'equipment-unfit',
    blockers: ['critical-part-missing'],
  });
  await edit({}, 3);
  app.clock.now = new Date('2027-03-01T15:00:00Z'); // 181 days after it came
  const due = await book(shed.hale.caller, sealer, ['2027-03-02T09:00', '2027-03-02T12:00']);
  expect(due.body).toMatchObject({ code: 'equipment-unfit', blockers: ['service-due'] });
  const { unfit, free } = await freeOf(sealer, 'days=3');
  expect([unfit, free]).toEqual([[{ unitNo: 1, blockers: ['service-due'] }], []]);
});

test('a thing is handed straight on where both agree: no time is kept between the two', async () => {
  const first = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  const times = ['2026-09-05T18:00', '2026-09-06T12:00'] as const;
  expect((await book(shed.moss.caller, sealer, times)).body.code).toBe('equipment-taken');
  const asked = bodyOf(await book(shed.moss.caller, sealer, times, { byRelay: true }), 201);
  expect(asked).toMatchObject({ state: 'asked', relayFromId: first.id, relayAgreedAt: null });
  expect((await ownOf(shed.hale)).asked).toMatchObject([{ id: asked.id }]);
  const path = `${shed.path}/bookings/${asked.id}/relay-answer`;
  const yes = { version: asked.version, agrees: true };
  expect((await orr.caller.post(path, yes)).body.code).toBe('not-your-household');
  expect(bodyOf(await shed.hale.caller.post(path, yes))).toMatchObject({ state: 'booked' });
  const [before, after] = bodyOf(await shed.keeper.caller.get(`${sealer.path}/bookings`)).bookings;
  expect([before.blockedTo, after.blockedFrom]).toEqual([first.endsAt, first.endsAt]);
  // The keeper says no: the time for cleaning is kept again.
  const no = { version: after.version, agrees: false };
  expect(bodyOf(await shed.keeper.caller.post(path, no)).state).toBe('cancelled');
  const [kept] = bodyOf(await shed.keeper.caller.get(`${sealer.path}/bookings`)).bookings;
  expect(kept.blockedTo).toBe(first.blockedTo);
  const { notices } = bodyOf(await shed.moss.caller.get(`${shed.path}/notices`));
  expect(notices[0].words).toContain('It will not be handed straight on to you');
});

test('the keeper may say no until a day before two hand on, and not when they count on it; whoever has it may', async () => {
  bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  const next = ['2026-09-05T18:00', '2026-09-06T12:00'] as const;
  const asked = bodyOf(await book(shed.moss.caller, sealer, next, { byRelay: true }), 201);
  const path = `${shed.path}/bookings/${asked.id}/relay-answer`;
  const { version } = bodyOf(await shed.hale.caller.post(path, { version: asked.version, agrees: true }));
  app.clock.now = new Date('2026-09-04T23:00:01Z'); // a second less than 24 hours before 18:00 in Chicago
  const no = { version, agrees: false };
  const late = await refusalOf(app, () => shed.keeper.caller.post(path, no));
  expect(late).toMatchObject({ status: 409, code: 'relay-refused', isUnchanged: true });
  app.clock.now = new Date('2026-09-04T23:00:00Z');
  expect(bodyOf(await shed.keeper.caller.post(path, no)).state).toBe('cancelled');

  const again = bodyOf(await book(shed.moss.caller, sealer, next, { byRelay: true }), 201);
  const own = `${shed.path}/bookings/${again.id}/relay-answer`;
  const yes = bodyOf(await shed.hale.caller.post(own, { version: again.version, agrees: true }));
  app.clock.now = new Date('2026-09-05T20:00:00Z');
  expect(bodyOf(await shed.hale.caller.post(own, { version: yes.version, agrees: false })).state).toBe(
    'cancelled',
  );
});

test('a relay within a day of its hour, or of a thing that always comes back, is refused', async () => {
  app.clock.now = new Date('2026-09-05T13:00:00Z');
  bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  const late = () =>
    book(shed.moss.caller, sealer, ['2026-09-05T18:00', '2026-09-06T12:00'], { byRelay: true });
  expect(await refusalOf(app, late)).toMatchObject({ code: 'relay-refused', isUnchanged: true });
  const mill = await anItem(shed, { name: 'Mill', mayRelay: false }, []);
  bodyOf(await book(shed.hale.caller, mill, ['2026-09-10T09:00', '2026-09-10T12:00']), 201);
  const never = await book(shed.moss.caller, mill, ['2026-09-10T12:00', '2026-09-10T18:00'], {
    byRelay: true,
  });
  expect(never.body).toMatchObject({ code: 'relay-refused', because: ['not-relayed'] });
});

describe('a mill, through which food goes', () => {
  let mill: TestItem;
  let foodsOf: Record<string, string>;
  const FIRST = ['2026-09-05T09:00', '2026-09-05T18:00'] as const;
  const NEXT = ['2026-09-05T18:00', '2026-09-06T12:00'] as const;
  const through = (...codes: string[]) => ({ foodIds: codes.map((code) => foodsOf[code]) });
  beforeEach(async () => {
    mill = await anItem(shed, { name: `Grain mill ${count}`, touchesFood: true, postMinutes: 60 }, []);
    foodsOf = await foodIdsOf(shed);
  });

  test('is booked by who says what goes through it; any other thing asks nothing', async () => {
    const silent = await refusalOf(app, () => book(shed.hale.caller, mill, FIRST));
    expect(silent).toMatchObject({ code: 'invalid-input', fields: ['foodIds'], isUnchanged: true });
    const unknown = { foodIds: [mill.id] };
    const wrong = await refusalOf(app, () => book(shed.hale.caller, mill, FIRST, unknown));
    expect(wrong).toMatchObject({ code: 'thing-not-found', fields: ['foodIds.0'], isUnchanged: true });
    const told = bodyOf(await book(shed.hale.caller, mill, FIRST, through('rice-white-long')), 201);
    expect(told).toMatchObject({ foods: [{ id: foodsOf['rice-white-long'] }], leftBehind: [] });
    expect(bodyOf(await book(shed.hale.caller, sealer, FIRST), 201)).toMatchObject({ foods: [] });
  });

  test('goes straight on to what carries the same, and never to what does not', async () => {
    bodyOf(await book(shed.hale.caller, mill, FIRST, through('wheat-hard-red-winter')), 201);
    const rice = { ...through('rice-white-long'), byRelay: true };
    const clash = await refusalOf(app, () => book(shed.moss.caller, mill, NEXT, rice));
    expect(clash).toMatchObject({ code: 'relay-refused', isUnchanged: true });
    const wheat = { ...through('wheat-hard-red-winter'), byRelay: true };
    const asked = bodyOf(await book(shed.moss.caller, mill, NEXT, wheat), 201);
    expect(asked).toMatchObject({ state: 'asked' });
    const yes = { version: asked.version, agrees: true };
    const answer = await shed.hale.caller.post(`${shed.path}/bookings/${asked.id}/relay-answer`, yes);
    expect(bodyOf(answer)).toMatchObject({ state: 'booked' });
  });

  test('fetched from the store tells what is to be cleaned off first, and not who left it there', async () => {
    bodyOf(await book(shed.hale.caller, mill, FIRST, through('wheat-hard-red-winter')), 201);
    const later = ['2026-09-06T09:00', '2026-09-06T12:00'] as const;
    const booked = bodyOf(await book(shed.moss.caller, mill, later, through('rice-white-long')), 201);
    expect(booked.leftBehind).toEqual(['gluten', 'wheat']);
    const { bookings } = bodyOf(await shed.moss.caller.get(`${mill.path}/bookings`));
    expect(bookings.map(({ foods }: { foods: unknown[] }) => foods.length)).toEqual([0, 1]);
  });
});

test('the keeper takes a piece out of use for its service, also while it is broken', async () => {
  const [unit] = sealer.units;
  const times = { from: '2026-09-05T09:00', until: '2026-09-06T09:00', unitId: unit?.id };
  bodyOf(await shed.keeper.caller.post(`${shed.path}/equipment-service-times`, times), 201);
  expect((await book(shed.hale.caller, sealer, SATURDAY)).body.code).toBe('equipment-taken');
});

test('the database itself lets no two hold a piece at once', async () => {
  bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  const twice = app.admin`insert into book.booking select (b).* from (select b from book.booking b
    where equipment_item_id = ${sealer.id}) x, lateral (select (x.b).*) y`;
  await expect(twice).rejects.toThrow(/booking_pkey/);
  const under = app.admin`insert into book.booking (storehouse_id, equipment_item_id, equipment_unit_id, purpose,
    household_id, starts_at, ends_at, blocked_from, blocked_to, booked_by, booked_at) select storehouse_id,
    equipment_item_id, equipment_unit_id, purpose, household_id, starts_at, ends_at, ends_at - interval '9 hours',
    ends_at, booked_by, booked_at from book.booking where equipment_item_id = ${sealer.id}`;
  await expect(under).rejects.toThrow(/booking_one_at_a_time/);
});

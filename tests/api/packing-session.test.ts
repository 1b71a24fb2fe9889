import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aFeed, eventsOf } from '../support/calendar.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import type { GrainHouseholds } from '../support/fixed-buy.ts';
import { aPackingSession, cansOf, HOURS, openHall, type TestHall } from '../support/packing.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  households = hall.buy.households;
});
afterAll(() => app.close());

const wish = async (name: keyof GrainHouseholds, day: string, ...wishes: ReturnType<typeof cansOf>[]) =>
  bodyOf(await households[name].caller.put(`${day}/wishes`, { wishes }));
const book = (name: keyof GrainHouseholds, day: string, startsAt: string, orWait = false) =>
  households[name].caller.post(`${day}/slots`, { startsAt, orWait });

describe('a session', () => {
  test('is opened by the packing lead, is told to everyone, and stands in the list', async () => {
    const day = await aPackingSession(storehouse, hall, { name: 'Autumn canning' });
    const { session } = bodyOf(await households.Dell.caller.get(day));
    expect(session).toMatchObject({ name: 'Autumn canning', stage: 'open', lines: 1, peopleALine: 6 });
    expect(session.stations.map(({ name }: { name: string }) => name)).toContain('seam');
    const { notices } = bodyOf(await households.Dell.caller.get(`${storehouse.path}/notices`));
    expect(notices[0].words).toContain('Autumn canning is open.');
    const { sessions } = bodyOf(await households.Dell.caller.get(`${storehouse.path}/packing-sessions`));
    expect(sessions.map(({ id }: { id: string }) => id)).toContain(session.id);
  });

  test.each([
    { told: 'that ends before it starts', wish: { endsAt: '2026-12-05T16:00:00Z' }, field: 'endsAt' },
    { told: 'longer than a day', wish: { endsAt: '2026-12-07T16:00:00Z' }, field: 'endsAt' },
    {
      told: 'that began already',
      wish: { startsAt: '2026-01-05T17:00:00Z', endsAt: '2026-01-05T18:00:00Z' },
      field: 'startsAt',
    },
    { told: 'without a line', wish: { lines: 0 }, field: 'lines' },
    {
      told: 'with a station that takes no time',
      wish: { stations: [{ name: 'fill', secondsPerUnit: 0, staysAlone: false }] },
      field: 'stations.0.secondsPerUnit',
    },
  ])('$told is refused at its field', async ({ wish, field }) => {
    const body = { name: 'Never', ...HOURS, ...wish };
    const refusal = await refusalOf(app, () =>
      hall.lead.caller.post(`${storehouse.path}/packing-sessions`, body),
    );
    expect(refusal).toMatchObject(refused(400, 'invalid-input', field));
  });

  test('is changed by its version; a stale change gets the newer one back', async () => {
    const day = await aPackingSession(storehouse, hall);
    const { session } = bodyOf(await hall.lead.caller.get(day));
    const { id: _id, stage: _stage, endedBecause: _why, ...facts } = session;
    const edited = bodyOf(await hall.lead.caller.put(day, { ...facts, lines: 2 }));
    expect(edited).toMatchObject({ lines: 2, version: 2 });
    const stale = await hall.lead.caller.put(day, { ...facts, lines: 3 });
    expect(stale).toMatchObject({ status: 409, body: { code: 'stale-version', newer: { lines: 2 } } });
  });

  test('takes its times along when it moves, and each household is told its own', async () => {
    const day = await aPackingSession(storehouse, hall, { name: 'A day that moves' });
    for (const [name, at] of [
      ['Dell', '2026-12-05T18:00:00Z'],
      ['Birchall', '2026-12-05T18:02:00Z'],
    ] as const) {
      await wish(name, day, cansOf(hall, { containers: 4 }));
      bodyOf(await book(name, day, at), 201);
    }
    const { session } = bodyOf(await hall.lead.caller.get(day));
    const { id: _id, stage: _stage, endedBecause: _why, version: _version, ...facts } = session;
    const change = async (changed: Record<string, unknown>) => {
      const { version } = bodyOf(await hall.lead.caller.get(day)).session;
      return hall.lead.caller.put(day, { ...facts, version, ...changed });
    };
    const own = async (name: keyof GrainHouseholds) =>
      bodyOf(await households[name].caller.get(day)).slots.find(({ isOwn }: { isOwn: boolean }) => isOwn);
    // Two minutes later: each moves into the minutes of the other.
    const later = { startsAt: '2026-12-05T17:02:00Z', endsAt: '2026-12-05T23:02:00Z' };
    bodyOf(await change(later));
    expect((await own('Dell')).startsAt).toBe('2026-12-05T18:02:00.000Z');
    expect((await own('Birchall')).startsAt).toBe('2026-12-05T18:04:00.000Z');
    bodyOf(await change({ startsAt: '2026-12-12T17:00:00Z', endsAt: '2026-12-12T23:00:00Z' }));
    expect(await own('Dell')).toMatchObject({
      ...{ state: 'booked', line: 1, startsAt: '2026-12-12T18:00:00.000Z' },
      endsAt: '2026-12-12T18:02:00.000Z',
    });
    const { notices } = bodyOf(await households.Dell.caller.get(`${storehouse.path}/notices`));
    const told = notices.map(({ words }: { words: string }) => words);
    expect(told).toContain('A day that moves has moved, and your time with it: 2026-12-12 at 12:00.');
    const short = () => change({ startsAt: '2026-12-12T17:00:00Z', endsAt: '2026-12-12T18:45:00Z' });
    expect(await refusalOf(app, short)).toMatchObject(refused(409, 'in-use', 'endsAt'));
    const past = () => change({ startsAt: '2026-01-05T17:00:00Z', endsAt: '2026-01-05T23:00:00Z' });
    expect(await refusalOf(app, past)).toMatchObject(refused(400, 'invalid-input', 'startsAt'));
  });

  test('is called off with its reason before it begins, and never after', async () => {
    const day = await aPackingSession(storehouse, hall);
    bodyOf(await hall.lead.caller.post(`${day}/calling-off`, { because: 'No power in the hall.' }));
    const { session } = bodyOf(await households.Dell.caller.get(day));
    expect(session).toMatchObject({ stage: 'called-off', endedBecause: 'No power in the hall.' });
    const begun = await aPackingSession(storehouse, hall);
    bodyOf(await hall.lead.caller.post(`${begun}/start`));
    const refusal = await hall.lead.caller.post(`${begun}/calling-off`, { because: 'late' });
    expect(refusal).toMatchObject({ status: 409, body: { code: 'session-stage-wrong' } });
  });
});

describe('what a household wants packed', () => {
  test('is kept as it was said, and no neighbour sees it', async () => {
    const day = await aPackingSession(storehouse, hall);
    await wish('Dell', day, cansOf(hall, { containers: 3 }));
    const { wishes } = bodyOf(await households.Dell.caller.get(day));
    expect(wishes).toMatchObject([{ containers: 3, gramsEach: 2500, treatment: 'oxygen-absorber' }]);
    expect(bodyOf(await households.Birchall.caller.get(day)).wishes).toEqual([]);
  });

  test('is refused beyond what the household owns in bags, and past the brim', async () => {
    const day = await aPackingSession(storehouse, hall);
    await wish('Dell', day, cansOf(hall, { containers: 1 }));
    const put = (body: ReturnType<typeof cansOf>) => () =>
      households.Dell.caller.put(`${day}/wishes`, { wishes: [body] });
    const tooMuch = await refusalOf(app, put(cansOf(hall, { containers: 400 })));
    expect(tooMuch).toMatchObject(refused(409, 'not-enough-left', 'wishes.0.containers'));
    const tooFull = await refusalOf(app, put(cansOf(hall, { containers: 1, gramsEach: 3300 })));
    expect(tooFull).toMatchObject(refused(422, 'over-capacity', 'wishes.0.gramsEach'));
    expect(bodyOf(await households.Dell.caller.get(day)).wishes).toMatchObject([{ containers: 1 }]);
  });
});

describe('a time on a line', () => {
  test('lasts as long as the household’s own containers take, and is offered where it fits', async () => {
    const day = await aPackingSession(storehouse, hall);
    await wish('Dell', day, cansOf(hall, { containers: 4 }));
    const free = bodyOf(await households.Dell.caller.get(`${day}/free-times`));
    expect(free.minutes).toBe(2); // 4 cans at 24 s, in whole minutes
    // From when it is set up, after 30 minutes, until 45 are left to clean down.
    expect(free.starts).toEqual([{ from: '2026-12-05T17:30:00.000Z', until: '2026-12-05T22:13:00.000Z' }]);
    const slot = bodyOf(await book('Dell', day, '2026-12-05T18:00:00Z'), 201);
    expect(slot).toMatchObject({ line: 1, state: 'booked', endsAt: '2026-12-05T18:02:00.000Z' });
  });

  test('two may touch and never overlap; who finds no line is told when one is free', async () => {
    const day = await aPackingSession(storehouse, hall);
    await wish('Dell', day, cansOf(hall, { containers: 4 }));
    await wish('Birchall', day, cansOf(hall, { containers: 4 }));
    bodyOf(await book('Dell', day, '2026-12-05T18:00:00Z'), 201);
    const taken = await book('Birchall', day, '2026-12-05T18:01:00Z');
    expect(taken).toMatchObject({
      status: 409,
      body: {
        code: 'line-taken',
        starts: [{ from: '2026-12-05T17:30:00.000Z' }, { from: '2026-12-05T18:02:00.000Z' }],
      },
    });
    bodyOf(await book('Birchall', day, '2026-12-05T18:02:00Z'), 201);
  });

  test('who waits gets the line that is given back, in the order of asking, and is told', async () => {
    const day = await aPackingSession(storehouse, hall);
    for (const name of ['Dell', 'Birchall', 'Ashdown'] as const)
      await wish(name, day, cansOf(hall, { containers: 4 }));
    const { id } = bodyOf(await book('Dell', day, '2026-12-05T18:00:00Z'), 201);
    app.clock.now = new Date(app.clock.now.getTime() + 60_000);
    expect(bodyOf(await book('Birchall', day, '2026-12-05T18:01:00Z', true), 201)).toMatchObject({
      state: 'waiting',
    });
    app.clock.now = new Date(app.clock.now.getTime() + 60_000);
    expect(bodyOf(await book('Ashdown', day, '2026-12-05T18:00:00Z', true), 201)).toMatchObject({
      state: 'waiting',
    });
    expect((await households.Dell.caller.post(`${day}/slots/${id}/giving-back`)).status).toBe(204);
    const own = async (name: keyof GrainHouseholds) =>
      bodyOf(await households[name].caller.get(day)).slots.find(({ isOwn }: { isOwn: boolean }) => isOwn);
    expect(await own('Birchall')).toMatchObject({ state: 'booked', line: 1 });
    expect(await own('Ashdown')).toMatchObject({ state: 'waiting', line: null });
    const { notices } = bodyOf(await households.Birchall.caller.get(`${storehouse.path}/notices`));
    expect(notices[0].words).toContain('A line has become free');
  });

  test('is refused outside the session, without wishes, twice, and by a neighbour’s hand', async () => {
    const day = await aPackingSession(storehouse, hall);
    const early = () => book('Dell', day, '2026-12-05T17:29:00Z');
    expect(await early()).toMatchObject({ body: { code: 'nothing-to-post' } });
    await wish('Dell', day, cansOf(hall, { containers: 1 }));
    expect(await refusalOf(app, early)).toMatchObject(refused(400, 'invalid-input', 'startsAt'));
    const late = () => book('Dell', day, '2026-12-05T22:15:00Z');
    expect(await refusalOf(app, late)).toMatchObject(refused(400, 'invalid-input', 'startsAt'));
    const { id } = bodyOf(await book('Dell', day, '2026-12-05T17:30:00Z'), 201);
    expect(await book('Dell', day, '2026-12-05T19:00:00Z')).toMatchObject({
      body: { code: 'already-there' },
    });
    const theft = await households.Birchall.caller.post(`${day}/slots/${id}/giving-back`);
    expect(theft).toMatchObject({ status: 403, body: { code: 'not-your-household' } });
  });
});

describe('the plan of a day', () => {
  test('runs the slots in their order, names who is on the line, and says when it ends', async () => {
    const day = await aPackingSession(storehouse, hall);
    await wish('Dell', day, cansOf(hall, { containers: 4 }));
    await wish('Birchall', day, cansOf(hall, { containers: 8 }));
    bodyOf(await book('Birchall', day, '2026-12-05T18:00:00Z'), 201);
    bodyOf(await book('Dell', day, '2026-12-05T19:00:00Z'), 201);
    const { lines } = bodyOf(await hall.lead.caller.get(`${day}/plan`));
    expect(lines[0]).toMatchObject({
      containers: 12,
      cycleSeconds: 24,
      bottleneck: ['seam'],
      // Ready at 11:30, Birchall comes at noon for 8 cans and Dell at 13:00 for 4; the rest is taken while the line waits.
      waitSeconds: 30 * 60 + (60 * 60 - 8 * 24),
      finishSeconds: 2 * 3600 + 4 * 24 + 45 * 60,
      withOneMore: null,
      runs: [
        { household: 'Birchall', fromSerial: 1, toSerial: 8, startsAtSecond: 3600 },
        { household: 'Dell', fromSerial: 9, toSerial: 12, startsAtSecond: 7200 },
      ],
    });
    const five = bodyOf(await hall.lead.caller.get(`${day}/plan?people=5`));
    expect(five.lines[0]).toMatchObject({
      cycleSeconds: 27,
      withOneMore: { at: ['fill', 'weigh', 'absorber'] },
    });
  });

  test('reckons who is likely to come without a score for anybody, and keeps a neighbour’s allergy nameless', async () => {
    const day = await aPackingSession(storehouse, hall);
    const { Dell } = households;
    const eater = { name: 'Cy', birthOn: '2015', excludedAllergens: ['milk'] };
    bodyOf(await Dell.caller.post(`${storehouse.path}/households/${Dell.householdId}/eaters`, eater), 201);
    await wish('Dell', day, cansOf(hall, { containers: 1 }));
    bodyOf(await Dell.caller.put(`${day}/hand`, { isComing: true, mayLift: false }));
    const plan = bodyOf(await hall.lead.caller.get(`${day}/plan`));
    expect(plan.crew).toMatchObject({ wanted: 6, expected: 0.8, chance: 0 });
    expect(plan.crew.moreToAsk).toBeGreaterThan(5);
    expect(JSON.stringify(plan)).not.toContain('Cy');
    expect(JSON.stringify(plan)).not.toContain('milk');
    const reads = bodyOf(
      await Dell.caller.get(`${storehouse.path}/households/${Dell.householdId}/private-reads`),
    );
    expect(JSON.stringify(reads)).toContain('plan of a packing session');
  });
});

test('a packing day and one’s own time stand in the calendar, and a day that is called off is cancelled there', async () => {
  const day = await aPackingSession(storehouse, hall, { name: 'A day in the calendar' });
  const feed = await aFeed(storehouse, households.Dell.caller);
  await wish('Dell', day, cansOf(hall, { containers: 4 }));
  bodyOf(await book('Dell', day, '2026-12-05T18:00:00Z'), 201);
  const titles = async () =>
    (await eventsOf(app, feed))
      .filter(({ summary }) => summary.startsWith('A day in the calendar'))
      .map(({ summary, status, sequence }) => [summary, status, sequence]);
  expect(await titles()).toEqual([
    ['A day in the calendar: packing day', 'CONFIRMED', 0],
    ['A day in the calendar: your time on a line', 'CONFIRMED', 0],
  ]);
  bodyOf(await hall.lead.caller.post(`${day}/calling-off`, { because: 'No power.' }));
  expect((await titles()).map(([, status]) => status)).toEqual(['CANCELLED', 'CANCELLED']);
});

test('one’s own time and the day one helps are next steps until they are over, or nobody counts on them', async () => {
  const day = await aPackingSession(storehouse, hall, { name: 'A day to come' });
  const { Dell } = households;
  await wish('Dell', day, cansOf(hall, { containers: 1 }));
  const { id } = bodyOf(await book('Dell', day, '2026-12-05T18:00:00Z'), 201);
  bodyOf(await Dell.caller.put(`${day}/hand`, { isComing: true }));
  const steps = async () =>
    bodyOf(await Dell.caller.get(`${storehouse.path}/next-steps`))
      .items.filter(({ words }: { words: string }) => words.includes('A day to come'))
      .map(({ kind }: { kind: string }) => kind);
  expect(await steps()).toEqual(expect.arrayContaining(['packing-time', 'packing-help']));
  await Dell.caller.post(`${day}/slots/${id}/giving-back`);
  bodyOf(await Dell.caller.put(`${day}/hand`, { isComing: false }));
  expect(await steps()).toEqual([]);
});

import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import type { GrainHouseholds } from '../support/fixed-buy.ts';
import { aPackingSession, bringWheat, cansOf, openHall, type TestHall } from '../support/packing.ts';
import type { TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
});
afterAll(() => app.close());

type Name = keyof GrainHouseholds;
const BEFORE = new Date('2026-11-20T12:00:00Z');
const caller = (name: Name) => hall.buy.households[name].caller;
const own = async (day: string, name: Name) => {
  const { slots, missed } = bodyOf(await caller(name).get(day));
  return { slot: slots.find(({ isOwn }: { isOwn: boolean }) => isOwn), missed };
};
const goRound = async (at: string) => {
  app.clock.now = new Date(at);
  await enqueueEverywhere(app.outside, 'free-unused-packing-times');
  expect(await doWork(app)).toMatchObject({ later: 0, dead: 0 });
};
const here = (who: { put: TestHall['lead']['caller']['put'] }, day: string, id: string, isHere = true) =>
  who.put(`${day}/slots/${id}/arrival`, { isHere });

/** A day of one hour whose only line is Dell's, and whose second line another's; who waits does so in this order. */
async function aDay({ waits, beside = [] }: { waits: Name[]; beside?: Name[] }) {
  app.clock.now = BEFORE;
  const lines = 1 + beside.length;
  const hour = {
    startsAt: '2026-12-05T18:00:00Z',
    endsAt: '2026-12-05T18:46:00Z',
    lines,
    setupMinutes: 0,
    cleanDownMinutes: 0,
  };
  const day = await aPackingSession(storehouse, hall, hour);
  const book = async (name: Name, orWait: boolean) => {
    bodyOf(await caller(name).put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 4 })] }));
    app.clock.now = new Date(app.clock.now.getTime() + 60_000);
    const slot = await caller(name).post(`${day}/slots`, { startsAt: hour.startsAt, orWait });
    return bodyOf(slot, 201).id as string;
  };
  const id = await book('Dell', false);
  for (const name of beside) await book(name, false);
  for (const name of waits) await book(name, true);
  return { day, id };
}
const start = async (day: string, at: string) => {
  app.clock.now = new Date(at);
  bodyOf(await hall.lead.caller.post(`${day}/start`));
};

describe('a time that nobody comes for', () => {
  let day: string;
  let id: string;
  beforeEach(async () => {
    ({ day, id } = await aDay({ waits: ['Birchall', 'Ashdown'] }));
  });

  test('goes by itself to whoever waited longest, each is told once, and that it was stays written', async () => {
    await start(day, '2026-12-05T17:50:00Z');
    await goRound('2026-12-05T18:19:00Z');
    expect((await own(day, 'Dell')).slot).toMatchObject({ id, state: 'booked' });
    await goRound('2026-12-05T18:20:00Z');
    expect(await own(day, 'Dell')).toMatchObject({ slot: undefined, missed: { id, state: 'not-come' } });
    expect((await own(day, 'Birchall')).slot).toMatchObject({
      ...{ state: 'booked', line: 1, startsAt: '2026-12-05T18:20:00.000Z' },
      endsAt: '2026-12-05T18:22:00.000Z',
    });
    expect((await own(day, 'Ashdown')).slot).toMatchObject({ startsAt: '2026-12-05T18:22:00.000Z' });
    const told = async (name: Name) =>
      bodyOf(await caller(name).get(`${storehouse.path}/notices`)).notices.map(
        ({ words }: { words: string }) => words,
      );
    expect((await told('Dell'))[0]).toContain('within 20 minutes of your time');
    expect((await told('Birchall'))[0]).toContain('A line has become free');
    const before = [await told('Dell'), await told('Birchall'), await told('Ashdown')];
    await goRound('2026-12-05T18:25:00Z');
    expect([await told('Dell'), await told('Birchall'), await told('Ashdown')]).toEqual(before);
    const { slots } = bodyOf(await hall.lead.caller.get(`${day}/plan`));
    expect(slots).toContainEqual(expect.objectContaining({ household: 'Dell', state: 'not-come' }));
  });

  test('is given again when its household comes late: the next free time, and nobody else’s', async () => {
    await start(day, '2026-12-05T17:50:00Z');
    await goRound('2026-12-05T18:20:00Z');
    app.clock.now = new Date('2026-12-05T18:20:30Z');
    expect(bodyOf(await here(caller('Dell'), day, id))).toMatchObject({
      ...{ state: 'booked', line: 1, startsAt: '2026-12-05T18:24:00.000Z' },
      cameAt: '2026-12-05T18:20:30.000Z',
    });
    expect(await own(day, 'Dell')).toMatchObject({ missed: null });
    await goRound('2026-12-05T18:45:00Z'); // who is seen is not freed again; who waited and did not come is
    expect((await own(day, 'Dell')).slot).toMatchObject({ state: 'booked' });
    expect((await own(day, 'Birchall')).missed).toMatchObject({ state: 'not-come' });
  });

  test('is waited for by who comes late where the day has no time left', async () => {
    await start(day, '2026-12-05T17:50:00Z');
    await goRound('2026-12-05T18:20:00Z');
    app.clock.now = new Date('2026-12-05T18:45:00Z');
    expect(bodyOf(await here(hall.lead.caller, day, id))).toMatchObject({ state: 'waiting', line: null });
  });
});

const given = async () => {
  const { notices } = bodyOf(await caller('Ashdown').get(`${storehouse.path}/notices?limit=all`));
  return notices.filter(({ words }: { words: string }) => words.includes('A line has become free')).length;
};

test('two times of one day that nobody comes for are free in one round, and who waits is given one of them once', async () => {
  const { day } = await aDay({ beside: ['Birchall'], waits: ['Ashdown'] });
  await start(day, '2026-12-05T17:50:00Z');
  const before = await given();
  await goRound('2026-12-05T18:20:00Z');
  const missed = [(await own(day, 'Dell')).missed, (await own(day, 'Birchall')).missed];
  expect(missed).toMatchObject([{ state: 'not-come' }, { state: 'not-come' }]);
  expect((await own(day, 'Ashdown')).slot).toMatchObject({ state: 'booked', line: 1 });
  expect((await given()) - before).toBe(1);
});

describe('nobody loses a time', () => {
  test.each<{ told: string; seen: (day: string, id: string) => Promise<unknown> }>([
    { told: 'who said that they are here', seen: (day, id) => here(caller('Dell'), day, id) },
    { told: 'whom the lead ticked', seen: (day, id) => here(hall.lead.caller, day, id) },
    { told: 'whose bag was brought to the line', seen: (day) => bringWheat(hall, day, 'Dell') },
  ])('$told', async ({ seen }) => {
    const { day, id } = await aDay({ waits: [] });
    await start(day, '2026-12-05T17:50:00Z');
    await seen(day, id);
    await goRound('2026-12-05T19:00:00Z');
    expect((await own(day, 'Dell')).slot).toMatchObject({ id, state: 'booked' });
    const { slots } = bodyOf(await hall.lead.caller.get(`${day}/plan`));
    expect(slots).toMatchObject([{ household: 'Dell', isHere: true }]);
  });

  test('on a day that has not begun, and until 20 minutes after a late beginning', async () => {
    const { day, id } = await aDay({ waits: [] });
    await goRound('2026-12-05T18:40:00Z');
    await start(day, '2026-12-05T18:40:00Z');
    await goRound('2026-12-05T18:59:00Z');
    expect((await own(day, 'Dell')).slot).toMatchObject({ id, state: 'booked' });
    await goRound('2026-12-05T19:00:00Z');
    expect((await own(day, 'Dell')).missed).toMatchObject({ id });
  });

  test('to a neighbour’s hand; a tick by mistake is taken back', async () => {
    const { day, id } = await aDay({ waits: [] });
    const theft = await refusalOf(app, () => here(caller('Birchall'), day, id));
    expect(theft).toMatchObject(refused(403, 'not-your-household'));
    expect(bodyOf(await here(caller('Dell'), day, id)).cameAt).not.toBeNull();
    expect(bodyOf(await here(caller('Dell'), day, id, false)).cameAt).toBeNull();
  });
});

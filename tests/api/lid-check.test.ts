import { extract } from 'letterparser';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import type { Caller, TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { piecesOf } from '../support/shelf.ts';
import type { TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

/* Job map 7.8: of jar lids the centre is held down after 24 h. */
let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let catcher: Catcher;
let ashdown: Caller;
let birchall: Caller;
let lead: Caller;
let jars: Jar[];
let theirs: Jar[];
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  ashdown = hall.buy.households.Ashdown.caller;
  birchall = hall.buy.households.Birchall.caller;
  lead = hall.lead.caller;
  catcher = await openCatcher();
  app.clock.now = at('05', '14:00');
  const day = await aPackingSession(storehouse, hall, { name: 'Jar day' });
  await lettersAt('05', '14:30'); // whatever else was to be told
  app.clock.now = at('05', '17:00');
  bodyOf(await lead.post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
  await bringWheat(hall, day, 'Birchall');
  jars = await pourAt(day, '17:05', { name: 'Ashdown', grams: [700, 700, 700] });
  theirs = await pourAt(day, '17:20', { name: 'Birchall', grams: [700, 700] });
  await pourAt(day, '17:30', { name: 'Ashdown', grams: [700] }, 'none');
});
afterAll(async () => {
  await catcher.close();
  await app.close();
});

type Jar = { id: string; code: string };
type Lid = Jar & { state: string; dueAt: string; household: { name: string } | null };
const at = (day: string, time: string) => new Date(`2026-12-${day}T${time}:00Z`);
const goTo = (day: string, time: string) => {
  app.clock.now = at(day, time);
};

async function pourAt(
  day: string,
  time: string,
  whose: { name: 'Ashdown' | 'Birchall'; grams: number[] },
  treatment = 'vacuum',
): Promise<Jar[]> {
  goTo('05', time);
  const facts = { containerKindId: hall.shelves.kinds['jar-quart'], treatment, targetGrams: 700 };
  const pour = { ...aPourBody(hall, { ...whose, ...facts }) };
  return bodyOf(await lead.post(`${day}/pours`, pour), 201).containers;
}

const lidsOf = async (caller: Caller, of = 'household'): Promise<Lid[]> =>
  bodyOf(await caller.get(`${storehouse.path}/lids?of=${of}`)).lids;
const statesOf = async (caller: Caller, of?: string) =>
  Object.fromEntries((await lidsOf(caller, of)).map(({ code, state }) => [code, state]));
const answer = (caller: Caller, wish: Record<string, unknown>) =>
  caller.post(`${storehouse.path}/lids/answers`, { containerIds: [], ...wish });
const closeAgain = (caller: Caller, ...these: Jar[]) =>
  caller.post(`${storehouse.path}/lids/closings`, { containerIds: these.map(({ id }) => id) });
const stepsOf = async (caller: Caller, kind = 'lid-check') =>
  bodyOf(await caller.get(`${storehouse.path}/next-steps`)).items.filter(
    (item: { kind: string }) => item.kind === kind,
  );
const keepingOf = async (caller: Caller, { id }: Jar) =>
  bodyOf(await caller.get(`${storehouse.path}/containers/${id}/keeping`)).keeping;

/** Who is written what about lids, once everything that is due in the background is done. */
async function lettersAt(
  day: string,
  time: string,
): Promise<{ to: string; subject: string; text: string }[]> {
  goTo(day, time);
  catcher.caught.length = 0;
  await enqueueEverywhere(app.outside, 'remind');
  await doWork(app, catcher);
  return catcher.caught
    .map(({ to, source }) => {
      const { subject = '', text = '' } = extract(source);
      return { to, subject: subject.replace('Alder Row Storehouse: ', ''), text };
    })
    .filter(({ subject }) => subject.includes('lids'))
    .toSorted((a, b) => (a.to < b.to ? -1 : 1));
}

test('jars of a packing day wait for their owner and for the lead, each with its moment; one that nothing draws down does not', async () => {
  const [first, second, third] = jars;
  goTo('06', '17:04');
  const own = await lidsOf(ashdown);
  expect(own.map(({ code, dueAt }) => [code, dueAt])).toEqual(
    [first, second, third].map((jar) => [jar?.code, '2026-12-06T17:05:00.000Z']).toSorted(),
  );
  expect(await statesOf(ashdown)).toEqual(Object.fromEntries(jars.map(({ code }) => [code, 'early'])));
  expect((await lidsOf(lead, 'common')).map(({ household }) => household?.name)).toEqual([
    ...['Ashdown', 'Ashdown', 'Ashdown', 'Birchall', 'Birchall'],
  ]);
  expect(bodyOf(await birchall.get(`${storehouse.path}/lids?of=common`), 403).code).toBe('duty-missing');
  // For the lead all of the day together are due with the last of them.
  expect(await stepsOf(lead)).toMatchObject([
    {
      words: 'Press the lids of 5 jars a day after they were closed: Jar day.',
      ...{ dueAt: '2026-12-06T17:20:00.000Z', path: `${storehouse.path}/lids?of=common` },
    },
  ]);
  expect(await stepsOf(ashdown)).toMatchObject([{ dueAt: '2026-12-06T17:05:00.000Z', isOverdue: false }]);
});

test('before a day is over nothing is taken, whether it held or not, and nothing is written', async () => {
  const [first] = jars;
  for (const wish of [{ containerIds: [first?.id] }, { looseCodes: [first?.code] }]) {
    const refusal = bodyOf(await answer(ashdown, wish), 409);
    expect(refusal).toMatchObject({ code: 'lid-too-early', dueAt: '2026-12-06T17:05:00.000Z' });
    expect(refusal.detail).toContain('was closed less than a day ago, so its lid tells nothing yet.');
  }
  expect(bodyOf(await answer(ashdown, {}), 400).fields).toMatchObject([{ message: 'Say which jars.' }]);
  const ahead = { containerIds: [first?.id], checkedAt: '2026-12-06T17:30:00Z' };
  expect(bodyOf(await answer(ashdown, ahead), 400).fields[0].field).toBe('checkedAt');
  expect(Object.values(await statesOf(ashdown))).toEqual(['early', 'early', 'early']);
});

test('who has them and who leads the packing are written to once a day is over, once', async () => {
  expect(await lettersAt('06', '17:04')).toEqual([]);
  const letters = await lettersAt('06', '17:45');
  expect(letters.map(({ to, subject }) => [to, subject])).toEqual(
    ['birchall@example.org', 'coordinator@example.org', 'pat-corran@example.org'].map((to) => [
      to,
      'Press the lids of your jars: Jar day',
    ]),
  );
  expect(letters[0]?.text).toContain('/shelf/lids');
  expect(letters[2]?.text).toContain('/shelf/lids?of=common');
  expect(await lettersAt('06', '19:00')).toEqual([]);
});

describe('the lids of many jars', () => {
  test('are answered at once, with the codes of those that did not hold; a slip in a code changes nothing', async () => {
    const [first, second, third] = jars;
    goTo('06', '18:00');
    const ids = [first?.id, second?.id, third?.id];
    const slip = `${third?.code.slice(0, -1)}${third?.code.endsWith('2') ? '3' : '2'}`;
    const typed = bodyOf(await answer(ashdown, { containerIds: ids, looseCodes: [slip] }), 400);
    expect(typed.fields[0]).toMatchObject({
      ...{ field: 'looseCodes.0', message: `${slip} is no code of a container; look at it again.` },
    });
    const another = bodyOf(await answer(ashdown, { containerIds: ids, looseCodes: [theirs[0]?.code] }), 404);
    expect(another.fields[0].field).toBe('looseCodes.0');
    expect(Object.values(await statesOf(ashdown))).toEqual(['due', 'due', 'due']);
    const done = bodyOf(await answer(ashdown, { containerIds: ids, looseCodes: [third?.code] }), 201);
    expect(done).toMatchObject({ held: 2, already: 0, leftAlone: 0 });
    expect(done.loose).toHaveLength(1);
    expect(await statesOf(ashdown)).toEqual({ [third?.code ?? '']: 'loose' });
    expect(await stepsOf(ashdown)).toEqual([]);
    expect(await stepsOf(ashdown, 'lid-loose')).toHaveLength(1);
  });

  test('said by a second phone count once; what was found loose is not said to have held', async () => {
    const [first, second, third] = jars;
    const again = bodyOf(await answer(ashdown, { containerIds: [first?.id, second?.id] }), 201);
    expect(again).toMatchObject({ held: 0, loose: [], already: 2 });
    const held = bodyOf(await answer(ashdown, { containerIds: [third?.id] }), 409);
    expect(held).toMatchObject({ code: 'lid-found-loose', containers: [third?.code] });
  });

  test('of a neighbour are not there, and the lead answers for those in the store', async () => {
    expect((await answer(birchall, { containerIds: [jars[0]?.id] })).status).toBe(404);
    const wish = { of: 'common', containerIds: theirs.map(({ id }) => id), looseCodes: [theirs[1]?.code] };
    expect(bodyOf(await answer(lead, wish), 201)).toMatchObject({ held: 1 });
    const { notices } = bodyOf(await birchall.get(`${storehouse.path}/notices`));
    expect(notices[0].words).toContain('The lids of these jars of yours did not hold for a day:');
    expect(await stepsOf(lead)).toEqual([]);
  });
});

describe('a jar whose lid did not hold', () => {
  test('is counted on for 30 days only, and says why', async () => {
    const [first, , third] = jars;
    const held = await keepingOf(ashdown, first as Jar);
    expect(held.likelyDays).toBeGreaterThan(365);
    expect(await keepingOf(ashdown, third as Jar)).toMatchObject({ likelyDays: 30 });
    const sheet = bodyOf(await ashdown.get(`${storehouse.path}/containers/${third?.id}/keeping`));
    expect(sheet.why.reasons).toContain('found-soon');
  });

  test('that was closed again is looked at a day later in its turn, and keeps as the others once it held', async () => {
    const third = jars[2] as Jar;
    goTo('06', '20:00');
    expect(bodyOf(await closeAgain(ashdown, third), 201)).toMatchObject({ leftAlone: 0 });
    expect(await statesOf(ashdown)).toEqual({ [third.code]: 'early' });
    expect(await stepsOf(ashdown)).toMatchObject([{ dueAt: '2026-12-07T20:00:00.000Z' }]);
    expect(await keepingOf(ashdown, third)).toMatchObject({ likelyDays: 30 });
    goTo('07', '20:00');
    expect(bodyOf(await answer(ashdown, { containerIds: [third.id] }), 201).held).toBe(1);
    expect((await keepingOf(ashdown, third)).likelyDays).toBeGreaterThan(365);
    expect(await lidsOf(ashdown)).toEqual([]);
  });

  test('may be found so later than it was said to hold', async () => {
    const [first] = jars;
    expect(
      bodyOf(await answer(ashdown, { looseCodes: [first?.code.toLowerCase()] }), 201).loose,
    ).toHaveLength(1);
    expect(await statesOf(ashdown)).toEqual({ [first?.code ?? '']: 'loose' });
  });

  test('is asked for no more once it was looked at as a whole, or opened', async () => {
    const [first] = jars;
    goTo('07', '21:00');
    const found = {
      how: 'outside',
      findings: ['loose-seal'],
      outcome: 'kitchen-soon',
      kernels: null,
      note: '',
    };
    const path = `${storehouse.path}/containers/${first?.id}`;
    bodyOf(await ashdown.post(`${path}/inspections`, { ...found, isMovedOut: false }), 201);
    expect(await lidsOf(ashdown)).toEqual([]);
    const late = bodyOf(await answer(ashdown, { containerIds: [first?.id] }), 201);
    expect(late).toEqual({ held: 0, loose: [], already: 0, leftAlone: 1 });
    const [, open] = theirs;
    goTo('07', '22:00');
    expect(await statesOf(birchall)).toEqual({ [open?.code ?? '']: 'loose' });
    bodyOf(
      await birchall.post(`${storehouse.path}/containers/${open?.id}/uses`, { grams: 100, to: 'eaten' }),
      201,
    );
    expect(await lidsOf(birchall)).toEqual([]);
    expect(bodyOf(await closeAgain(birchall, open as Jar), 201)).toEqual({ closed: [], leftAlone: 1 });
  });
});

describe('jars that were filled at home', () => {
  test('wait for their household alone: from the pour, or from the end of the day it was written down for', async () => {
    const dell = hall.buy.households.Dell;
    const [bag] = await piecesOf(storehouse, hall.buy.splitIds.wheat, dell);
    goTo('08', '18:00');
    const pour = async (wish: Record<string, unknown>) =>
      bodyOf(
        await dell.caller.post(`${storehouse.path}/containers`, {
          ...hall.shelves.pourBody(bag as never, { kind: 'jar-quart', gramsEach: 700 }),
          ...wish,
        }),
        201,
      ).containers[0] as Jar;
    const now = await pour({ treatment: 'oxygen-absorber', moistureTenths: 90 });
    const earlier = await pour({ treatment: 'vacuum', moistureTenths: 90, packedOn: '2026-12-06' });
    await pour({ treatment: 'none' });
    const lids = await lidsOf(dell.caller);
    // In Chicago 6 December ends at 06:00 UTC of the seventh.
    expect(lids.map(({ code, dueAt, state }) => [code, dueAt, state])).toEqual([
      [earlier.code, '2026-12-08T06:00:00.000Z', 'due'],
      [now.code, '2026-12-09T18:00:00.000Z', 'early'],
    ]);
    expect((await lidsOf(lead, 'common')).map(({ code }) => code)).not.toContain(now.code);
    expect(await stepsOf(dell.caller)).toHaveLength(2);
  });
});

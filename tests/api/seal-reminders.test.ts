import { extract } from 'letterparser';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import type { Caller, TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { aSeamer, type TestSeamer, THICK } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let seamer: TestSeamer;
let catcher: Catcher;
let day: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  seamer = await aSeamer(storehouse, hall);
  catcher = await openCatcher();
  app.clock.now = at('14:00');
  day = await aPackingSession(storehouse, hall, { name: 'Canning day', lines: 2 });
  await lettersAt('14:30'); // whatever else was to be told
  app.clock.now = at('17:00');
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
});
afterAll(async () => {
  await catcher.close();
  await app.close();
});

const at = (time: string) => new Date(`2026-12-05T${time}:00Z`);
const stepsOf = async (caller: Caller, kind: string) =>
  bodyOf(await caller.get(`${storehouse.path}/next-steps`)).items.filter(
    (item: { kind: string }) => item.kind === kind,
  );
const dueOf = async () =>
  (await stepsOf(hall.lead.caller, 'seam-check')).map(({ dueAt }: { dueAt: string }) => dueAt.slice(11, 16));

async function pourAt(time: string, wish: Record<string, unknown> = {}): Promise<void> {
  app.clock.now = at(time);
  const pour = { ...aPourBody(hall, { name: 'Ashdown', grams: [10], targetGrams: 10 }), ...wish };
  bodyOf(await hall.lead.caller.post(`${day}/pours`, pour), 201);
}
async function checkAt(time: string, wish: Record<string, unknown> = {}): Promise<void> {
  app.clock.now = at(time);
  bodyOf(await seamer.check(day, wish), 201);
}

/** Who is written what about seals and holds, once everything that is due in the background is done. */
async function lettersAt(time: string | Date): Promise<{ to: string; subject: string; text: string }[]> {
  app.clock.now = typeof time === 'string' ? at(time) : time;
  catcher.caught.length = 0;
  await enqueueEverywhere(app.outside, 'remind');
  await doWork(app, catcher);
  return catcher.caught
    .map(({ to, source }) => {
      const { subject = '', text = '' } = extract(source);
      return { to, subject: subject.replace('Alder Row Storehouse: ', ''), text };
    })
    .filter(({ subject }) => /seal|doubt|on hold/i.test(subject));
}
const LEAD = 'pat-corran@example.org';
const ON_LINE_1 = { to: LEAD, subject: 'Check a seal: line 1 of Canning day' };

describe('a seal check', () => {
  test('comes due with the first can, and is told to who leads the packing, once', async () => {
    expect(await dueOf()).toEqual([]);
    await pourAt('17:05');
    expect(await dueOf()).toEqual(['17:05']);
    const [letter, ...others] = await lettersAt('17:15');
    expect(letter).toMatchObject(ON_LINE_1);
    expect(letter?.text).toContain(`/packing/${day.split('/').at(-1)}/seals`);
    expect(others).toEqual([]);
    expect(await lettersAt('17:30')).toEqual([]);
    expect(await stepsOf(storehouse.coordinator, 'seam-check')).toEqual([]);
    const [item] = await stepsOf(hall.lead.caller, 'seam-check');
    expect(item).toMatchObject({
      ...{ isOverdue: true, path: `${day}/seals` },
      words: 'Tear down a can that line 1 has closed, and measure it: Canning day.',
    });
  });

  test('that was made cancels it until an hour later; one that a look alone makes does not', async () => {
    await checkAt('17:31', { how: 'visual', measures: null });
    expect(await dueOf()).toEqual(['17:05']);
    await checkAt('17:32');
    expect(await dueOf()).toEqual([]);
    await pourAt('17:40');
    expect(await dueOf()).toEqual(['18:32']);
    expect(await lettersAt('18:30')).toEqual([]);
    await checkAt('18:31'); // in time, so nobody is written to
    await pourAt('18:33');
    expect(await lettersAt('18:45')).toEqual([]);
    expect(await lettersAt('19:30')).toEqual([]);
    expect(await lettersAt('19:31')).toMatchObject([ON_LINE_1]);
  });

  test('is due for another line by itself, and not for what a hand closes', async () => {
    await checkAt('19:32');
    await pourAt('19:40', {
      ...{ line: 2, containerKindId: hall.shelves.kinds['pail-5-gallon-bare'], treatment: 'dry-ice' },
    });
    expect(await lettersAt('19:45')).toEqual([]);
    await pourAt('19:50', { line: 2 });
    expect(await lettersAt('20:00')).toMatchObject([
      { to: LEAD, subject: 'Check a seal: line 2 of Canning day' },
    ]);
    await checkAt('20:01', { line: 2 });
  });
});

describe('containers in doubt', () => {
  test('are told to whoever answers for them, and again each week until somebody has', async () => {
    await pourAt('20:05');
    await checkAt('20:10', { serial: 4, measures: THICK });
    const open = (caller: Caller) => stepsOf(caller, 'suspects-open');
    expect(await open(hall.lead.caller)).toMatchObject([
      {
        words: 'A container of Canning day is in doubt since a check failed: say what becomes of it.',
        path: `${day}/seals`,
        dueOn: null,
      },
    ]);
    expect(await open(hall.buy.households.Dell.caller)).toEqual([]);
    expect(await dueOf()).toEqual([]); // the line stands still
    const told = async (time: string | Date) =>
      (await lettersAt(time))
        .filter(({ subject }) => subject === 'Containers in doubt: Canning day')
        .map(({ to }) => to);
    expect((await told('20:15')).toSorted()).toEqual(['coordinator@example.org', LEAD]);
    expect(await told('20:30')).toEqual([]);
    const sixDays = new Date('2026-12-11T20:15:00Z');
    expect(await told(sixDays)).toEqual([]);
    expect(await told(new Date('2026-12-12T20:15:00Z'))).toHaveLength(2);
    const { holds } = bodyOf(await hall.lead.caller.get(`${storehouse.path}/seals`));
    const containerIds = holds.map(({ containerId }: { containerId: string }) => containerId);
    const answer = { containerIds, disposition: 'discard', note: 'Thrown away.' };
    bodyOf(await hall.lead.caller.post(`${storehouse.path}/seal-holds/settling`, answer));
    expect(await open(hall.lead.caller)).toEqual([]);
    expect(await told(new Date('2026-12-19T20:15:00Z'))).toEqual([]);
  });
});

test('a bag on hold that nobody answers is told again each week, and to the second person once one asks for it', async () => {
  app.clock.now = new Date('2026-12-20T16:00:00Z');
  const bagId = hall.buy.bags.beans[0]?.id;
  const { id } = bodyOf(
    await hall.lead.caller.post(`${storehouse.path}/bags/${bagId}/holds`, { reason: 'Wet.' }),
    201,
  );
  const told = async (time: string) =>
    (await lettersAt(new Date(time)))
      .filter(({ subject }) => subject.startsWith('On hold: '))
      .map(({ to }) => to)
      .toSorted();
  const both = ['coordinator@example.org', LEAD];
  expect(await told('2026-12-20T16:15:00Z')).toEqual(both);
  expect(await told('2026-12-26T16:15:00Z')).toEqual([]);
  expect(await told('2026-12-27T16:15:00Z')).toEqual(both);
  bodyOf(
    await hall.lead.caller.post(`${storehouse.path}/holds/${id}/release-request`, { finding: 'Dry inside.' }),
  );
  expect(await told('2026-12-27T16:30:00Z')).toEqual(['coordinator@example.org']);
  bodyOf(await storehouse.coordinator.post(`${storehouse.path}/holds/${id}/release`));
  expect(await told('2027-01-03T16:15:00Z')).toEqual([]);
});

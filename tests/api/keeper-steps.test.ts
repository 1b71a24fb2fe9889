import { extract } from 'letterparser';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import {
  anItem,
  aShed,
  book,
  bringBack,
  handOut,
  type TestItem,
  type TestShed,
} from '../support/equipment.ts';
import type { TestHousehold } from '../support/household.ts';
import { doWork } from '../support/work.ts';

/* What a keeper has to see to: on the home, and in letters that come once and can be stopped. */
let app: TestApp;
let shed: TestShed;
let catcher: Catcher;
beforeAll(async () => {
  app = await openTestApp();
  app.clock.now = new Date('2026-09-01T15:00:00Z'); // 10:00 in Chicago
  shed = await aShed(app);
  catcher = await openCatcher();
});
afterAll(async () => {
  await catcher.close();
  await app.close();
});

const free = { depositMinorUnits: 0, feeMinorUnits: 0, serviceEveryUses: null, serviceEveryDays: null };
type Step = { kind: string; words: string; dueOn: string | null; isOverdue: boolean; path: string };
const stepsOf = async ({ caller }: TestHousehold, kind: string): Promise<Step[]> =>
  bodyOf(await caller.get(`${shed.path}/next-steps`)).items.filter((item: Step) => item.kind === kind);
/** To whom a letter with this in its subject goes, once everything that is due in the background is done. */
async function toldAt(instant: string, subject: string): Promise<string[]> {
  app.clock.now = new Date(instant);
  catcher.caught.length = 0;
  await enqueueEverywhere(app.outside, 'remind');
  await doWork(app, catcher);
  return catcher.caught
    .filter(({ source }) => (extract(source).subject ?? '').includes(subject))
    .map(({ to }) => to.replace('@example.org', ''))
    .toSorted();
}
async function lend(item: TestItem, until = '2026-09-02T09:00') {
  const { id } = bodyOf(await book(shed.hale.caller, item, ['2026-09-01T10:30', until]), 201);
  return bodyOf(await handOut(shed.hale.caller, shed, id, item), 201).id as string;
}

test('what is late is the keeper’s step and one letter, names nobody, and is over when it is back', async () => {
  const sealer = await anItem(shed, { ...free, name: 'Can sealer' });
  const loan = await lend(sealer);
  expect(await stepsOf(shed.keeper, 'late-return')).toEqual([]);
  const late = 'Not back yet: Can sealer 1';
  expect(await toldAt('2026-09-02T13:00:00Z', late)).toEqual([]);
  expect(await toldAt('2026-09-02T15:00:00Z', late)).toEqual(['keeper']);
  const letter = catcher.caught.find(({ to }) => to.startsWith('keeper'));
  expect(letter?.source ?? 'Hale').not.toContain('Hale');
  expect(await toldAt('2026-09-02T16:00:00Z', late)).toEqual([]);
  expect(await stepsOf(shed.keeper, 'late-return')).toMatchObject([
    {
      words: 'Not back yet: Can sealer 1. Ask when it comes, and tell who is next.',
      ...{ isOverdue: true, path: `${shed.path}/equipment-desk` },
    },
  ]);
  expect(await stepsOf(shed.moss, 'late-return')).toEqual([]);
  bodyOf(await bringBack(shed.hale.caller, shed, loan, sealer), 201);
  expect(await stepsOf(shed.keeper, 'late-return')).toEqual([]);
});

test('what comes back dirty or broken is told once each time, until it is clean again', async () => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  const mill = await anItem(shed, { ...free, name: 'Mill', postMinutes: 0 });
  bodyOf(await bringBack(shed.hale.caller, shed, await lend(mill), mill, { condition: 'dirty' }), 201);
  const unfit = 'Not fit to lend: Mill 1';
  expect(await toldAt('2026-09-01T16:00:00Z', unfit)).toEqual(['keeper']);
  expect(await toldAt('2026-09-03T16:00:00Z', unfit)).toEqual([]);
  const words = async () => (await stepsOf(shed.keeper, 'unfit-equipment')).map((step) => step.words);
  expect(await words()).toEqual(['Dirty: Mill 1. Clean it before it goes out again.']);
  const path = `${shed.path}/equipment-units/${mill.units[0]?.id}`;
  const say = async (condition: string) => {
    const [unit] = bodyOf(await shed.keeper.caller.get(mill.path)).units;
    bodyOf(await shed.keeper.caller.put(path, { version: unit.version, condition, conditionNote: '' }));
  };
  await say('ready');
  expect(await words()).toEqual([]);
  await say('broken');
  expect(await words()).toEqual(['Broken: Mill 1. Have it mended, or take it out of use.']);
  expect(await toldAt('2026-09-04T16:00:00Z', unfit)).toEqual(['keeper']);
  await say('retired');
  expect(await words()).toEqual([]);
});

test('a service is told a week before its day, on it and once after, until it is written down', async () => {
  app.clock.now = new Date('2026-10-01T15:00:00Z');
  const scale = await anItem(shed, { ...free, name: 'Scale', serviceEveryDays: 30 }); // due on 31 October
  expect(await stepsOf(shed.keeper, 'service-due')).toEqual([]);
  const service = 'Service: Scale 1';
  expect(await toldAt('2026-10-23T16:00:00Z', service)).toEqual([]);
  expect(await stepsOf(shed.keeper, 'service-due')).toMatchObject([
    { dueOn: '2026-10-31', words: 'Service comes due: Scale 1.', isOverdue: false },
  ]);
  for (const day of ['2026-10-24', '2026-10-31'])
    expect([day, await toldAt(`${day}T16:00:00Z`, service)]).toEqual([day, ['keeper']]);
  expect(await stepsOf(shed.keeper, 'service-due')).toMatchObject([
    { words: 'Service is due, and it takes no new loan until then: Scale 1.' },
  ]);
  const did = { what: 'Weighed the check weights', isService: true };
  bodyOf(
    await shed.keeper.caller.post(`${shed.path}/equipment-units/${scale.units[0]?.id}/maintenance`, did),
    201,
  );
  expect(await stepsOf(shed.keeper, 'service-due')).toEqual([]);
});

test('a service that its uses call for has no day, is told once a month, and can be stopped', async () => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  const seamer = await anItem(shed, { ...free, name: 'Seamer', serviceEveryUses: 100 });
  bodyOf(await bringBack(shed.hale.caller, shed, await lend(seamer), seamer, { uses: 100 }), 201);
  const service = 'Service: Seamer 1';
  expect(await toldAt('2026-11-10T16:00:00Z', service)).toEqual(['keeper']);
  expect(await toldAt('2026-11-20T16:00:00Z', service)).toEqual([]);
  const [step] = (await stepsOf(shed.keeper, 'service-due')).filter(({ words }) => words.includes('Seamer'));
  expect(step).toMatchObject({
    ...{ dueOn: null, words: 'Service is due, and it takes no new loan until then: Seamer 1.' },
  });
  expect(await toldAt('2026-12-01T16:00:00Z', service)).toEqual(['keeper']);
  const { text = '' } = extract(catcher.caught.at(-1)?.source ?? '');
  expect(text).toContain('wants its service by its uses: Seamer 1.');
  expect(text).toContain('/stop/');
});

test('an answer to handing straight on is waited for by borrower and keeper, and by nobody once it is in', async () => {
  app.clock.now = new Date('2026-12-01T16:00:00Z');
  const dolly = await anItem(shed, { ...free, name: 'Dolly', mayRelay: true, postMinutes: 720 });
  bodyOf(await book(shed.hale.caller, dolly, ['2026-12-05T09:00', '2026-12-05T18:00']), 201);
  const next = ['2026-12-05T18:00', '2026-12-06T12:00'] as const;
  const asked = bodyOf(await book(shed.moss.caller, dolly, next, { byRelay: true }), 201);
  expect(asked.state).toBe('asked');
  expect(await stepsOf(shed.hale, 'equipment-asked')).toMatchObject([
    { words: 'A neighbour asks to take this straight from you; say yes or no: Dolly.', dueOn: '2026-12-05' },
  ]);
  expect(await stepsOf(shed.keeper, 'relay-asked')).toMatchObject([{ dueOn: '2026-12-04' }]);
  expect(await stepsOf(shed.moss, 'equipment-asked')).toEqual([]);
  expect(await toldAt('2026-12-01T17:00:00Z', 'anded straight on')).toEqual(['hale', 'keeper']);
  expect(await toldAt('2026-12-02T17:00:00Z', 'anded straight on')).toEqual([]);
  const yes = { version: asked.version, agrees: true };
  bodyOf(await shed.hale.caller.post(`${shed.path}/bookings/${asked.id}/relay-answer`, yes));
  expect(await stepsOf(shed.hale, 'equipment-asked')).toEqual([]);
  expect(await stepsOf(shed.keeper, 'relay-asked')).toEqual([]);
});

test('a coordinator has these steps only where nobody keeps the equipment', async () => {
  const coordinator = { caller: shed.coordinator } as TestHousehold;
  app.clock.now = new Date('2026-12-10T16:00:00Z');
  expect(await stepsOf(shed.keeper, 'service-due')).not.toEqual([]);
  expect(await stepsOf(coordinator, 'service-due')).toEqual([]);
  await app.admin`update book.duty_grant set ended_at = now() where duty = 'equipment_keeper'`;
  expect(await stepsOf(coordinator, 'service-due')).not.toEqual([]);
});

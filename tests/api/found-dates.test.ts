import { addDays, spellCode } from '@sheafbook/units';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { commonCans } from '../support/giving.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { stockOf, type TestStock } from '../support/kitchen.ts';
import { printed } from '../support/pdf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

const TODAY = '2026-09-01';

let app: TestApp;
let storehouse: TestStorehouse;
let dell: TestHousehold;
let stock: TestStock;
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  dell = await aHousehold(app, storehouse, 'Dell');
  stock = await stockOf(storehouse, dell);
  await dell.caller.post(at(`/households/${dell.householdId}/eaters`), { name: 'Ida', birthOn: '1990' });
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
type Can = { id: string; code: string };
const look = async (can: Can, found: Record<string, unknown>, caller = dell.caller) =>
  bodyOf(
    await caller.post(at(`/containers/${can.id}/inspections`), {
      ...{ how: 'outside', kernels: null, note: '', isMovedOut: false },
      ...found,
    }),
    201,
  );
const LOOSE = { findings: ['loose-seal'], outcome: 'kitchen-soon' };
const sheetOf = async (can: Can) => bodyOf(await dell.caller.get(at(`/containers/${can.id}/keeping`)));
type Queued = { container: Can | null; daysLeft: number; pastDays: number; eatFirstOn: string };
const queueOf = async (): Promise<Queued[]> => bodyOf(await dell.caller.get(at('/rotation'))).queue;
const queued = async (can: Can) => (await queueOf()).find(({ container }) => container?.code === can.code);
const goTo = (day: string) => {
  app.clock.now = new Date(`${day}T15:00:00Z`);
};

test('what a look leaves for the kitchen moves its dates, is eaten before all else, and says how long it is past its day', async () => {
  const [can, other] = await stock.bringIn({
    count: 2,
    packedOn: '2025-05-01',
    treatment: 'oxygen-absorber',
  });
  if (!can || !other) throw new Error('two were brought in');
  const before = await sheetOf(can);
  expect(before.keeping.likelyDays).toBeGreaterThan(1_000);
  await look(can, LOOSE);
  const { keeping, why, helps } = await sheetOf(can);
  expect(keeping).toMatchObject({
    ...{ lowDays: 30, likelyDays: 30, highDays: 30, pastDays: 0 },
    ...{ isUnfit: false, isEstimate: true, isOfferTime: true },
  });
  expect(why.reasons).toContain('found-soon');
  expect(helps).toEqual([]);
  expect((await sheetOf(other)).keeping).toEqual(before.keeping);
  expect((await queueOf())[0]).toMatchObject({
    container: { code: can.code },
    ...{ daysLeft: 30, pastDays: 0, eatFirstOn: addDays(TODAY, 30) },
  });
  const { items } = bodyOf(await dell.caller.get(at('/next-steps')));
  expect(items.map(({ kind }: { kind: string }) => kind)).toContain('dates-near');

  goTo(addDays(TODAY, 42));
  expect((await queueOf())[0]).toMatchObject({
    container: { code: can.code },
    ...{ daysLeft: 0, pastDays: 12, eatFirstOn: addDays(TODAY, 30) },
  });
  for (const [language, words] of [
    ['en', 'past its day by about 12 days: look first'],
    ['es', 'pasó su día hace unos 12 días: mire antes'],
  ] as const) {
    const paper = await printed(dell.caller, at(`/shelf/papers/eat-first?language=${language}`));
    expect(paper.text.replaceAll(/\s+/g, ' ')).toContain(words);
  }
  const csv = await dell.caller.get(at('/containers?format=csv'));
  expect(String(csv.body)).toMatch(/pastDays/);

  // The last look counts: what was packed anew in its own can and looked at again keeps as before.
  await look(can, { findings: ['nothing-wrong'], outcome: 'table' });
  expect((await sheetOf(can)).keeping.likelyDays).toBe((await sheetOf(other)).keeping.likelyDays);
});

beforeEach(() => goTo(TODAY));

test('what people may not eat is told to nobody as next, feeds nobody, and still stands on the shelf and its list', async () => {
  const can = await stock.bringCan({
    food: 'beans-pinto',
    packedOn: '2026-05-01',
    treatment: 'oxygen-absorber',
    gramsEach: 2_200,
  });
  type Group = { group: string; wholeDays: number };
  const daysOfLegumes = async () =>
    bodyOf(await dell.caller.get(at('/coverage'))).groups.find(({ group }: Group) => group === 'legumes');
  const [before, first] = [await daysOfLegumes(), await queued(can)];
  expect(first).toBeDefined();
  await look(can, { findings: ['pitting-or-seam-rust'], outcome: 'discard' });
  expect(await queued(can)).toBeUndefined();
  expect(before).toMatchObject({ stockGrams: 2_200 });
  expect(before.wholeDays).toBeGreaterThan(0);
  expect(await daysOfLegumes()).toMatchObject({ stockGrams: 0, wholeDays: 0 });
  expect((await sheetOf(can)).keeping).toMatchObject({ likelyDays: 0, isUnfit: true });
  const { containers } = bodyOf(await dell.caller.get(at('/containers?limit=100')));
  expect(containers.find(({ id }: Can) => id === can.id).keeping).toMatchObject({ isUnfit: true });
  const { risk } = bodyOf(await dell.caller.get(at('/rotation')));
  expect(risk.byFood.filter(({ food }: { food: { code: string } }) => food.code === 'beans-pinto')).toEqual(
    [],
  );
  const list = await printed(dell.caller, at('/shelf/papers/list?language=en'));
  expect(list.text).toContain('FOUND UNFIT: do not eat');

  // It leaves the queue, and not without a word: the page and the paper name it.
  const { unfit } = bodyOf(await dell.caller.get(at('/rotation')));
  expect(unfit).toMatchObject([
    { container: { id: can.id, code: can.code }, grams: 2_200, food: { code: 'beans-pinto' } },
  ]);
  for (const [language, words] of [
    ['en', `Left out, since the last look found them unfit to eat: 1 (${spellCode(can.code)}).`],
    ['es', `porque la última revisión los halló no aptos: 1 (${spellCode(can.code)}).`],
  ] as const) {
    const paper = await printed(dell.caller, at(`/shelf/papers/eat-first?language=${language}`));
    expect(paper.text.replaceAll(/\s+/g, ' ')).toContain(words);
  }
  await look(can, { findings: ['nothing-wrong'], outcome: 'table' });
  expect(bodyOf(await dell.caller.get(at('/rotation'))).unfit).toEqual([]);
  expect((await printed(dell.caller, at('/shelf/papers/eat-first?language=en'))).text).not.toContain(
    'Left out',
  );
});

test('common stock with a loose seal is offered at once, and no pantry that asks for more life waits for it', async () => {
  const [can] = await commonCans(storehouse, [
    { food: 'rice-white-long', grams: 2_400, count: 1, stored: '2026-01' },
  ]);
  if (!can) throw new Error('one was brought in');
  type Row = { code: string; eatFirstOn: string; offerOn: string; isDue: boolean };
  const row = async () =>
    bodyOf(await storehouse.coordinator.get(at('/giving-queue'))).containers.find(
      ({ code }: Row) => code === can.code,
    ) as Row;
  expect((await row()).isDue).toBe(false);
  await look(can, LOOSE, storehouse.coordinator);
  expect(await row()).toMatchObject({
    ...{ eatFirstOn: addDays(TODAY, 30), offerOn: addDays(TODAY, 30 - 90), isDue: true },
  });
});

test('of common stock too what was found unfit is named, to whoever sees what it loses', async () => {
  const wanted = { food: 'oats-rolled', grams: 1_000, count: 1, stored: '2026-01' };
  const can = (await commonCans(storehouse, [wanted])).find(({ grams }) => grams === wanted.grams);
  if (!can) throw new Error('one was brought in');
  const store = async () => bodyOf(await storehouse.coordinator.get(at('/rotation/store')));
  expect((await store()).unfit).toEqual([]);
  await look(can, { findings: ['pitting-or-seam-rust'], outcome: 'discard' }, storehouse.coordinator);
  const { unfit, queue } = await store();
  expect(unfit).toMatchObject([{ container: { code: can.code }, grams: 1_000 }]);
  expect(queue.map(({ container }: { container: Can | null }) => container?.code)).not.toContain(can.code);
});

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { bringOver } from '../support/import.ts';
import { stockOf, type TestStock } from '../support/kitchen.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let dell: TestHousehold;
let stock: TestStock;
let cellar: string;
type Can = { id: string; code: string };
/** Good old cans in the cellar, young pails in a hot garage, rice that nobody knows the place of, and one pail of oats. */
let stood: { oldCans: Can[]; pails: Can[]; rice: Can; oats: Can };

beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  dell = await aHousehold(app, storehouse, 'Dell');
  stock = await stockOf(storehouse, dell);
  await dell.caller.post(at(`/households/${dell.householdId}/eaters`), { name: 'Ida', birthOn: '1990' });
  const [cans, pails, [rice], [oats]] = [
    await stock.bringIn({ count: 3, packedOn: '2014-05-01', treatment: 'oxygen-absorber' }),
    await stock.bringIn({ kind: 'pail-6-gallon-bare', count: 6, gramsEach: 15_000, packedOn: '2026-02-01' }),
    await stock.bringIn({ food: 'rice-white-long', gramsEach: 2000, packedOn: '2025-09-01' }),
    await stock.bringIn({
      food: 'oats-rolled',
      kind: 'pail-6-gallon-bare',
      gramsEach: 6000,
      packedOn: '2026-06-01',
    }),
  ];
  if (!rice || !oats) throw new Error('each was brought in');
  stood = { oldCans: cans, pails, rice, oats };
  cellar = await aPlace('Cellar', 120);
  await moved(cans, cellar, '2014-05-01');
  await moved([...pails, oats], await aPlace('Garage', 280), '2026-06-01');
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
/** A place that is this warm the year round. */
async function aPlace(name: string, tenthsCelsius: number): Promise<string> {
  const facts = { of: 'household', name, kind: 'cellar', isLit: false, isDamp: false, isRodentProof: true };
  const { id } = bodyOf(await dell.caller.post(at('/places'), facts), 201);
  const months = Array.from({ length: 12 }, (_, month) => {
    const [year, of] = month < 8 ? [2026, month + 1] : [2025, month + 1];
    return { month: `${year}-${String(of).padStart(2, '0')}`, tenthsCelsius };
  });
  bodyOf(await dell.caller.put(at(`/places/${id}/months`), { months }));
  return id;
}
const moved = async (cans: readonly Can[], placeId: string, movedOn: string) => {
  const containerIds = cans.map(({ id }) => id);
  bodyOf(await dell.caller.post(at('/container-moves'), { containerIds, placeId, movedOn }), 201);
};
const rotation = async (query = '') => bodyOf(await dell.caller.get(at(`/rotation${query}`)));
const codesIn = (queue: { container: { code: string } | null }[]) =>
  queue.map(({ container }) => container?.code ?? 'kitchen');
const gramsOf = (rows: { atRiskGrams: number }[]) =>
  rows.reduce((sum, { atRiskGrams }) => sum + atRiskGrams, 0);

describe('what a household eats next', () => {
  test('goes by how long each keeps, not by its age: the pails of this year before the cans of 2014', async () => {
    const { queue, queued } = await rotation();
    expect(queued).toBe(11);
    const place = (can: Can | undefined) => codesIn(queue).indexOf(can?.code ?? '');
    expect(place(stood.pails[0])).toBeLessThan(place(stood.oldCans[0]));
    expect(queue[place(stood.oldCans[0])]).toMatchObject({
      place: { id: cellar, name: 'Cellar' },
      packedOn: '2014-05-01',
    });
    const days = queue.map(({ daysLeft }: { daysLeft: number }) => daysLeft);
    expect(days).toEqual(days.toSorted((a: number, b: number) => a - b));
  });

  test('is the whole queue where it is asked for, and its beginning for a glance', async () => {
    const lorne = await aHousehold(app, storehouse, 'Lorne');
    const cans = { food: 'wheat-hard-white', packedOn: '2026-08-01', gramsEach: 1_000, count: 60 };
    const stock = await stockOf(storehouse, lorne);
    for (const food of ['wheat-hard-white', 'rice-white-long']) await stock.bringIn({ ...cans, food });
    const queueOf = async (query: string) => bodyOf(await lorne.caller.get(at(`/rotation${query}`)));
    const [first, whole] = [await queueOf(''), await queueOf('?queue=whole')];
    expect([first.queued, first.queue.length]).toEqual([120, 100]);
    expect([whole.queued, whole.queue.length]).toEqual([120, 120]);
    expect(codesIn(whole.queue).slice(0, 100)).toEqual(codesIn(first.queue));
  });

  test('and puts the pace that eats all in time beside the one at which it is eaten', async () => {
    const { foods } = await rotation();
    const wheat = foods.find(({ food }: { food: { code: string } }) => food.code === 'wheat-hard-red-winter');
    expect(wheat.grams).toBe(3 * 2400 + 6 * 15_000);
    // A woman of 36 needs 400 lb of grain a year, as its foods are there: 97,200 of 105,200 g are wheat.
    const { groups } = bodyOf(await dell.caller.get(at('/coverage')));
    const need = groups.find(({ group }: { group: string }) => group === 'grains').needGramsPerDay;
    expect(wheat.eatenAMonthGrams).toBeCloseTo((30 * need * 97_200) / 105_200, -1);
    expect(wheat.steadyAMonthGrams % 30).toBe(0);
    expect(wheat.daysToEatAll).toBeCloseTo(105_200 / need, -1);
  });

  test('and what it would not eat in time is one sum, by month, by place, by food and can by can', async () => {
    const { queue, risk } = await rotation();
    expect(risk.grams).toBeGreaterThan(0);
    for (const rows of [risk.byMonth, risk.byPlace, risk.byFood, queue])
      expect(gramsOf(rows)).toBe(risk.grams);
    expect(risk.byMonth.map(({ month }: { month: string }) => month)).toEqual(
      risk.byMonth.map(({ month }: { month: string }) => month).toSorted(),
    );
    for (const { atRiskGrams, foods } of [...risk.byMonth, ...risk.byPlace])
      expect(gramsOf(foods)).toBe(atRiskGrams);
  });

  test('leaves good old cans shut while a pail ends first, and says what opening one costs', async () => {
    const { leaveShut } = await rotation();
    expect(leaveShut).toHaveLength(3);
    for (const { because, container, inPlaceOf, costsDays } of leaveShut) {
      expect(because).toBe('older-but-keeps-longer');
      expect(inPlaceOf.packedOn > container.packedOn).toBe(true);
      expect(costsDays).toBe(container.daysLeft - 90); // job map 10.1: opened, dry grain keeps 90 days
    }
  });

  test('is nobody else’s to see', async () => {
    const elder = await aHousehold(app, storehouse, 'Elder');
    const own = bodyOf(await elder.caller.get(at('/rotation')));
    expect(own).toMatchObject({ queued: 0, queue: [], risk: { grams: 0, byMonth: [] }, whatIf: null });
    expect((await elder.caller.get(at(`/rotation?moveTo=${cellar}`))).body.code).toBe('thing-not-found');
  });
});

describe('what if', () => {
  test.for([
    { asked: 'eatPercent=1000', given: false },
    { asked: 'repack=true&eatPercent=300', given: false },
    { asked: 'give=true', given: true },
  ])('$asked: less is at risk, and what is saved is the difference', async ({ asked, given }) => {
    const { risk, whatIf } = await rotation(`?${asked}`);
    expect(whatIf.grams).toBeLessThan(risk.grams);
    expect(whatIf.savedGrams).toBe(risk.grams - whatIf.grams);
    expect(gramsOf(whatIf.byMonth)).toBe(whatIf.grams);
    expect(whatIf.givenGrams > 0).toBe(given);
  });

  test('all were moved to the cellar: it keeps longer there, and what stands there already stays', async () => {
    const { risk, whatIf } = await rotation(`?moveTo=${cellar}`);
    expect(whatIf.savedGrams).toBeGreaterThan(0);
    expect(whatIf.savedGrams).toBe(risk.grams - whatIf.grams);
    const inCellar = (rows: { place: { id: string } | null; atRiskGrams: number }[]) =>
      rows.find(({ place }) => place?.id === cellar)?.atRiskGrams ?? 0;
    expect(risk.grams - inCellar(risk.byPlace)).toBeGreaterThan(whatIf.grams - inCellar(whatIf.byPlace));
  });

  test('is refused for no such pace and no such place', async () => {
    const ask = (query: string) => () => dell.caller.get(at(`/rotation?${query}`));
    expect(await refusalOf(app, ask('eatPercent=-5'))).toEqual(refused(400, 'invalid-input', 'eatPercent'));
    expect(await refusalOf(app, ask('moveTo=018f0000-0000-7000-8000-000000000000'))).toEqual(
      refused(404, 'thing-not-found'),
    );
  });
});

describe('taking one to the kitchen', () => {
  test('tells the next of that food, and warns when one that ends earlier stands unopened', async () => {
    const [old] = stood.oldCans;
    const [pail] = stood.pails;
    if (!old || !pail) throw new Error('there are some');
    const firstWheat = async (): Promise<string> =>
      (await rotation()).queue.find(
        ({ food, container }: { food: { code: string }; container: Can | null }) =>
          food.code === 'wheat-hard-red-winter' && container !== null,
      ).container.code;
    const before = await firstWheat();
    expect(stood.pails.map(({ code }) => code)).toContain(before);
    const early = bodyOf(await stock.take(old), 201);
    expect(early.earlier).toMatchObject({ container: { code: before }, isOpen: false });
    expect(early.next.container.code).toBe(await firstWheat());
    bodyOf(await stock.undo(early.entryId), 201);
    const first = stood.pails.find(({ code }) => code === before) ?? pail;
    const right = bodyOf(await stock.take(first, 5000), 201);
    expect(right.earlier).toBeNull();
    expect(right.next).toMatchObject({ container: { code: first.code }, isOpen: true, grams: 10_000 });
  });

  test('and from then on the kitchen and what is open come first, and the shut ones of that food stay shut', async () => {
    const { queue, leaveShut } = await rotation();
    const open = queue.filter(({ isOpen }: { isOpen: boolean }) => isOpen);
    expect(queue.slice(0, open.length)).toEqual(open);
    expect(codesIn(open)).toContain('kitchen');
    expect(open).toHaveLength(2);
    const wheat = leaveShut.filter(
      ({ container }: { container: { food: { code: string } } }) =>
        container.food.code === 'wheat-hard-red-winter',
    );
    expect(wheat.length).toBeGreaterThanOrEqual(3);
    for (const { because } of wheat) expect(because).toBe('one-is-open');
  });
});

test('of common stock nobody eats: all is at risk until it is given, for those to see who keep or count it', async () => {
  const { caller: treasurer } = await aHousehold(app, storehouse, 'Fenn');
  const sheet =
    'Owner,Food,Container,Count,Mass each,Stored,Origin\ncommon,rice-brown-long,pail-6-gallon-bare,2,10 kg,2025-01,\n';
  const { posted } = await bringOver(storehouse.coordinator, storehouse.path, [
    { name: 'stock.csv', text: sheet },
  ]);
  bodyOf(posted, 201);
  const store = bodyOf(await storehouse.coordinator.get(at('/rotation/store')));
  expect(store.risk.grams).toBe(20_000);
  expect(store.queue.map(({ atRiskGrams }: { atRiskGrams: number }) => atRiskGrams)).toEqual([
    10_000, 10_000,
  ]);
  expect(store.leaveShut).toEqual([]);
  expect((await treasurer.get(at('/rotation/store'))).body.code).toBe('duty-missing');
  expect(
    (await rotation()).queue.some(({ food }: { food: { code: string } }) => food.code === 'rice-brown-long'),
  ).toBe(false);
});

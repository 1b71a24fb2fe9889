import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/fingerprint.ts';
import { aPantryWish, commonCans } from '../support/giving.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

// Six cans of 2,400 g; the pantry takes 5,000 g at a visit and 7,500 g in a week, on Tuesdays and Thursdays.
const CAN_GRAMS = 2_400;
const TUESDAY = '2026-09-08';
const THURSDAY = '2026-09-10';
const NEXT_TUESDAY = '2026-09-15';

let app: TestApp;
let storehouse: TestStorehouse;
let pantryId: string;
beforeAll(async () => {
  app = await openTestApp(); // Tuesday, 1 September 2026
  storehouse = await aStorehouse(app);
  await commonCans(storehouse, [{ food: 'rice-white-long', grams: CAN_GRAMS, count: 6, stored: '2020-01' }]);
  const late = { mostDaysPastBest: 3650, leastLifeDays: 0 };
  const card = { ...late, mostGramsPerVisit: 5_000, mostGramsPerWeek: 7_500 };
  pantryId = bodyOf(await post('/pantries', aPantryWish('Mill Lane', card)), 201).id;
});
afterAll(() => app.close());

const post = (rest: string, body: unknown) => storehouse.coordinator.post(`${storehouse.path}${rest}`, body);
const match = async (onDay: string) =>
  bodyOf(await post('/gift-matchings', { trips: [{ pantryId, onDay, capacityGrams: 50_000 }] }), 201);
const roomOn = async (onDay: string) => {
  const { trips, givenGrams } = await match(onDay);
  return [trips[0].roomGrams, givenGrams];
};
const signOut = (matchingId: string) => post('/gift-manifests', { matchingId, trip: 0, driver: 'Ruth' });

test('what is on its way counts against a visit of that day and against its week, when matched and when signed out', async () => {
  expect(await roomOn(TUESDAY)).toEqual([5_000, 2 * CAN_GRAMS]);
  const [first, again, sameWeek] = [await match(TUESDAY), await match(TUESDAY), await match(THURSDAY)];
  const manifest = bodyOf(await signOut(first.id), 201);
  expect(manifest.grams).toBe(2 * CAN_GRAMS);

  expect(await roomOn(TUESDAY)).toEqual([200, 0]);
  expect(await roomOn(THURSDAY)).toEqual([2_700, CAN_GRAMS]); // 7,500 − 4,800
  expect(await roomOn(NEXT_TUESDAY)).toEqual([5_000, 2 * CAN_GRAMS]);
  // What was matched before knows nothing of it, and holds the very cans of the first.
  for (const { id } of [again, sameWeek])
    expect(await refusalOf(app, () => signOut(id))).toMatchObject({
      code: 'gift-refused',
      isUnchanged: true,
    });

  const others = await match(THURSDAY);
  bodyOf(await signOut(others.id), 201);
  expect(await roomOn(THURSDAY)).toEqual([300, 0]);
  const off = { version: manifest.version, reason: 'no van' };
  bodyOf(await post(`/gift-manifests/${manifest.id}/calling-off`, off));
  expect(await roomOn(TUESDAY)).toEqual([5_000, 2 * CAN_GRAMS]);
});

test('two trips of other cans to one door on one day are one visit, and those of a week one week', async () => {
  const say = (id: string, isMouldy: boolean) =>
    storehouse.coordinator.put(`${storehouse.path}/containers/${id}/gift-facts`, {
      ...{ sealedBy: 'home', labelFacts: ['product', 'pack-date'], isTreatedSeed: false, isMouldy },
    });
  const cansOf = ({ trips }: { trips: { loads: { containers: { id: string }[] }[] }[] }): string[] =>
    (trips[0]?.loads ?? []).flatMap(({ containers }) => containers.map(({ id }) => id));
  const first = await match(NEXT_TUESDAY);
  for (const id of cansOf(first)) bodyOf(await say(id, true));
  const [sameDay, sameWeek] = [await match(NEXT_TUESDAY), await match('2026-09-17')];
  for (const id of cansOf(first)) bodyOf(await say(id, false));
  expect(cansOf(first)).toHaveLength(2);
  expect(cansOf(sameDay).filter((id) => cansOf(first).includes(id))).toEqual([]);

  bodyOf(await signOut(first.id), 201);
  const details: string[] = [];
  for (const { id } of [sameDay, sameWeek]) {
    expect(await refusalOf(app, () => signOut(id))).toMatchObject({
      ...{ code: 'gift-refused', isUnchanged: true },
    });
    details.push((await signOut(id)).body.detail);
  }
  expect(details).toEqual([
    'Mill Lane takes no more on that day. Match again. Mill Lane takes no more in that week. Match again.',
    'Mill Lane takes no more in that week. Match again.',
  ]);
});

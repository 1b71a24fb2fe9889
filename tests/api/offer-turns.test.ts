import { extract } from 'letterparser';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { stockOf } from '../support/kitchen.ts';
import { offersOf } from '../support/offer.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

const NAMES = ['Birchall', 'Corran', 'Dell', 'Eames', 'Fenner', 'Garrow', 'Hollis'] as const;

let app: TestApp;
let storehouse: TestStorehouse;
let catcher: Catcher;
let offers: ReturnType<typeof offersOf>;
let households: Map<string, TestHousehold>;
let cans: { id: string }[];
beforeAll(async () => {
  app = await openTestApp(); // Tuesday, 1 September 2026, 10:00 in Chicago
  storehouse = await aStorehouse(app);
  catcher = await openCatcher();
  offers = offersOf(app, storehouse);
  households = new Map();
  for (const name of NAMES) households.set(name, await aHousehold(app, storehouse, name));
  cans = await (await stockOf(storehouse, of('Hollis'))).bringIn({ count: 3 });
});
afterAll(async () => {
  await catcher.close();
  await app.close();
});

const of = (name: string) => households.get(name) as TestHousehold;
/** Who is written to about a turn once the clock stands so many hours after the offer, and all that is due is done. */
async function toldAfter(hours: number): Promise<string[]> {
  offers.after(hours);
  catcher.caught.length = 0;
  await enqueueEverywhere(app.outside, 'remind');
  await doWork(app, catcher);
  return catcher.caught
    .filter(({ source }) => /your turn to say first/.test(extract(source).text ?? ''))
    .map(({ to }) => (to.split('@')[0] ?? '').replace(/^./, (letter) => letter.toUpperCase()))
    .toSorted();
}
const seesItem = async (name: string) =>
  bodyOf(await of(name).caller.get(`${storehouse.path}/next-steps`)).items.some(
    ({ kind }: { kind: string }) => kind === 'offer-open',
  );

// Three are asked at a time, by their seats where nobody knows what they lack: the coordinator's Ashdown is the first of them.
test('a turn that comes by time is told to whose it is, once, and to nobody before', async () => {
  const offer = bodyOf(
    await offers.offer(of('Hollis').caller, [cans[0]?.id ?? ''], { windowHours: 48 }),
    201,
  );
  expect(await toldAfter(0)).toEqual(['Birchall', 'Coordinator', 'Corran']);
  expect([await seesItem('Corran'), await seesItem('Dell')]).toEqual([true, false]);
  expect(await toldAfter(1)).toEqual([]);
  // The second group's turn begins after 48 hours; nobody did anything to bring it.
  expect(await toldAfter(49)).toEqual(['Dell', 'Eames', 'Fenner']);
  expect([await seesItem('Corran'), await seesItem('Dell')]).toEqual([false, true]);
  expect(await toldAfter(50)).toEqual([]);
  bodyOf(await offers.claim(of('Dell').caller, offer.id, [cans[0]?.id ?? '']), 201);
  expect(await seesItem('Eames')).toBe(false);
  // Garrow's turn would come now, but there is nothing left.
  expect(await toldAfter(97)).toEqual([]);
});

test('an offer that was taken back, or has closed, tells nobody more', async () => {
  offers.after(100);
  const far = { windowHours: 48, closesAt: '2026-09-22T15:00:00Z' };
  const gone = bodyOf(await offers.offer(of('Hollis').caller, [cans[1]?.id ?? ''], far), 201);
  await toldAfter(101);
  bodyOf(await offers.takeBack(of('Hollis').caller, gone.id));
  const short = { windowHours: 48, closesAt: '2026-09-06T15:00:00Z' }; // 120 hours after the first
  bodyOf(await offers.offer(of('Hollis').caller, [cans[2]?.id ?? ''], short), 201);
  await toldAfter(102);
  expect(await toldAfter(101 + 49)).toEqual([]);
});

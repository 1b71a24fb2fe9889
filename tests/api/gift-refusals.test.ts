import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPantryWish, commonCans, type GivenCan } from '../support/giving.ts';
import { aHousehold, grantDuty, type TestHousehold } from '../support/household.ts';
import { stockOf } from '../support/kitchen.ts';
import { offersOf } from '../support/offer.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let eames: TestHousehold;
let fenner: TestHousehold;
let cans: GivenCan[];
let pantryId: string;
beforeAll(async () => {
  app = await openTestApp(); // Tuesday, 1 September 2026
  storehouse = await aStorehouse(app);
  eames = await aHousehold(app, storehouse, 'Eames');
  fenner = await aHousehold(app, storehouse, 'Fenner');
  await grantDuty(storehouse, fenner.personId, 'packing_lead');
  cans = await commonCans(storehouse, [
    { food: 'rice-white-long', grams: 2_400, count: 3, stored: '2020-01' },
  ]);
  const card = { mostDaysPastBest: 3650, leastLifeDays: 0 };
  pantryId = bodyOf(await post('/pantries', aPantryWish('Mill Lane', card)), 201).id;
});
beforeEach(() => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const post = (rest: string, body?: unknown, caller = storehouse.coordinator) => caller.post(at(rest), body);
const match = async (onDay: string, pantry = pantryId) =>
  bodyOf(await post('/gift-matchings', { trips: [{ pantryId: pantry, onDay, capacityGrams: 50_000 }] }), 201);
const signOut = (matchingId: string) => () =>
  post('/gift-manifests', { matchingId, trip: 0, driver: 'Ruth' });
type Lot = { containers: { id: string }[]; refusals: string[][] };
const refusalsOf = ({ lots }: { lots: Lot[] }, id: string) =>
  lots.find(({ containers }) => containers.some((container) => container.id === id))?.refusals;
const REFUSED = { status: 409, code: 'gift-refused', isUnchanged: true };

test('what comes on hold between matching and driving stays, and goes once it is released', async () => {
  const [can] = cans;
  const { id } = await match('2026-09-08');
  const of = { scope: 'containers', containerIds: [can?.id] };
  const hold = bodyOf(await post('/holds', { of, reason: 'A notice of the supplier' }), 201);
  expect(await refusalOf(app, signOut(id))).toMatchObject(REFUSED);
  expect((await signOut(id)()).body.detail).toContain(`${can?.code} is on hold.`);
  expect(refusalsOf(await match('2026-09-08'), can?.id ?? '')).toEqual([['on-hold']]);
  const step = () => post(`/containers/${can?.id}/ladder-steps`, { to: 'animals', reason: 'stale' });
  expect(await refusalOf(app, step)).toMatchObject({ status: 409, isUnchanged: true });
  bodyOf(await post(`/holds/${hold.id}/release-request`, { finding: 'Clean.' }, fenner.caller));
  bodyOf(await post(`/holds/${hold.id}/release`));
  const manifest = bodyOf(await signOut(id)(), 201);
  const off = { version: manifest.version, reason: 'no van' };
  bodyOf(await post(`/gift-manifests/${manifest.id}/calling-off`, off));
});

test('what a member took since is on no trip', async () => {
  const [, can] = cans;
  const { id } = await match('2026-09-08');
  const offers = offersOf(app, storehouse);
  const offer = bodyOf(await offers.offer(storehouse.coordinator, [can?.id ?? ''], { of: 'store' }), 201);
  expect(await refusalOf(app, signOut(id))).toMatchObject(REFUSED);
  bodyOf(await offers.claim(eames.caller, offer.id, [can?.id ?? '']), 201);
  expect(await refusalOf(app, signOut(id))).toMatchObject(REFUSED);
  expect(refusalsOf(await match('2026-09-08'), can?.id ?? '')).toBeUndefined();
});

test('a trip whose day is over is matched anew, and a receipt comes neither before its trip nor from tomorrow', async () => {
  const { id } = await match('2026-09-08');
  app.clock.now = new Date('2026-09-09T15:00:00Z');
  expect((await signOut(id)()).body.detail).toContain('The day of this trip is over.');
  expect(await refusalOf(app, signOut(id))).toMatchObject(REFUSED);
  const later = await match('2026-09-15');
  const manifest = bodyOf(await signOut(later.id)(), 201);
  const receive = (receivedOn: string) => () =>
    post(`/gift-manifests/${manifest.id}/receipt`, {
      ...{ version: manifest.version, receivedOn, receiverDuty: 'intake desk', refused: [] },
    });
  for (const day of ['2026-09-10', '2026-09-14'])
    expect(await refusalOf(app, receive(day))).toEqual(refused(400, 'invalid-input', 'receivedOn'));
  const off = { version: manifest.version, reason: 'no van' };
  bodyOf(await post(`/gift-manifests/${manifest.id}/calling-off`, off));
});

test('a gift after its date is refused by the card’s own days, and a household’s own is nobody’s to give', async () => {
  const stock = await stockOf(storehouse, eames);
  const own = await stock.bringCan({ packedOn: '2019-01-01' });
  const step = () => post(`/containers/${own.id}/ladder-steps`, { to: 'animals', reason: 'hens' });
  expect(await refusalOf(app, step)).toEqual(refused(404, 'thing-not-found'));
  expect(refusalsOf(await match('2026-09-08'), own.id)).toBeUndefined();
  // Rice of 2020 in cans of unknown treatment and place: it is past its day, which this card never takes.
  const strict = aPantryWish('Wants it in time', { mostDaysPastBest: null, leastLifeDays: 0 });
  const { id } = bodyOf(await post('/pantries', strict), 201);
  const matching = await match('2026-09-08', id);
  expect(matching.givenGrams).toBe(0);
  expect(refusalsOf(matching, cans[2]?.id ?? '')).toEqual([['past-its-date']]);
  expect(await refusalOf(app, signOut(matching.id))).toMatchObject({
    code: 'gift-refused',
    isUnchanged: true,
  });
});

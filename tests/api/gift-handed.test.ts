import { addDays } from '@sheafbook/units';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aPantryWish } from '../support/giving.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { bringOver } from '../support/import.ts';
import { offersOf } from '../support/offer.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let eames: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  eames = await aHousehold(app, storehouse, 'Eames');
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const get = async (rest: string, caller = storehouse.coordinator) => bodyOf(await caller.get(at(rest)));
const post = (rest: string, body: unknown) => storehouse.coordinator.post(at(rest), body);

test('what a household keeps is its own until its offer is over and says so; then it is given under its name alone', async () => {
  const text =
    'Owner,Food,Container,Count,Mass each,Stored,Origin\nEames,rice-white-long,can-no-10,1,2400 g,2020-01,\ncommon,beans-pinto,can-no-10,1,2200 g,2020-01,\n';
  const { posted } = await bringOver(storehouse.coordinator, storehouse.path, [{ name: 'stock.csv', text }]);
  bodyOf(posted, 201);
  const offers = offersOf(app, storehouse);
  const [own] = (await get('/containers', eames.caller)).containers;
  const queue = async () => (await get('/giving-queue')).containers as { id: string; code: string }[];
  const [beans] = await queue();
  expect((await queue()).map(({ id }) => id)).not.toContain(own.id);

  bodyOf(await offers.offer(eames.caller, [own.id], { goesToPantry: true }), 201);
  bodyOf(await offers.offer(storehouse.coordinator, [beans?.id ?? ''], { of: 'store' }), 201);
  expect((await queue()).map(({ id }) => id)).not.toContain(own.id);
  const late = { mostDaysPastBest: 3650, leastLifeDays: 0 };
  const { id: pantryId } = bodyOf(await post('/pantries', aPantryWish('Mill Lane', late)), 201);
  // While members are asked, common stock waits: the first Tuesday of the clock's September.
  const offeredNow = await match(pantryId, '2026-09-08');
  expect(offeredNow.lots.map(({ refusals }: { refusals: string[][] }) => refusals)).toEqual([[['offered']]]);

  offers.after(22 * 24);
  const matching = await match(pantryId, '2026-09-29');
  expect(matching.givenGrams).toBe(4_600);
  const manifest = bodyOf(
    await post('/gift-manifests', { matchingId: matching.id, trip: 0, driver: 'Ruth' }),
    201,
  );
  expect(JSON.stringify(manifest)).not.toContain('Eames');
  offers.after(28 * 24 + 6);
  const receipt = {
    version: 1,
    receivedOn: addDays('2026-09-28', 1),
    receiverDuty: 'intake desk',
    refused: [],
  };
  bodyOf(await post(`/gift-manifests/${manifest.id}/receipt`, receipt));
  const grams = { own: { grams: 2_400 }, all: { grams: 4_600 } };
  expect(await get('/gift-year?year=2026', eames.caller)).toMatchObject(grams);
  expect(await get('/gift-year?year=2026')).toMatchObject({ ...grams, own: { grams: 0 } });

  // A recall follows it to the pantry's door by the number of the manifest.
  const { way } = await get('/trace?code=manifest%201&task=recall');
  const given = way.balance.lines.filter(({ place }: { place: string }) => place === 'given');
  expect(given).toMatchObject([
    { ownerName: 'Eames', pantry: 'Mill Lane', grams: 2_400 },
    { owner: 'common', pantry: 'Mill Lane', grams: 2_200 },
  ]);
  expect(way.balance).toMatchObject({ inGrams: 4_600, outGrams: 4_600, leftGrams: 0, addsUp: true });
});

const match = async (pantryId: string, onDay: string) =>
  bodyOf(await post('/gift-matchings', { trips: [{ pantryId, onDay, capacityGrams: 50_000 }] }), 201);

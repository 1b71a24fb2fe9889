import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aPantryWish } from '../support/giving.ts';
import { offersOf } from '../support/offer.ts';
import { aHall, aPackingSession, aPourBody, bringWheat, type TestHall } from '../support/packing.ts';
import { printed } from '../support/pdf.ts';
import { aSeamer, THICK } from '../support/seam.ts';
import { piecesOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

type Can = { id: string; code: string };
let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
/** Dell's beans ran first on the line and Ashdown's wheat after them; then the beans were filled anew. */
let first: Can;
let anew: Can;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  hall = await aHall(app, storehouse);
  const { Dell } = hall.buy.households;
  const lead = hall.lead.caller;
  const seamer = await aSeamer(storehouse, hall);
  const day = await aPackingSession(storehouse, hall);
  bodyOf(await lead.post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
  const [beans] = await piecesOf(storehouse, hall.buy.splitIds.beans, Dell);
  const own = { bagId: beans?.bagId ?? '', householdId: Dell.householdId };
  bodyOf(await lead.post(`${day}/bags`, own));
  const pour = async (body: object): Promise<Can> =>
    bodyOf(await lead.post(`${day}/pours`, body), 201).containers[0];
  first = await pour({ ...aPourBody(hall, { name: 'Dell', grams: [2_400], targetGrams: 2_400 }), ...own });
  bodyOf(await seamer.check(day, { serial: 1, measures: THICK }), 201);
  const answer = { containerIds: [first.id], disposition: 're-can', note: 'too thick' };
  bodyOf(await lead.post(at('/seal-holds/settling'), answer));
  for (const _ of [1, 2, 3]) bodyOf(await seamer.check(day, { occasion: 'clearing' }), 201);
  await pour(aPourBody(hall, { name: 'Ashdown', grams: [2_400], targetGrams: 2_400 }));
  const wish = { containerKindId: hall.shelves.kinds['can-no-10'], treatment: 'none', note: '' };
  const containers = [{ containerId: first.id, spilledGrams: 0 }];
  const { moved } = bodyOf(await lead.post(at('/re-cannings'), { containers, ...wish }), 201);
  expect(moved).toMatchObject([{ line: 1, serial: 3 }]);
  const [row] = await app.admin<Can[]>`select container_id as id, container_code as code from book.container
    where container_code = ${moved[0].newCode}`;
  if (!row) throw new Error('the new can is there');
  anew = row;
  // Nothing is in doubt any more: what was closed since is checked, too.
  bodyOf(await seamer.check(day, { serial: 3 }), 201);
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const dell = () => hall.buy.households.Dell;

test('the label of a can that was filled anew says what ran before it when its line closed it for the second time', async () => {
  const metOf = async ({ code }: Can) =>
    bodyOf(await dell().caller.get(at(`/labels?codes=${code}`))).labels[0]?.metOnLine;
  expect(await metOf(anew)).toEqual(['gluten', 'wheat']);
});

test('who at home must not have wheat is told to take care with it', async () => {
  const { caller, householdId } = dell();
  const ida = { name: 'Ida', birthOn: '2019-04', excludedAllergens: ['wheat'] };
  bodyOf(await caller.post(at(`/households/${householdId}/eaters`), ida), 201);
  const said = JSON.stringify(bodyOf(await caller.get(at(`/containers/${anew.id}/eaters`))));
  expect(said).toContain('Ida');
});

test('a pantry that takes no wheat is not given it, and one that minds nothing is', async () => {
  const offers = offersOf(app, storehouse);
  bodyOf(await offers.offer(dell().caller, [anew.id], { goesToPantry: true }), 201);
  offers.after(22 * 24);
  const late = { mostDaysPastBest: 3650, leastLifeDays: 0 };
  const refusalsOf = async (name: string, card: Record<string, unknown>): Promise<string[]> => {
    const wish = aPantryWish(name, { ...late, ...card });
    const { id: pantryId } = bodyOf(await storehouse.coordinator.post(at('/pantries'), wish), 201);
    const trips = [{ pantryId, onDay: '2026-09-29', capacityGrams: 50_000 }];
    const { lots } = bodyOf(await storehouse.coordinator.post(at('/gift-matchings'), { trips }), 201);
    return lots.flatMap(({ refusals }: { refusals: string[][] }) => refusals.flat());
  };
  expect(await refusalsOf('Mill Lane', {})).not.toContain('allergen');
  expect(await refusalsOf('Chapel', { allergensNotTaken: ['wheat'] })).toContain('allergen');
});

test('whoever takes it in at a pantry reads what may have got into it, on the screen and on the manifest', async () => {
  const { pantries } = bodyOf(await storehouse.coordinator.get(at('/pantries')));
  const millLane = pantries.find(({ name }: { name: string }) => name === 'Mill Lane');
  const trips = [{ pantryId: millLane.id, onDay: '2026-09-29', capacityGrams: 50_000 }];
  const { id } = bodyOf(await storehouse.coordinator.post(at('/gift-matchings'), { trips }), 201);
  const wish = { matchingId: id, trip: 0, driver: 'Ruth' };
  const manifest = bodyOf(await storehouse.coordinator.post(at('/gift-manifests'), wish), 201);
  const line = manifest.lines.find(({ code }: Can) => code === anew.code);
  expect([line.allergens, line.metOnLine]).toEqual([[], ['gluten', 'wheat']]);
  for (const [language, words] of [
    ['en', 'Packed on a line with gluten, wheat.'],
    ['es', 'Envasado en una línea con gluten, trigo.'],
  ]) {
    const path = at(`/gift-manifests/${manifest.id}/paper?language=${language}`);
    const { text } = await printed(storehouse.coordinator, path);
    expect(text.replaceAll(/\s+/g, ' ')).toContain(words);
  }
});

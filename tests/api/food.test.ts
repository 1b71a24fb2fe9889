import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { booksOf } from '../support/books-text.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const foods = (query = '') => storehouse.coordinator.get(`${storehouse.path}/foods${query}`);
const kinds = (query = '') => storehouse.coordinator.get(`${storehouse.path}/container-kinds${query}`);

/** What a food of one's own needs at least. */
const OWN = {
  nameEn: 'Pardina lentils',
  foodGroup: 'legumes',
  kilocaloriesPer100Grams: null,
  allergens: [],
  gluten: 'no',
  source: 'label of the sack',
};
const addFood = (wish: Record<string, unknown>) =>
  storehouse.coordinator.post(`${storehouse.path}/foods`, { ...OWN, ...wish });

test('a new storehouse has at least thirty foods, each with its source and release', async () => {
  const { foods: all, next } = bodyOf(await foods('?limit=200'));
  expect(all.length).toBeGreaterThanOrEqual(30);
  expect(next).toBeNull();
  for (const food of all)
    expect([food.isOwn, food.sourceRelease]).toEqual([false, expect.stringContaining('28')]);
});

test('pages by code give every food once', async () => {
  const codes: string[] = [];
  let after = '';
  do {
    const page = bodyOf(await foods(`?limit=15${after && `&after=${after}`}`));
    codes.push(...page.foods.map((food: { foodCode: string }) => food.foodCode));
    after = page.next ?? '';
  } while (after !== '');
  const all = bodyOf(await foods('?limit=200')).foods.map((food: { foodCode: string }) => food.foodCode);
  expect(codes).toEqual(all);
});

test('a search finds words of either language, in any order, and takes signs as they are', async () => {
  const codesOf = async (search: string) =>
    bodyOf(await foods(`?search=${encodeURIComponent(search)}`)).foods.map(
      (food: { foodCode: string }) => food.foodCode,
    );
  expect(await codesOf('WHEAT hard white')).toEqual(['wheat-hard-white']);
  expect(await codesOf('frijoles negros')).toEqual(['beans-black']);
  expect(await codesOf('100%')).toEqual([]);
  expect(await codesOf('_')).toEqual([]);
});

test('foods come as CSV with a header row', async () => {
  const answer = await foods('?format=csv&search=spelt');
  expect(answer.headers.get('Content-Type')).toContain('text/csv');
  const [header, row] = answer.body.split('\r\n');
  expect(header).toMatch(/^id,foodCode,nameEn/);
  expect(row).toContain(',spelt,Spelt,');
});

test('a food of one’s own is marked so, may have no energy, and gets a code from its name', async () => {
  const first = bodyOf(await addFood({ nameEn: 'Lentejas pardiñas' }), 201);
  expect(first).toMatchObject({
    foodCode: 'lentejas-pardinas',
    isOwn: true,
    kilocaloriesPer100Grams: null,
    allergens: [],
    sourceRelease: 'the group’s own',
    nameEs: 'Lentejas pardiñas',
  });
  const second = bodyOf(await addFood({ nameEn: 'Lentejas  Pardiñas!' }), 201);
  expect(second.foodCode).toBe('lentejas-pardinas-2');
});

test('a code that is taken is refused, and one that is given is kept through a change of name', async () => {
  const food = bodyOf(await addFood({ foodCode: 'house-mix', nameEn: 'House mix' }), 201);
  const again = await addFood({ foodCode: 'house-mix', nameEn: 'Another mix' });
  expect([again.status, again.body.code, again.body.fields[0].field]).toEqual([
    409,
    'already-there',
    'foodCode',
  ]);
  const { nameEn: _, ...figures } = OWN;
  const edited = bodyOf(
    await storehouse.coordinator.put(`${storehouse.path}/foods/${food.id}`, {
      ...figures,
      version: 1,
      nameEn: 'Winter mix',
      nameEs: 'Mezcla de invierno',
      kilocaloriesPer100Grams: 345,
    }),
  );
  expect(edited).toMatchObject({ foodCode: 'house-mix', nameEn: 'Winter mix', version: 2 });
  const stale = await storehouse.coordinator.put(`${storehouse.path}/foods/${food.id}`, {
    ...figures,
    version: 1,
    nameEn: 'Summer mix',
    nameEs: 'Mezcla de verano',
  });
  expect([stale.status, stale.body.code, stale.body.newer.nameEn]).toEqual([
    409,
    'stale-version',
    'Winter mix',
  ]);
});

test.for([
  { field: 'allergens', wish: { allergens: undefined }, because: 'no answer about allergens is no answer' },
  { field: 'allergens.0', wish: { allergens: ['gluten'] }, because: 'gluten is none of the nine' },
  { field: 'allergens', wish: { allergens: ['wheat', 'wheat'] }, because: 'an allergen is named once' },
  { field: 'source', wish: { source: '   ' }, because: 'a figure has a source' },
  {
    field: 'kilocaloriesPer100Grams',
    wish: { kilocaloriesPer100Grams: undefined },
    because: 'unknown is said as null',
  },
  {
    field: 'kilocaloriesPer100Grams',
    wish: { kilocaloriesPer100Grams: -1 },
    because: 'energy is not negative',
  },
  {
    field: 'kilocaloriesPer100Grams',
    wish: { kilocaloriesPer100Grams: 951 },
    because: 'fat has 9 kcal a gram',
  },
  {
    field: 'proteinMilligramsPer100Grams',
    wish: { proteinMilligramsPer100Grams: 100_001 },
    because: '100 g hold 100 g',
  },
  {
    field: 'fatMilligramsPer100Grams',
    wish: { fatMilligramsPer100Grams: 1.5 },
    because: 'milligrams are whole',
  },
  { field: 'nameEn', wish: { nameEn: '' }, because: 'a food has a name' },
  { field: 'foodCode', wish: { foodCode: 'House Mix' }, because: 'a code has a shape' },
  { field: 'gluten', wish: { gluten: 'maybe' }, because: 'gluten is yes, no or possible' },
  { field: 'isOwn', wish: { isOwn: false }, because: 'nobody makes a published food' },
])('a food is refused at $field: $because', async ({ field, wish }) => {
  const before = await booksOf(app);
  const answer = await addFood(wish);
  expect([answer.status, answer.body.code]).toEqual([400, 'invalid-input']);
  expect(answer.body.fields.map((problem: { field: string }) => problem.field)).toContain(field);
  expect(await booksOf(app)).toBe(before);
});

test('the figures of a published food stay as they are', async () => {
  const [wheat] = bodyOf(await foods('?search=wheat-hard-white')).foods;
  const before = await booksOf(app);
  const answer = await storehouse.coordinator.put(`${storehouse.path}/foods/${wheat.id}`, {
    ...OWN,
    version: 1,
    nameEn: 'Cheap wheat',
    nameEs: 'Trigo barato',
  });
  expect([answer.status, answer.body.code]).toEqual([409, 'food-is-published']);
  expect(await booksOf(app)).toBe(before);
});

test('a food that is on no open buy can be retired and put back', async () => {
  const [rye] = bodyOf(await foods('?search=rye')).foods;
  const path = `${storehouse.path}/foods/${rye.id}/retirement`;
  const retired = bodyOf(await storehouse.coordinator.put(path, { version: rye.version, isRetired: true }));
  expect(retired).toMatchObject({ isRetired: true, version: 2 });
  expect(bodyOf(await foods('?search=rye')).foods).toEqual([]);
  expect(bodyOf(await foods('?search=rye&retired=yes')).foods).toHaveLength(1);
  const buy = {
    name: 'A buy of rye',
    gatheringClosesAt: '2026-09-20T23:00:00Z',
    orderOn: '2026-09-24',
    lines: [{ foodId: rye.id }],
  };
  const bought = await storehouse.coordinator.post(`${storehouse.path}/buys`, buy);
  expect([bought.status, bought.body.fields[0].field]).toEqual([400, 'lines.0.foodId']);
  expect(bought.body.detail).toBe('Rye is retired. Put it back on the lists first.');
  const { body: spanish } = await storehouse.coordinator.post(`${storehouse.path}/buys`, buy, {
    'Accept-Language': 'es',
  });
  expect(spanish.fields[0].message).toMatch(/Centeno/);
  expect(spanish.detail).toBe(spanish.fields[0].message);
  bodyOf(await storehouse.coordinator.put(path, { version: 2, isRetired: false }));
  expect(bodyOf(await foods('?search=rye')).foods).toHaveLength(1);
});

test('a food on a line of an open buy is not retired', async () => {
  const [spelt] = bodyOf(await foods('?search=spelt')).foods;
  const wish = { name: 'A buy of spelt', gatheringClosesAt: '2026-09-20T23:00:00Z', orderOn: '2026-09-24' };
  bodyOf(
    await storehouse.coordinator.post(`${storehouse.path}/buys`, { ...wish, lines: [{ foodId: spelt.id }] }),
    201,
  );
  const answer = await storehouse.coordinator.put(`${storehouse.path}/foods/${spelt.id}/retirement`, {
    version: spelt.version,
    isRetired: true,
  });
  expect([answer.status, answer.body.code, answer.body.buys[0].name]).toEqual([
    409,
    'in-use',
    'A buy of spelt',
  ]);
});

test('a storehouse packs into published container kinds, whose tare and price it finds out itself', async () => {
  const { containerKinds: all } = bodyOf(await kinds());
  const can = all.find((kind: { kindCode: string }) => kind.kindCode === 'can-no-10');
  // Size lists of the can trade: a No. 10 can (603 × 700) holds 105.1 US fl oz.
  expect(can).toMatchObject({
    capacityMicrolitres: 3_108_180,
    tareGrams: null,
    priceMinorUnits: null,
    isOwn: false,
  });
  const path = `${storehouse.path}/container-kinds/${can.id}`;
  const set = bodyOf(
    await storehouse.coordinator.put(path, { version: 1, tareGrams: 262, priceMinorUnits: 133 }),
  );
  expect(set).toMatchObject({
    tareGrams: 262,
    priceMinorUnits: 133,
    version: 2,
    capacityMicrolitres: 3_108_180,
  });
  const stale = await storehouse.coordinator.put(path, { version: 1, tareGrams: 1, priceMinorUnits: 1 });
  expect([stale.status, stale.body.code, stale.body.newer.tareGrams]).toEqual([409, 'stale-version', 262]);
});

test('a container kind of one’s own has a capacity and a source', async () => {
  const wish = {
    kindCode: 'crock-5-litre',
    nameEn: '5-litre crock',
    capacityMicrolitres: 5_000_000,
    source: 'measured',
  };
  const post = (changed: Record<string, unknown>) =>
    storehouse.coordinator.post(`${storehouse.path}/container-kinds`, { ...wish, ...changed });
  expect(bodyOf(await post({}), 201)).toMatchObject({ isOwn: true, kindCode: 'crock-5-litre' });
  expect((await post({})).body.code).toBe('already-there');
  for (const [field, changed] of Object.entries({
    capacityMicrolitres: { kindCode: 'b', capacityMicrolitres: 0 },
    tareGrams: { kindCode: 'b', tareGrams: -5 },
    source: { kindCode: 'b', source: '' },
    priceMinorUnits: { kindCode: 'b', priceMinorUnits: 0.5 },
  })) {
    const answer = await post(changed);
    expect([answer.status, answer.body.fields[0].field]).toEqual([400, field]);
  }
  const csv = await kinds('?format=csv');
  expect(csv.body).toContain('crock-5-litre');
});

test('a member looks foods up and changes none; a stranger sees nothing', async () => {
  const { caller } = await aHousehold(app, storehouse, 'Birchall');
  expect((await caller.get(`${storehouse.path}/foods`)).status).toBe(200);
  const added = await caller.post(`${storehouse.path}/foods`, OWN);
  expect([added.status, added.body.code]).toEqual([403, 'duty-missing']);
  const kind = await caller.post(`${storehouse.path}/container-kinds`, {});
  expect([kind.status, kind.body.code]).toEqual([403, 'duty-missing']);
  expect((await app.as().get(`${storehouse.path}/foods`)).body.code).toBe('not-signed-in');
});

test('another storehouse’s food is not found, neither at its own address nor from elsewhere', async () => {
  const other = await anotherStorehouse(app);
  const [wheat] = bodyOf(await foods('?search=wheat-hard-white')).foods;
  const elsewhere = await other.coordinator.get(`${other.path}/foods/${wheat.id}`);
  expect([elsewhere.status, elsewhere.body.code]).toEqual([404, 'thing-not-found']);
  const inside = await other.coordinator.get(`${storehouse.path}/foods/${wheat.id}`);
  expect([inside.status, inside.body.code]).toEqual([404, 'storehouse-not-found']);
  expect((await foods('/no-id')).body.code).toBe('thing-not-found');
});

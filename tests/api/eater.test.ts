import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let corran: TestHousehold;
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  corran = await aHousehold(app, storehouse, 'Corran');
});
afterAll(() => app.close());

const eatersOf = (household: TestHousehold) =>
  `${storehouse.path}/households/${household.householdId}/eaters`;
const countEaters = async () => (await app.admin`select count(*)::int as n from book.eater`)[0]?.n;

async function anEater(household: TestHousehold, facts: Record<string, unknown> = {}) {
  const answer = await household.caller.post(eatersOf(household), {
    name: 'Ida',
    birthOn: '2019-04',
    ...facts,
  });
  if (answer.status !== 201) throw new Error(JSON.stringify(answer.body));
  return answer.body;
}

/** An edit sends every field. */
function editOf({ id: _, ageYears: __, ...facts }: Record<string, unknown>, change: Record<string, unknown>) {
  return { ...facts, ...change };
}

test('an eater is entered with little, and what was not said is shown as such', async () => {
  expect(await anEater(corran)).toEqual({
    id: expect.any(String),
    name: 'Ida',
    birthOn: '2019-04',
    ageYears: 7,
    sex: 'unstated',
    activity: 'moderate',
    presentPercent: 100,
    heightCentimetres: null,
    massKilograms: null,
    typedKilocalories: null,
    excludedAllergens: [],
    excludedFoodCodes: [],
    avoidsGluten: false,
    version: 1,
  });
});

test('an eater is changed, from the version that was read, and removed', async () => {
  const eater = await anEater(birchall, { excludedAllergens: ['wheat'] });
  const path = `${eatersOf(birchall)}/${eater.id}`;
  const change = { activity: 'active', excludedFoodCodes: ['lentils'] };
  const second = await birchall.caller.put(path, editOf(eater, change));
  expect(second.body).toMatchObject({ ...change, excludedAllergens: ['wheat'], version: 2 });
  const stale = await birchall.caller.put(path, editOf(eater, { name: 'Ina' }));
  expect(stale.body).toMatchObject({ code: 'stale-version', newer: { name: 'Ida', version: 2 } });
  expect((await birchall.caller.delete(`${path}?version=1`)).body.code).toBe('stale-version');
  expect((await birchall.caller.delete(`${path}?version=2`)).status).toBe(204);
  expect((await birchall.caller.delete(`${path}?version=2`)).body.code).toBe('thing-not-found');
  expect(await app.admin`select from book.eater where eater_id = ${eater.id}`).toHaveLength(0);
});

test('an edit that leaves a field out is refused, so that no allergy is forgotten', async () => {
  const eater = await anEater(birchall, { excludedAllergens: ['peanuts'] });
  const { excludedAllergens: _, ...edit } = editOf(eater, {});
  const answer = await birchall.caller.put(`${eatersOf(birchall)}/${eater.id}`, edit);
  expect(answer.body).toMatchObject({ code: 'invalid-input', fields: [{ field: 'excludedAllergens' }] });
});

test('of two edits of one version, one is taken', async () => {
  const eater = await anEater(birchall);
  const path = `${eatersOf(birchall)}/${eater.id}`;
  const answers = await Promise.all(
    ['Ina', 'Ilse', 'Iris'].map((name) => birchall.caller.put(path, editOf(eater, { name }))),
  );
  expect(answers.map(({ status }) => status).toSorted()).toEqual([200, 409, 409]);
});

describe('a birth date', () => {
  test.for([
    { birthOn: '1900', ageYears: 126 },
    { birthOn: '2026-09-01', ageYears: 0 },
    { birthOn: '2026-09', ageYears: 0 },
    { birthOn: '1988-02-29', ageYears: 38 },
  ])('may be $birthOn: $ageYears years', async ({ birthOn, ageYears }) => {
    expect(await anEater(corran, { birthOn })).toMatchObject({ birthOn, ageYears });
  });

  test.for([
    '2026-09-02',
    '2026-10',
    '2027',
    '1899-12-31',
    '1899',
    '2019-02-29',
    '2019-13',
    '19',
    '',
    'May 2019',
  ])('can not be "%s"', async (birthOn) => {
    const before = await countEaters();
    const answer = await corran.caller.post(eatersOf(corran), { name: 'Ida', birthOn });
    expect(answer.status).toBe(400);
    expect(answer.body.fields[0].field).toBe('birthOn');
    expect(await countEaters()).toBe(before);
  });

  test('is judged by the storehouse’s own day: still the first of September in Chicago', async () => {
    app.clock.now = new Date('2026-09-02T03:00:00Z');
    const answer = await corran.caller.post(eatersOf(corran), { name: 'Ida', birthOn: '2026-09-02' });
    expect(answer.body).toMatchObject({ code: 'invalid-input', fields: [{ field: 'birthOn' }] });
  });
});

describe('an eater is refused with', () => {
  test.for([
    { because: 'a blank name', facts: { name: ' ' }, field: 'name' },
    {
      because: 'an allergen that is none of the nine',
      facts: { excludedAllergens: ['gluten'] },
      field: 'excludedAllergens.0',
    },
    {
      because: 'an allergen named twice',
      facts: { excludedAllergens: ['soy', 'soy'] },
      field: 'excludedAllergens',
    },
    {
      because: 'a food that the storehouse has not',
      facts: { excludedFoodCodes: ['lentils', 'moon-cheese'] },
      field: 'excludedFoodCodes.1',
    },
    { because: 'more than a whole presence', facts: { presentPercent: 101 }, field: 'presentPercent' },
    { because: 'half a percent', facts: { presentPercent: 50.5 }, field: 'presentPercent' },
    { because: 'a height in inches', facts: { heightCentimetres: 12 }, field: 'heightCentimetres' },
    { because: 'a mass of nothing', facts: { massKilograms: 0 }, field: 'massKilograms' },
    {
      because: 'more energy than anyone eats',
      facts: { typedKilocalories: 10_001 },
      field: 'typedKilocalories',
    },
    { because: 'a sex that the tables don’t know', facts: { sex: 'x' }, field: 'sex' },
    { because: 'a field that there is none of', facts: { diet: 'vegan' }, field: 'diet' },
  ])('$because', async ({ facts, field }) => {
    const before = await countEaters();
    const answer = await corran.caller.post(eatersOf(corran), { name: 'Ida', birthOn: '2019', ...facts });
    expect([answer.body.code, answer.body.fields[0].field]).toEqual(['invalid-input', field]);
    expect(await countEaters()).toBe(before);
  });
});

describe('a neighbour’s eaters', () => {
  test('are neither read, nor added to, nor changed, whatever the duty', async () => {
    const eater = await anEater(corran);
    const before = await countEaters();
    const { coordinator } = storehouse;
    const path = eatersOf(corran);
    const answers = [
      await coordinator.get(path),
      await coordinator.post(path, { name: 'Spy', birthOn: '2000' }),
      await coordinator.put(`${path}/${eater.id}`, editOf(eater, { name: 'Spy' })),
      await coordinator.delete(`${path}/${eater.id}?version=1`),
    ];
    expect(answers.map(({ body }) => body.code)).toEqual(Array(4).fill('not-your-household'));
    expect(await countEaters()).toBe(before);
  });

  test('are not found under one’s own household either', async () => {
    const eater = await anEater(corran);
    const path = `${eatersOf(birchall)}/${eater.id}`;
    const answers = [
      await birchall.caller.put(path, editOf(eater, { name: 'Spy' })),
      await birchall.caller.delete(`${path}?version=1`),
    ];
    expect(answers.map(({ body }) => body.code)).toEqual(['thing-not-found', 'thing-not-found']);
  });
});

test('a list of eaters comes page by page, and as CSV', async () => {
  const dell = await aHousehold(app, storehouse, 'Dell');
  for (const name of ['Dora', 'Dirk', '=1+1'])
    await anEater(dell, { name, excludedAllergens: ['milk', 'soy'] });
  const first = (await dell.caller.get(`${eatersOf(dell)}?limit=2`)).body;
  const second = (await dell.caller.get(`${eatersOf(dell)}?limit=2&after=${first.next}`)).body;
  const names = [...first.eaters, ...second.eaters].map(({ name }) => name);
  expect([names, second.next]).toEqual([['Dora', 'Dirk', '=1+1'], null]);
  const csv = (await dell.caller.get(`${eatersOf(dell)}?format=csv`)).body.split('\r\n');
  expect(csv[1]).toContain('milk soy');
  expect(csv[3]).toContain("'=1+1"); // no spreadsheet takes a name for a formula
});

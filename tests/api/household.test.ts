import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let corran: TestHousehold;
let other: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall', { duties: ['packing_lead'] });
  corran = await aHousehold(app, storehouse, 'Corran');
  other = await anotherStorehouse(app);
});
afterAll(() => app.close());

const of = (household: TestHousehold, rest = '') =>
  `${storehouse.path}/households/${household.householdId}${rest}`;
const NOWHERE = '01890000-0000-7000-8000-000000000000';

describe('everyone sees', () => {
  test('the households in the order of their seats, page by page', async () => {
    const path = `${storehouse.path}/households`;
    const first = (await corran.caller.get(`${path}?limit=2`)).body;
    const second = (await corran.caller.get(`${path}?limit=2&after=${first.next}`)).body;
    const rows = [...first.households, ...second.households];
    expect(rows.map(({ seat, name }) => [seat, name])).toEqual([
      [1, 'Ashdown'],
      [2, 'Birchall'],
      [3, 'Corran'],
    ]);
    expect(second.next).toBeNull();
    const csv = (await corran.caller.get(`${path}?format=csv`)).body;
    expect(csv.split('\r\n')[0]).toBe('id,seat,name,joinedOn,leftOn,version');
  });

  test('the persons by name, with household and duties, and nothing else of them', async () => {
    const path = `${storehouse.path}/persons`;
    const { persons } = (await corran.caller.get(path)).body;
    expect(persons.map((row: { name: string; duties: string[] }) => [row.name, row.duties])).toEqual([
      ['Ada Ashdown', ['coordinator']],
      ['Birchall Person', ['packing_lead']],
      ['Corran Person', []],
    ]);
    expect(Object.keys(persons[0])).toEqual([
      'id',
      'name',
      'householdId',
      'householdName',
      'duties',
      'joinedOn',
    ]);
    const rest = (await corran.caller.get(`${path}?limit=1&after=${persons[0].id}`)).body;
    expect([rest.persons[0].name, rest.next]).toEqual(['Birchall Person', persons[1].id]);
  });

  test('no household of another storehouse', async () => {
    const answer = await other.coordinator.get(`${other.path}/households/${birchall.householdId}`);
    expect([answer.status, answer.body.code]).toEqual([404, 'thing-not-found']);
    const through = await other.coordinator.get(`${storehouse.path}/households`);
    expect([through.status, through.body.code]).toEqual([404, 'storehouse-not-found']);
  });
});

describe('a name', () => {
  test('is changed by the household itself and by the coordinator, each from the version they read', async () => {
    const dell = await aHousehold(app, storehouse, 'Dell');
    const own = await dell.caller.put(of(dell), { version: 1, name: 'Dell and Dunn' });
    expect(own.body).toMatchObject({ name: 'Dell and Dunn', version: 2 });
    const stale = await storehouse.coordinator.put(of(dell), { version: 1, name: 'Dunn' });
    expect(stale.body).toMatchObject({ code: 'stale-version', newer: { name: 'Dell and Dunn', version: 2 } });
    const second = await storehouse.coordinator.put(of(dell), { version: 2, name: 'Dunn' });
    expect(second.body).toMatchObject({ name: 'Dunn', version: 3 });
  });

  test('is not changed by a neighbour, whatever their duty', async () => {
    const answer = await birchall.caller.put(of(corran), { version: 1, name: 'Nobody' });
    expect([answer.status, answer.body.code]).toEqual([403, 'not-your-household']);
  });

  test.for([
    { name: 'Birchall', code: 'already-there' },
    { name: 'Seat 3', code: 'invalid-input' },
    { name: '   ', code: 'invalid-input' },
    { name: 'x'.repeat(121), code: 'invalid-input' },
  ])('can not be "$name"', async ({ name, code }) => {
    const answer = await corran.caller.put(of(corran), { version: 1, name });
    expect([answer.body.code, answer.body.fields[0].field]).toEqual([code, 'name']);
    expect((await corran.caller.get(of(corran))).body).toMatchObject({ name: 'Corran', version: 1 });
  });

  test('of two edits of one version, one is taken', async () => {
    const elder = await aHousehold(app, storehouse, 'Elder');
    const answers = await Promise.all([
      elder.caller.put(of(elder), { version: 1, name: 'Elder North' }),
      storehouse.coordinator.put(of(elder), { version: 1, name: 'Elder South' }),
    ]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([200, 409]);
    expect((await elder.caller.get(of(elder))).body.version).toBe(2);
  });

  test('can not be changed where there is no household', async () => {
    const path = `${storehouse.path}/households/${NOWHERE}`;
    const answer = await storehouse.coordinator.put(path, { version: 1, name: 'Nobody' });
    expect(answer.body.code).toBe('thing-not-found');
  });
});

describe('a household on paper', () => {
  test('is entered by the coordinator with a person who has no login', async () => {
    const made = await storehouse.coordinator.post(`${storehouse.path}/households`, {
      name: 'Fenn',
      personName: 'Florence Fenn',
    });
    expect([made.status, made.body]).toMatchObject([201, { name: 'Fenn', seat: expect.any(Number) }]);
    const [person] =
      await app.admin`select name, login_id from book.person where person_id = ${made.body.personId}`;
    expect(person).toEqual({ name: 'Florence Fenn', login_id: null });
  });

  test('is entered by nobody else', async () => {
    const answer = await birchall.caller.post(`${storehouse.path}/households`, {
      name: 'Garth',
      personName: 'G',
    });
    expect(answer.body.code).toBe('duty-missing');
  });
});

describe('a plan', () => {
  const plan = {
    needBasis: 'energy',
    targetDays: 180,
    targetGroups: ['grains', 'legumes', 'dried-milk'],
    addYear: true,
    guidelines: [{ foodGroup: 'grains', gramsPerAdultYear: 136_078 }],
  };

  test('begins as the defaults, and is replaced whole', async () => {
    expect((await corran.caller.get(of(corran, '/plan'))).body).toEqual({
      needBasis: 'guideline',
      targetDays: 365,
      targetGroups: ['grains', 'legumes'],
      addYear: false,
      guidelines: [],
      version: 0,
    });
    const first = await corran.caller.put(of(corran, '/plan'), { ...plan, version: 0 });
    expect(first.body).toEqual({ ...plan, version: 1 });
    const second = await corran.caller.put(of(corran, '/plan'), { ...plan, guidelines: [], version: 1 });
    expect(second.body).toEqual({ ...plan, guidelines: [], version: 2 });
  });

  test('that somebody changed meanwhile is refused with the newer one', async () => {
    const hale = await aHousehold(app, storehouse, 'Hale');
    await hale.caller.put(of(hale, '/plan'), { ...plan, version: 0 });
    for (const version of [0, 2]) {
      const stale = await hale.caller.put(of(hale, '/plan'), { ...plan, targetDays: 90, version });
      expect(stale.body).toMatchObject({ code: 'stale-version', newer: { ...plan, version: 1 } });
    }
  });

  test.for([
    { because: 'a group of no ration', change: { targetGroups: ['other'] }, field: 'targetGroups.0' },
    { because: 'no group at all', change: { targetGroups: [] }, field: 'targetGroups' },
    { because: 'one group twice', change: { targetGroups: ['salt', 'salt'] }, field: 'targetGroups' },
    { because: 'no day', change: { targetDays: 0 }, field: 'targetDays' },
    { because: 'more than ten years', change: { targetDays: 3651 }, field: 'targetDays' },
    {
      because: 'a group with two guidelines',
      change: { guidelines: [1, 2].map((grams) => ({ foodGroup: 'salt', gramsPerAdultYear: grams })) },
      field: 'guidelines',
    },
    {
      because: 'fewer grams than none',
      change: { guidelines: [{ foodGroup: 'salt', gramsPerAdultYear: -1 }] },
      field: 'guidelines.0.gramsPerAdultYear',
    },
  ])('with $because is refused', async ({ change, field }) => {
    const before = (await birchall.caller.get(of(birchall, '/plan'))).body;
    const answer = await birchall.caller.put(of(birchall, '/plan'), { ...plan, ...change, version: 0 });
    expect([answer.body.code, answer.body.fields[0].field]).toEqual(['invalid-input', field]);
    expect((await birchall.caller.get(of(birchall, '/plan'))).body).toEqual(before);
  });

  test('is its household’s own, whatever the duty', async () => {
    const answers = [
      await storehouse.coordinator.get(of(corran, '/plan')),
      await storehouse.coordinator.put(of(corran, '/plan'), { ...plan, version: 1 }),
    ];
    expect(answers.map(({ body }) => body.code)).toEqual(['not-your-household', 'not-your-household']);
  });
});

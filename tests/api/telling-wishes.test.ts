import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold, aPersonOf, type TestHousehold } from '../support/household.ts';
import { refusalOf, refused } from '../support/landing-books.ts';
import { databaseRefusal } from '../support/refusal.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let dell: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  dell = await aHousehold(app, storehouse, 'Dell');
});
afterAll(() => app.close());

const path = () => `${storehouse.path}/telling-wishes`;
const wish = {
  ...{ version: 0, language: 'es', timeZone: 'Europe/Berlin', fromHour: 7, toHour: 21, digestHour: 18 },
  ...{ isEmailOn: true, stoppedKinds: ['notice', 'balance-due'] },
};
const offOf = (body: { kinds: { kind: string; isOn: boolean }[] }) =>
  body.kinds.filter(({ isOn }) => !isOn).map(({ kind }) => kind);

test('until somebody says otherwise, they are told of everything in the day, as the storehouse speaks', async () => {
  const body = bodyOf(await dell.caller.get(path()));
  expect(body).toMatchObject({
    ...{ version: 0, language: 'en', timeZone: 'America/Chicago', fromHour: 8, toHour: 20 },
    ...{ digestHour: null, isEmailOn: true },
  });
  expect(offOf(body)).toEqual([]);
});

test('each person has wishes of their own, and an edit of an older version is refused with the newer', async () => {
  const other = await aPersonOf(app, storehouse, dell, 'Dora Dell');
  const saved = bodyOf(await dell.caller.put(path(), wish));
  expect(saved).toMatchObject({ version: 1, language: 'es', timeZone: 'Europe/Berlin', digestHour: 18 });
  expect(offOf(saved)).toEqual(['balance-due', 'notice']);
  expect(bodyOf(await dell.caller.get(path()))).toEqual(saved);
  expect(bodyOf(await other.caller.get(path())).version).toBe(0);
  const stale = await dell.caller.put(path(), wish);
  expect([stale.status, stale.body.code, stale.body.newer.version]).toEqual([409, 'stale-version', 1]);
  expect(bodyOf(await dell.caller.put(path(), { ...wish, version: 1, stoppedKinds: [] })).version).toBe(2);
});

test.for([
  [{ fromHour: 8, toHour: 8 }, 'toHour', 'hours that never come'],
  [{ digestHour: 6 }, 'digestHour', 'a daily letter outside the hours'],
  [{ timeZone: 'Mars/Olympus' }, 'timeZone', 'a zone that does not exist'],
  [{ timeZone: '+02:00' }, 'timeZone', 'an offset, which knows no summer time'],
  [{ toHour: 25 }, 'toHour', 'an hour that no clock shows'],
  [{ stoppedKinds: ['safety'] }, 'stoppedKinds', 'stopping what is about safety'],
  [{ stoppedKinds: ['weather'] }, 'stoppedKinds.0', 'a kind that does not exist'],
] as const)('%o is refused at %s: %s', async ([change, field]) => {
  const { version } = bodyOf(await dell.caller.get(path()));
  const send = () => dell.caller.put(path(), { ...wish, version, ...change });
  expect(await refusalOf(app, send)).toEqual(refused(400, 'invalid-input', field));
});

test('the database holds hours that come, whatever the code does', async () => {
  const insert = (from: number, to: number, digest: number | null) =>
    databaseRefusal(
      app.admin.begin(async (sql) => {
        await sql`delete from book.telling_wish`;
        await sql`insert into book.telling_wish values (${storehouse.storehouseId}, ${dell.personId}, 'en', 'UTC',
          ${from}, ${to}, ${digest}, true, '{}')`;
        await sql`rollback`;
      }),
    );
  expect(await insert(8, 8, null)).toMatchObject({ constraint: 'telling_wish_hours_come' });
  expect(await insert(8, 20, 20)).toMatchObject({ constraint: 'telling_wish_digest_comes' });
  expect(await insert(20, 6, 7)).toMatchObject({ constraint: 'telling_wish_digest_comes' });
  expect(await insert(20, 6, 5)).toEqual({});
});

test('who leaves takes their wishes along', async () => {
  const gone = await aHousehold(app, storehouse, 'Garth');
  bodyOf(await gone.caller.put(path(), wish));
  const leaving = `${storehouse.path}/households/${gone.householdId}/leaving`;
  bodyOf(await gone.caller.post(leaving, { version: 1 }));
  expect(await app.admin`select from book.telling_wish where person_id = ${gone.personId}`).toHaveLength(0);
});

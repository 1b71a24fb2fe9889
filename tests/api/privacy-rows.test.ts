import type { Sql, TransactionSql } from 'postgres';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let other: TestStorehouse;
let birchall: TestHousehold;
let corran: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  other = await anotherStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  corran = await aHousehold(app, storehouse, 'Corran');
  for (const { caller, householdId } of [birchall, corran]) {
    const path = `${storehouse.path}/households/${householdId}`;
    await caller.post(`${path}/eaters`, { name: 'Ida', birthOn: '2019' });
    await caller.put(`${path}/contact`, { phone: '1', address: '', shownToMembers: false, version: 0 });
    await caller.put(`${path}/plan`, {
      needBasis: 'energy',
      targetDays: 90,
      targetGroups: ['grains'],
      addYear: false,
      guidelines: [{ foodGroup: 'grains', gramsPerAdultYear: 1 }],
      version: 0,
    });
  }
});
afterAll(() => app.close());

/** Statements as the app's own role, with the settings that a transaction of the app carries. */
function asApp<Result>(
  settings: { storehouse?: string; login?: string; household?: string; task?: string },
  work: (sql: TransactionSql) => Promise<Result>,
) {
  return app.sql.begin(async (sql) => {
    for (const [name, value] of Object.entries(settings))
      await sql`select set_config(${`app.${name}`}, ${value}, true)`;
    return work(sql);
  });
}

const PRIVATE = ['eater', 'household_plan', 'household_guideline', 'household_contact'] as const;
type PrivateTable = (typeof PRIVATE)[number];

const householdsIn = async (sql: Sql | TransactionSql, table: PrivateTable) =>
  (
    await sql<{ household_id: string }[]>`select household_id from book.${sql(table)} order by household_id`
  ).map((row) => row.household_id);
const both = () => [birchall.householdId, corran.householdId].toSorted();

describe.for(PRIVATE)('%s (ledger-notes 6.19)', (table) => {
  test('shows a household its own rows and none of a neighbour’s', async () => {
    const { storehouseId } = storehouse;
    const seen = await asApp({ storehouse: storehouseId, household: birchall.householdId }, (sql) =>
      householdsIn(sql, table),
    );
    expect(seen).toEqual([birchall.householdId]);
  });

  test('shows nothing to somebody who acts for no household', async () => {
    const seen = await asApp({ storehouse: storehouse.storehouseId }, (sql) => householdsIn(sql, table));
    expect(seen).toEqual([]);
  });

  test('lets a household neither write nor delete a neighbour’s rows', async () => {
    const settings = { storehouse: storehouse.storehouseId, household: birchall.householdId };
    const gone = await asApp(settings, async (sql) => {
      const rows =
        await sql`delete from book.${sql(table)} where household_id = ${corran.householdId} returning 1`;
      return rows.length;
    });
    expect(gone).toBe(0);
    const moved = asApp(
      settings,
      (sql) => sql`update book.${sql(table)} set household_id = ${corran.householdId}`,
    );
    await expect(moved).rejects.toThrow('row-level security');
    expect(await householdsIn(app.admin, table)).toEqual(both());
  });

  test('shows nothing of another storehouse, even for a task that opens it', async () => {
    const settings = { storehouse: other.storehouseId, household: birchall.householdId, task: 'leaving' };
    expect(await asApp(settings, (sql) => householdsIn(sql, table))).toEqual([]);
  });
});

describe('a task opens what it needs and no more', () => {
  const OPENS: Record<PrivateTable, readonly string[]> = {
    eater: ['coverage-totals', 'need-first', 'leaving'],
    household_plan: ['coverage-totals', 'need-first', 'leaving'],
    household_guideline: ['coverage-totals', 'need-first', 'leaving'],
    household_contact: ['contact', 'leaving', 'take-along'],
  };
  const TASKS = [
    'fill',
    'split',
    'review',
    'need-first',
    'coverage-totals',
    'contact',
    'leaving',
    'take-along',
    'x',
  ];
  test.for(PRIVATE.flatMap((table) => TASKS.map((task) => ({ table, task }))))(
    '$task: $table',
    async ({ table, task }) => {
      const settings = { storehouse: storehouse.storehouseId, task };
      const seen = await asApp(settings, (sql) => householdsIn(sql, table));
      expect(seen).toEqual(OPENS[table].includes(task) ? both() : []);
    },
  );
});

describe('an unset storehouse sees no rows (ledger-notes 2a)', () => {
  test.for([...PRIVATE, 'household', 'person', 'invitation', 'helper_grant', 'private_read', 'duty_grant'])(
    '%s',
    async (table) => {
      const bare = await app.sql`select 1 from book.${app.sql(table)}`;
      // A connection that has carried a transaction keeps an empty text instead of nothing at all.
      const used = await asApp(
        { storehouse: '', login: '', household: '' },
        (sql) => sql`select 1 from book.${sql(table)}`,
      );
      expect([bare.length, used.length]).toEqual([0, 0]);
    },
  );
});

describe('my storehouses (ledger-notes 6.18)', () => {
  const names = (sql: TransactionSql) =>
    sql<{ name: string }[]>`select name from book.storehouse order by name`.then((rows) =>
      rows.map((row) => row.name),
    );
  const loginOf = async (personId: string) =>
    String((await app.admin`select login_id from book.person where person_id = ${personId}`)[0]?.login_id);

  test('are those of one’s login, without any storehouse set', async () => {
    const login = await loginOf(birchall.personId);
    expect(await asApp({ login }, names)).toEqual(['Alder Row Storehouse']);
    const persons = await asApp({ login }, (sql) => sql`select login_id from book.person`);
    expect(persons.map((row) => row.login_id)).toEqual([login]);
  });

  test('are none for a login that belongs nowhere, and for nobody', async () => {
    expect(await asApp({ login: '01890000-0000-7000-8000-000000000000' }, names)).toEqual([]);
    expect(await asApp({ login: '' }, names)).toEqual([]);
  });

  test('show no more once a storehouse is set: its own row alone', async () => {
    const login = await loginOf(birchall.personId);
    expect(await asApp({ login, storehouse: other.storehouseId }, names)).toEqual(['Bell Lane Storehouse']);
    const persons = await asApp(
      { login, storehouse: other.storehouseId },
      (sql) => sql`select name from book.person`,
    );
    expect(persons.map((row) => row.name)).toEqual(['Bea Bell']);
  });
});

test('logins and sessions are out of the app’s reach but for the functions of the door (ledger-notes 6.18)', async () => {
  for (const table of ['login', 'session', 'attempt'])
    await expect(app.sql`select 1 from door.${app.sql(table)}`).rejects.toThrow('permission denied');
});

test('nothing new is tied to a household that has left, also when it leaves in that very moment', async () => {
  const settings = { storehouse: storehouse.storehouseId, household: corran.householdId };
  const add = () =>
    asApp(
      settings,
      (sql) => sql`insert into book.eater (storehouse_id, household_id, name, birth_on)
      values (${storehouse.storehouseId}, ${corran.householdId}, 'Late', '2020')`,
    );
  let racing: Promise<unknown> = Promise.resolve();
  await app.admin.begin(async (sql) => {
    await sql`select from book.household where household_id = ${corran.householdId} for update`;
    racing = add().catch((error: Error) => error.message);
    await sql`select pg_sleep(0.2)`;
    await sql`update book.household set left_on = '2026-09-01' where household_id = ${corran.householdId}`;
  });
  expect(await racing).toBe('the household has left');
  await expect(add()).rejects.toThrow('the household has left');
});

import type { Sql } from 'postgres';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { fingerprintOf } from '../support/fingerprint.ts';
import { aStorehouse } from '../support/storehouse.ts';

let app: TestApp;
beforeAll(async () => {
  app = await openTestApp();
  await aStorehouse(app);
});
afterAll(() => app.close());

test('a fingerprint is the same while nothing is written', async () => {
  const before = await fingerprintOf(app);
  for (let time = 0; time < 8; time += 1) expect(await fingerprintOf(app)).toEqual(before);
});

const WRITES: Record<string, (sql: Sql) => PromiseLike<unknown>> = {
  'a row that is changed': (sql) => sql`update book.household set name = name || '.'`,
  'a row that is written anew as it was': (sql) => sql`update book.household set name = name`,
  'rows that go': (sql) => sql`delete from book.duty_grant`,
  'a table that is new': (sql) => sql`create table book.another as select 1 as one`,
};

test.for(Object.keys(WRITES))('it tells a write to any table: %s', async (what) => {
  const before = await fingerprintOf(app);
  await WRITES[what]?.(app.admin);
  expect((await fingerprintOf(app)).tables).not.toBe(before.tables);
});

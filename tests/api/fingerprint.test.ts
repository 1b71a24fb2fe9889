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

test.for([
  `update book.household set name = name || '.'`,
  'update book.household set name = name',
  'delete from book.duty_grant',
  'create table book.another (one integer); insert into book.another values (1)',
])('it tells a write to any table, be it of what stood there before: %s', async (statement) => {
  const before = await fingerprintOf(app);
  await app.admin.unsafe(statement);
  expect((await fingerprintOf(app)).tables).not.toBe(before.tables);
});

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
  [1, 'a row changed'],
  [2, 'a row written again as it was'],
  [3, 'a row gone'],
  [4, 'a table more'],
] as const)('it tells a write to any table, be it of what stood there before: %i, %s', async ([which]) => {
  const before = await fingerprintOf(app);
  const { admin } = app;
  if (which === 1) await admin`update book.household set name = name || '.'`;
  if (which === 2) await admin`update book.household set name = name`;
  if (which === 3) await admin`delete from book.duty_grant`;
  if (which === 4) await admin`create table book.another as select 1 as one`;
  expect((await fingerprintOf(app)).tables).not.toBe(before.tables);
});

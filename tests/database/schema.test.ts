import { readFileSync } from 'node:fs';
import { printSchema } from '@sheafbook/db';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestDatabase, type TestDatabase } from '../support/database.ts';

let book: TestDatabase;
beforeAll(async () => {
  book = await openTestDatabase();
});
afterAll(() => book.close());

test('db/schema.sql says what a freshly migrated database holds (else: npm run schema)', async () => {
  const golden = readFileSync(new URL('../../db/schema.sql', import.meta.url), 'utf8');
  expect(await printSchema(book.admin)).toBe(golden);
});

test('the printed schema notices a right, a policy and an owner that nobody meant to give', async () => {
  const before = await printSchema(book.admin);
  await book.admin`create table book.diary (storehouse_id uuid, note text default 'none')`;
  await book.admin`grant update (note) on book.diary to sheafbook_app`;
  await book.admin`create policy all_of_it on book.diary using (true)`;
  await book.admin`create view book.notes with (security_invoker = true) as select note from book.diary`;
  const after = await printSchema(book.admin);
  const blocksBefore = new Set(before.split('\n\n'));
  const [me] = await book.admin`select current_user as name`;
  const added = after.split('\n\n').filter((block) => !blocksBefore.has(block));
  expect(added.flatMap((block) => block.split('\n'))).toEqual([
    `table book.diary no row level security owner ${me?.name}`,
    '  storehouse_id uuid',
    "  note text default 'none'::text",
    '  policy all_of_it for all to public using (true)',
    '  grant update (note) to sheafbook_app',
    `view book.notes with (security_invoker=true) owner ${me?.name}`,
    '  note text',
    '  as',
    ' SELECT note',
    '   FROM book.diary;',
  ]);
});

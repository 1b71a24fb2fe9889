import type { Sql } from 'postgres';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestDatabase, type TestDatabase } from '../../support/database.ts';

/** Tables of the book that are no tenant's. None so far: reference data lives in packages and is adopted as rows. */
const REFERENCE_TABLES: readonly string[] = [];

let book: TestDatabase;
beforeAll(async () => {
  book = await openTestDatabase();
});
afterAll(() => book.close());

type Named = { name: string };

const keysWithoutStorehouse = (sql: Sql) => sql<Named[]>`
  select c.conname as name from pg_constraint c join pg_class t on t.oid = c.conrelid
    join pg_namespace n on n.oid = t.relnamespace
  where n.nspname = 'book' and c.contype in ('p', 'u', 'x', 'f') and t.relname <> all (${REFERENCE_TABLES}::text[])
    and not exists (select from pg_attribute a
      where a.attrelid = t.oid and a.attnum = any (c.conkey) and a.attname = 'storehouse_id')
  union all
  select i.relname from pg_index x join pg_class i on i.oid = x.indexrelid join pg_class t on t.oid = x.indrelid
    join pg_namespace n on n.oid = t.relnamespace
  where n.nspname = 'book' and x.indisunique and t.relname <> all (${REFERENCE_TABLES}::text[])
    and not exists (select from pg_attribute a
      where a.attrelid = t.oid and a.attnum = any (x.indkey::int2[]) and a.attname = 'storehouse_id')
  order by 1`;

const unboundTables = (sql: Sql) => sql<Named[]>`
  select t.relname as name from pg_class t join pg_namespace n on n.oid = t.relnamespace
  where n.nspname = 'book' and t.relkind in ('r', 'p') and t.relname <> all (${REFERENCE_TABLES}::text[])
    and (not t.relrowsecurity or t.relforcerowsecurity or not exists (
      select from pg_policies p where p.schemaname = 'book' and p.tablename = t.relname
        and p.policyname = 'own_storehouse' and p.permissive = 'PERMISSIVE' and p.cmd = 'ALL'
        and p.qual like '%current_storehouse()%' and p.with_check like '%current_storehouse()%'))
  order by 1`;

test('every key and reference of a tenant table includes its storehouse', async () => {
  const [{ count } = { count: 0 }] = await book.admin<{ count: number }[]>`
    select count(*)::int as count from pg_tables where schemaname = 'book'`;
  expect(count).toBeGreaterThan(50);
  expect([...(await keysWithoutStorehouse(book.admin))]).toEqual([]);
});

test('every primary key begins with the storehouse', async () => {
  const rows = await book.admin<Named[]>`
    select c.conname as name from pg_constraint c join pg_class t on t.oid = c.conrelid
      join pg_namespace n on n.oid = t.relnamespace
      join pg_attribute a on a.attrelid = t.oid and a.attnum = c.conkey[1]
    where n.nspname = 'book' and c.contype = 'p' and a.attname <> 'storehouse_id'`;
  expect([...rows]).toEqual([]);
});

test('every tenant table is bound to its storehouse by row-level security, not forced (ledger-notes 2d)', async () => {
  expect([...(await unboundTables(book.admin))]).toEqual([]);
});

test('no view looks past the policies (ledger-notes 2e)', async () => {
  const views = await book.admin<Named[]>`
    select c.relname as name from pg_class c join pg_namespace n on n.oid = c.relnamespace
    where n.nspname in ('book', 'door') and c.relkind in ('v', 'm')
      and not coalesce(c.reloptions @> array['security_invoker=true'], false)`;
  expect([...views]).toEqual([]);
});

test('functions that run with their owner’s rights have a fixed search path and are not for everybody', async () => {
  const loose = await book.admin<Named[]>`
    select p.proname as name from pg_proc p join pg_namespace n on n.oid = p.pronamespace
    where n.nspname in ('book', 'door') and p.prosecdef and (p.proconfig is null
      or not exists (select from unnest(p.proconfig) c where c like 'search_path=pg_catalog%')
      or has_function_privilege('public', p.oid, 'execute'))`;
  expect([...loose]).toEqual([]);
});

test('a table that forgets the rule is noticed', async () => {
  const wrong = book.admin.begin(async (tx) => {
    await tx`create table book.forgetful (forgetful_id uuid primary key)`;
    const sql = tx as unknown as Sql;
    const found = [await keysWithoutStorehouse(sql), await unboundTables(sql)].map((rows) =>
      rows.map((row) => row.name),
    );
    await tx`drop table book.forgetful`;
    return found;
  });
  expect(await wrong).toEqual([['forgetful_pkey', 'forgetful_pkey'], ['forgetful']]);
});

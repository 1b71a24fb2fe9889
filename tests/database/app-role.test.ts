import { checkAppRole, checkServer } from '@sheafbook/db';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestDatabase, type TestDatabase } from '../support/database.ts';

let book: TestDatabase;
beforeAll(async () => {
  book = await openTestDatabase();
});
afterAll(() => book.close());

test('the app connects as a role that row-level security binds (ledger-notes 2d)', async () => {
  await expect(checkAppRole(book.sql)).resolves.toBeUndefined();
  const [me] = await book.sql`select current_user as name`;
  expect(me).toEqual({ name: 'sheafbook_app' });
});

test('the app refuses to run as an administrator', async () => {
  await expect(checkAppRole(book.admin)).rejects.toThrow('passes row-level security');
});

test('a role of the book is neither superuser, nor exempt from policies, nor able to make roles', async () => {
  const roles =
    await book.admin`select rolname, rolsuper, rolbypassrls, rolcreaterole, rolcreatedb, rolcanlogin
    from pg_roles where rolname like 'sheafbook\\_%' order by rolname`;
  const plain = { rolsuper: false, rolbypassrls: false, rolcreaterole: false, rolcreatedb: false };
  expect([...roles]).toEqual([
    { rolname: 'sheafbook_app', ...plain, rolcanlogin: true },
    { rolname: 'sheafbook_housekeeping', ...plain, rolcanlogin: false },
    { rolname: 'sheafbook_owner', ...plain, rolcanlogin: false },
    { rolname: 'sheafbook_poster', ...plain, rolcanlogin: false },
  ]);
});

test.for(['sheafbook_owner', 'sheafbook_poster', 'sheafbook_housekeeping', 'pg_read_all_data'])(
  'the app can not become %s',
  async (role) => {
    await expect(book.sql`set role ${book.sql(role)}`).rejects.toThrow('permission denied to set role');
  },
);

test('the app makes no tables, in the open schema or for a moment', async () => {
  await expect(book.sql`create table public.leak (id int)`).rejects.toThrow(
    'permission denied for schema public',
  );
  await expect(book.sql`create temporary table leak (id int)`).rejects.toThrow('permission denied');
});

test('an acknowledged book needs a server that is new enough and speaks UTF8', async () => {
  await expect(checkServer(book.sql, { allowUnsafe: true })).resolves.toBeUndefined();
});

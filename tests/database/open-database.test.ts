import {
  administer,
  type Embedded,
  ensureDatabase,
  openDatabase,
  ROLES_BY_HAND,
  startEmbedded,
  withLogin,
} from '@sheafbook/db';
import { expect, onTestFinished, test } from 'vitest';
import { makeTemporaryFolder } from '../support/temporary-folder.ts';

const NOWHERE = '/nowhere'; // a data folder that must not be touched when DATABASE_URL is given

async function open(env: Record<string, string>, dataFolder = NOWHERE) {
  const lines: string[] = [];
  const book = await openDatabase({ env, dataFolder, log: (line) => lines.push(line) });
  onTestFinished(() => book.close());
  const who = async () => (await book.sql`select current_user as name`)[0]?.name;
  return { ...book, lines, who };
}

test('without DATABASE_URL the book lives in its own server, in the given folder, and stays there', async () => {
  const dataFolder = makeTemporaryFolder();
  const first = await open({}, dataFolder);
  expect(first.where).toBe('embedded');
  expect(first.lines[0]).toBe('migrated 0001_ground.sql');
  expect(await first.who()).toBe('sheafbook_app');
  await administer(first.adminUrl, (sql) => sql`create table public.note as select 'kept' as what`);
  await first.close();

  const second = await open({}, dataFolder);
  expect(second.lines).toEqual([]);
  const rows = await administer(second.adminUrl, (sql) => sql`select what from public.note`);
  expect([...rows]).toEqual([{ what: 'kept' }]);
});

/** A server that stands for one run by somebody else: durable, with a login that owns a database and little more. */
async function startForeignServer() {
  const server = await startEmbedded({ dataFolder: makeTemporaryFolder(), persistent: true });
  onTestFinished(() => server.stop());
  return server;
}

async function makeLogin(server: Embedded, rights: 'createrole' | 'nocreaterole') {
  const adminUrl = await ensureDatabase(server.adminUrl, 'books');
  await administer(adminUrl, async (sql) => {
    if (rights === 'createrole') await sql`create role keeper login createrole password 'barn'`;
    else await sql`create role keeper login password 'barn'`;
    await sql`alter database books owner to keeper`;
  });
  return { adminUrl, keeperUrl: withLogin(adminUrl, 'keeper', 'barn') };
}

test('a login that may create roles is enough, and processes with one DATABASE_URL agree on the password', async () => {
  const { adminUrl, keeperUrl } = await makeLogin(await startForeignServer(), 'createrole');
  const books = await Promise.all([1, 2, 3].map(() => open({ DATABASE_URL: keeperUrl })));
  expect(books.map((book) => book.where)).toEqual(['server', 'server', 'server']);
  expect(new Set(books.map((book) => book.appUrl)).size).toBe(1);
  expect(
    books.flatMap((book) => book.lines).filter((line) => line === 'migrated 0001_ground.sql'),
  ).toHaveLength(1);
  for (const book of books) {
    expect(book.appUrl).not.toContain('barn');
    expect(await book.who()).toBe('sheafbook_app');
    await expect(book.sql`select * from migration.applied`).rejects.toThrow('permission denied');
  }

  // The app itself is refused a login that row-level security does not bind.
  const mighty = open({ DATABASE_URL: keeperUrl, APP_DATABASE_URL: adminUrl });
  await expect(mighty).rejects.toThrow('must not run as postgres');
  const owning = open({ DATABASE_URL: keeperUrl, APP_DATABASE_URL: keeperUrl });
  await expect(owning).rejects.toThrow("must not run as keeper, which owns the book's tables");
});

test('a login without that right is told what an administrator runs, and that then works', async () => {
  const { adminUrl, keeperUrl } = await makeLogin(await startForeignServer(), 'nocreaterole');
  await expect(open({ DATABASE_URL: keeperUrl })).rejects.toThrow(ROLES_BY_HAND);

  const byHand = ROLES_BY_HAND.replaceAll('<the login of DATABASE_URL>', 'keeper')
    .replaceAll('<the database>', 'books')
    .replace('<a password for APP_DATABASE_URL>', 'seed');
  await administer(adminUrl, (sql) => sql.unsafe(byHand).simple());
  await expect(open({ DATABASE_URL: keeperUrl })).rejects.toThrow('give APP_DATABASE_URL');
  const APP_DATABASE_URL = withLogin(adminUrl, 'sheafbook_app', 'seed');
  const book = await open({ DATABASE_URL: keeperUrl, APP_DATABASE_URL });
  expect(await book.who()).toBe('sheafbook_app');
});

test('ledger-notes 6.22: the book is not opened on a server without fsync', async () => {
  const dataFolder = makeTemporaryFolder();
  const server = await startEmbedded({ dataFolder, persistent: false, settings: { fsync: 'off' } });
  onTestFinished(() => server.stop());
  const url = await ensureDatabase(server.adminUrl, 'books');
  await expect(open({ DATABASE_URL: url })).rejects.toThrow('fsync off');
  const schemas = await administer(
    url,
    (sql) => sql`select nspname from pg_namespace where nspname = 'book'`,
  );
  expect([...schemas]).toEqual([]);
});

import { administer, migrate } from '@sheafbook/db';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { firstLine, startChild } from '../support/child.ts';
import { makeEmptyDatabase } from '../support/empty-database.ts';
import { makeTemporaryFolder, writeFile } from '../support/temporary-folder.ts';

const BARN = 'create schema farm; create table farm.barn (bales bigint not null);';
const SILO = 'create table farm.silo (grams bigint not null);';

let url: string;
let drop: () => Promise<void>;
beforeEach(async () => {
  ({ url, drop } = await makeEmptyDatabase());
});
afterEach(() => drop());

const listTables = () =>
  administer(url, async (sql) => {
    const rows = await sql`select tablename from pg_tables where schemaname = 'farm' order by tablename`;
    return rows.map((row) => row.tablename);
  });

test('files run once, in the order of their numbers, and are recorded with their hash', async () => {
  const folder = makeTemporaryFolder({ '0002_silo.sql': SILO, '0001_barn.sql': BARN });
  expect(await migrate(url, folder)).toEqual(['0001_barn.sql', '0002_silo.sql']);
  expect(await migrate(url, folder)).toEqual([]);
  const applied = await administer(url, (sql) => sql`select number, name, sha256 from migration.applied`);
  // The hash of the text above by sha256sum.
  const barnHash = 'cfff60f7eb02cb421597fdbed254036a28f05e527db159dcb321842f1bfda59b';
  expect(applied[0]).toEqual({ number: 1, name: '0001_barn.sql', sha256: barnHash });
  expect(applied).toHaveLength(2);
});

test('a later version runs only what is new', async () => {
  const folder = makeTemporaryFolder({ '0001_barn.sql': BARN });
  await migrate(url, folder);
  writeFile(`${folder}/0002_silo.sql`, SILO);
  expect(await migrate(url, folder)).toEqual(['0002_silo.sql']);
  expect(await listTables()).toEqual(['barn', 'silo']);
});

test('the server is told of a new table that its rows are of one storehouse, and of one that it knows nothing', async () => {
  const knows = () =>
    administer(
      url,
      (sql) => sql`select tablename, n_distinct from pg_stats where schemaname = 'book'
        and attname = 'storehouse_id' order by tablename`,
    );
  const folder = makeTemporaryFolder({
    '0001_crate.sql':
      'create schema book; create table book.crate (storehouse_id integer not null, no integer);',
  });
  await migrate(url, folder);
  expect(await knows()).toEqual([{ tablename: 'crate', n_distinct: 1 }]);
  await administer(url, async (sql) => {
    await sql`insert into book.crate values (1), (1), (2), (2), (3), (3)`;
    await sql`analyze book.crate`;
  });
  expect(await knows()).toEqual([{ tablename: 'crate', n_distinct: -0.5 }]); // three of six rows
  writeFile(`${folder}/0002_sack.sql`, 'create table book.sack (storehouse_id integer not null);');
  await migrate(url, folder);
  expect(await knows()).toEqual([
    { tablename: 'crate', n_distinct: -0.5 },
    { tablename: 'sack', n_distinct: 1 },
  ]);
});

test('a migration that fails halfway leaves nothing, and the ones before it stay', async () => {
  const folder = makeTemporaryFolder({
    '0001_barn.sql': BARN,
    '0002_silo.sql': `${SILO}\ncreate index silo_by_grams on farm.silo (grams);\nselect 1 / 0;`,
  });
  await expect(migrate(url, folder)).rejects.toThrow('migration 0002_silo.sql: division by zero');
  expect(await listTables()).toEqual(['barn']);
  writeFile(`${folder}/0002_silo.sql`, SILO);
  expect(await migrate(url, folder)).toEqual(['0002_silo.sql']);
});

test('a mistake is reported with the line where it stands', async () => {
  const folder = makeTemporaryFolder({ '0001_barn.sql': `${BARN}\n\ncreate tabel farm.silo ();` });
  await expect(migrate(url, folder)).rejects.toThrow('migration 0001_barn.sql, line 3: syntax error');
});

test('an applied file that was edited is refused', async () => {
  const folder = makeTemporaryFolder({ '0001_barn.sql': BARN });
  await migrate(url, folder);
  writeFile(`${folder}/0001_barn.sql`, `${BARN} -- a harmless remark`);
  await expect(migrate(url, folder)).rejects.toThrow('0001_barn.sql was edited after it was applied');
});

test('other line ends are no edit', async () => {
  const folder = makeTemporaryFolder({ '0001_barn.sql': `${BARN}\n${SILO}\n` });
  await migrate(url, folder);
  writeFile(`${folder}/0001_barn.sql`, `${BARN}\r\n${SILO}\r\n`);
  expect(await migrate(url, folder)).toEqual([]);
});

test('an applied file that was renamed is refused', async () => {
  await migrate(url, makeTemporaryFolder({ '0001_barn.sql': BARN }));
  const folder = makeTemporaryFolder({ '0001_shed.sql': BARN });
  await expect(migrate(url, folder)).rejects.toThrow(
    '0001_shed.sql stands where the database has already applied 0001_barn.sql',
  );
});

test('a version that is older than the data is refused', async () => {
  await migrate(url, makeTemporaryFolder({ '0001_barn.sql': BARN, '0002_silo.sql': SILO }));
  const folder = makeTemporaryFolder({ '0001_barn.sql': BARN });
  await expect(migrate(url, folder)).rejects.toThrow('knows migration 0002_silo.sql, this version does not');
});

test('a file slipped in below an applied number is refused, and not run', async () => {
  await migrate(url, makeTemporaryFolder({ '0001_barn.sql': BARN, '0002_silo.sql': SILO }));
  const folder = makeTemporaryFolder({
    '0001_barn.sql': BARN,
    '0002_coop.sql': 'create table farm.coop (hens int);',
    '0003_silo.sql': SILO,
  });
  await expect(migrate(url, folder)).rejects.toThrow('0002_coop.sql stands where');
  expect(await listTables()).toEqual(['barn', 'silo']);
});

test.for([
  {
    files: { '0001_barn.sql': BARN, '0003_silo.sql': SILO },
    refusal: 'migration 2 is missing before 0003_silo.sql',
  },
  { files: { '0002_silo.sql': SILO }, refusal: 'migration 1 is missing before 0002_silo.sql' },
  { files: { '0001_barn.sql': BARN, '0001_silo.sql': SILO }, refusal: 'bear the same number' },
  { files: { '1_barn.sql': BARN }, refusal: 'must be named like' },
  { files: { '0001_barn.sql': `${BARN}\nCommit;` }, refusal: 'must not end the transaction' },
])('a folder is refused: $refusal', async ({ files, refusal }) => {
  await expect(migrate(url, makeTemporaryFolder(files))).rejects.toThrow(refusal);
  expect(await listTables()).toEqual([]);
});

test('two connections that start together migrate once', async () => {
  const folder = makeTemporaryFolder({
    '0001_barn.sql': `${BARN}\nselect pg_sleep(0.2);`,
    '0002_silo.sql': SILO,
  });
  const runs = await Promise.all([migrate(url, folder), migrate(url, folder), migrate(url, folder)]);
  expect(runs.flat().toSorted()).toEqual(['0001_barn.sql', '0002_silo.sql']);
});

test('two processes that start together migrate once', async () => {
  const folder = makeTemporaryFolder({
    '0001_barn.sql': `${BARN}\nselect pg_sleep(1);`,
    '0002_silo.sql': SILO,
  });
  const start = () => firstLine(startChild('tests/support/migrate-process.ts', [url, folder]));
  const runs = await Promise.all([start(), start()]);
  expect(runs.flat().toSorted()).toEqual(['0001_barn.sql', '0002_silo.sql']);
  expect(runs).toContainEqual([]);
});

test('what a migration makes belongs to the owner, who is no superuser (ledger-notes 2d)', async () => {
  await migrate(url, makeTemporaryFolder({ '0001_barn.sql': BARN }));
  const tables = await administer(
    url,
    (sql) => sql`select tablename, tableowner from pg_tables
    where schemaname in ('farm', 'migration') order by tablename`,
  );
  expect([...tables]).toEqual([
    { tablename: 'applied', tableowner: 'sheafbook_owner' },
    { tablename: 'barn', tableowner: 'sheafbook_owner' },
  ]);
});

test('a new table gives nobody anything until a migration says so (ledger-notes 2f)', async () => {
  await migrate(url, makeTemporaryFolder({ '0001_barn.sql': BARN }));
  const [rights] = await administer(
    url,
    (sql) => sql`select has_table_privilege('sheafbook_app', 'farm.barn',
    'select, insert, update, delete, truncate, references, trigger') as any`,
  );
  expect(rights).toEqual({ any: false });
});

test('a function can be handed to the poster, who still may make nothing afterwards', async () => {
  const folder = makeTemporaryFolder({
    '0001_barn.sql': BARN,
    '0002_count.sql': `create function farm.count_bales() returns bigint language sql security definer
      return (select sum(bales) from farm.barn);
      alter function farm.count_bales owner to sheafbook_poster;`,
  });
  await migrate(url, folder);
  const [state] = await administer(
    url,
    (sql) => sql`select proowner::regrole::text as owner,
    has_schema_privilege('sheafbook_poster', 'farm', 'create') as makes
    from pg_proc where proname = 'count_bales'`,
  );
  expect(state).toEqual({ owner: 'sheafbook_poster', makes: false });
});

test('btree_gist, for bookings that exclude each other, needs no superuser', async () => {
  const folder = makeTemporaryFolder({ '0001_ranges.sql': 'create extension btree_gist;' });
  expect(await migrate(url, folder)).toEqual(['0001_ranges.sql']);
});

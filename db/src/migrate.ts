import postgres, { type Sql, type TransactionSql } from 'postgres';
import { administer } from './administer.ts';
import { MIGRATIONS_FOLDER, type MigrationFile, readMigrationFiles } from './migration-files.ts';
import { prepareQueue } from './queue.ts';
import { refuseUnless, StartRefusal } from './refusal.ts';
import { ensureRoles } from './roles.ts';

export type MigrateOptions = { log?: (line: string) => void };

/** Any number, as long as every process of every version takes the same. */
const LOCK_KEY = '7303014219185';

/**
 * Brings a database up to the newest migration; returns the names of the files that it ran, oldest first.
 * `adminUrl` logs in as a superuser, or as one who may create roles and objects in this database. Each file runs as
 * `sheafbook_owner` in a transaction of its own, which also records its hash: a file that fails leaves nothing.
 * A lock of the session lets processes that start together take turns, so a pooler in transaction mode won't do.
 * Tables that the server has never looked at are described to it, for the first plans that it makes.
 * The queue of the background work comes last; its library brings its own tables.
 * Refuses when an applied file was edited, renamed or removed, and when a new file's number is below an applied one.
 */
export async function migrate(adminUrl: string, folder = MIGRATIONS_FOLDER, options: MigrateOptions = {}) {
  const files = readMigrationFiles(folder);
  return administer(adminUrl, async (sql) => {
    await sql`select pg_advisory_lock(${LOCK_KEY})`;
    await ensureRoles(sql);
    await ensureRecord(sql);
    const pending = choosePending(files, await listApplied(sql));
    for (const file of pending) {
      await apply(sql, file);
      options.log?.(`migrated ${file.name}`);
    }
    if (pending.length > 0) await tellWhoseRowsTheyAre(sql);
    await prepareQueue(adminUrl, sql);
    return pending.map((file) => file.name);
  });
}

type Applied = { number: number; name: string; sha256: string };

async function ensureRecord(sql: Sql): Promise<void> {
  await sql.begin(async (tx) => {
    await tx`set local role sheafbook_owner`;
    const [found] = await tx`select where to_regclass('migration.applied') is not null`;
    if (found) return;
    await tx`create schema migration`;
    await tx`create table migration.applied (
      number integer primary key,
      name text not null,
      sha256 text not null,
      applied_at timestamptz not null default now(),
      constraint applied_once unique (name)
    )`;
  });
}

function listApplied(sql: Sql): Promise<Applied[]> {
  return sql<Applied[]>`select number, name, sha256 from migration.applied order by number`;
}

/** The files have no gaps, so what is applied must be exactly the first of them. */
function choosePending(files: readonly MigrationFile[], applied: readonly Applied[]): MigrationFile[] {
  for (const [position, row] of applied.entries()) {
    const file = files[position];
    refuseUnless(
      file,
      `the database knows migration ${row.name}, this version does not: it is older than the data`,
    );
    refuseUnless(
      file.number === row.number && file.name === row.name,
      `migration ${file.name} stands where the database has already applied ${row.name}`,
    );
    refuseUnless(file.sha256 === row.sha256, `migration ${file.name} was edited after it was applied`);
  }
  return files.slice(applied.length);
}

async function apply(sql: Sql, file: MigrationFile): Promise<void> {
  await sql.begin(async (tx) => {
    await tx`set local role sheafbook_owner`;
    await lendCreate(tx);
    await tx
      .unsafe(file.text)
      .simple()
      .catch((error) => fail(file, error)); // a file of ours, never input
    await tx`set local role sheafbook_owner`; // whatever role the file may have taken
    await takeCreateBack(tx);
    await tx`insert into migration.applied (number, name, sha256)
      values (${file.number}, ${file.name}, ${file.sha256})`;
  });
}

/**
 * What the server finds out by itself once it has looked at a table, a minute or more after there is something in it: that all
 * rows are of one storehouse, so that its id picks nothing out. Until then it would take whatever it joins first for a single
 * row, and run through whole tables once a row: to bring over an older book took its processor ten times as long.
 */
async function tellWhoseRowsTheyAre(sql: Sql): Promise<void> {
  await sql.begin(async (tx) => {
    await tx`set local role sheafbook_owner`;
    await tx`select pg_restore_attribute_stats('schemaname', 'book', 'relname', c.relname::text,
        'attname', 'storehouse_id', 'inherited', false, 'null_frac', 0::real, 'avg_width', 16, 'n_distinct', 1::real)
      from pg_class c join pg_attribute a on a.attrelid = c.oid and a.attname = 'storehouse_id'
      where c.relnamespace = to_regnamespace('book') and c.relkind = 'r' and c.reltuples < 0`; // never looked at
  });
}

/**
 * PostgreSQL hands a function only to a role that may create in its schema. The two roles that own functions may do
 * so for the length of one file: a lasting right would let a hole in one of those functions plant another.
 */
async function lendCreate(tx: TransactionSql): Promise<void> {
  await tx`do $$ declare here text; begin
    for here in select quote_ident(nspname) from pg_namespace where nspowner = 'sheafbook_owner'::regrole loop
      execute 'grant create on schema ' || here || ' to sheafbook_poster, sheafbook_housekeeping';
    end loop;
  end $$`;
}

async function takeCreateBack(tx: TransactionSql): Promise<void> {
  await tx`do $$ declare here text; begin
    for here in select quote_ident(nspname) from pg_namespace where nspowner = 'sheafbook_owner'::regrole loop
      execute 'revoke create on schema ' || here || ' from sheafbook_poster, sheafbook_housekeeping';
    end loop;
  end $$`;
}

function fail(file: MigrationFile, error: unknown): never {
  const position = error instanceof postgres.PostgresError ? Number(error.position ?? 0) : 0;
  const line = position > 0 ? `, line ${file.text.slice(0, position).split('\n').length}` : '';
  const what = error instanceof Error ? error.message : String(error);
  throw new StartRefusal(`migration ${file.name}${line}: ${what}`, { cause: error });
}

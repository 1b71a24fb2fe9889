import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { administer, migrate } from '@sheafbook/db';
import type { Sql } from 'postgres';
import { makeEmptyDatabase } from './empty-database.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

const MIGRATIONS = fileURLToPath(new URL('../../db/migrations', import.meta.url));

/**
 * A database of the days when this migration was the newest, filled with the rows of a book of today as far as its tables and
 * columns had them; whoever uses it migrates it and drops it.
 */
export async function anOlderBook(newest: string, today: Sql) {
  const older = readdirSync(MIGRATIONS).filter((name) => name <= newest);
  if (older.at(-1) !== newest) throw new Error(`there is no migration ${newest}`);
  const texts = older.map((name) => [name, readFileSync(`${MIGRATIONS}/${name}`, 'utf8')]);
  const { url, drop } = await makeEmptyDatabase();
  await migrate(url, makeTemporaryFolder(Object.fromEntries(texts)));
  return { url, drop, rows: await administer(url, (sql) => copyBook(today, sql)) };
}

type Columns = Record<string, string[]>;

const columnsOf = async (sql: Sql): Promise<Columns> => {
  const rows = await sql<{ name: string; columns: string[] }[]>`
    select c.table_name as name, array_agg(c.column_name::text order by c.ordinal_position) as columns
    from information_schema.columns c join information_schema.tables t using (table_schema, table_name)
    where c.table_schema = 'book' and t.table_type = 'BASE TABLE' and c.is_generated = 'NEVER' group by 1`;
  return Object.fromEntries(rows.map(({ name, columns }) => [name, columns]));
};

/** Every row that the older book could hold goes over as its tables had it, without triggers: they ran when it was written. */
async function copyBook(from: Sql, to: Sql): Promise<number> {
  const known = await columnsOf(from);
  const wanted = await columnsOf(to);
  await to`create function pg_temp.fill(name text, columns text[], rows jsonb) returns bigint language plpgsql as $$
    declare
      list text := (select string_agg(quote_ident(one), ', ') from unnest(columns) one);
      one jsonb;
      written bigint := 0;
    begin
      for one in select jsonb_array_elements(rows) loop
        begin
          execute format('insert into book.%1$I (%2$s) overriding system value
            select %2$s from jsonb_populate_record(null::book.%1$I, $1)', name, list) using one;
          written := written + 1;
        exception when check_violation then null; -- of a kind that came later, such as a new outside vessel
        end;
      end loop;
      return written;
    end $$`;
  return to.begin(async (tx) => {
    await tx`set local session_replication_role = replica`;
    let count = 0;
    for (const [name, columns] of Object.entries(wanted)) {
      const kept = columns.filter((column) => known[name]?.includes(column));
      const [{ rows } = { rows: [] }] = await from`
        select coalesce(jsonb_agg(t), '[]') as rows from ${from(`book.${name}`)} t`;
      const [{ written } = { written: 0 }] = await tx`
        select pg_temp.fill(${name}::text, ${kept}::text[], ${tx.json(rows)}) as written`;
      count += Number(written);
    }
    return count;
  });
}

import { assert } from '@sheafbook/units';
import type { Sql, TransactionSql } from 'postgres';
import { BOOK_SCHEMA, LEFT_BEHIND } from './format.ts';

/** A table of the book as the catalogue has it; generated columns are left out, since they follow from the others. */
export type BookTable = {
  readonly name: string;
  readonly columns: readonly string[];
  readonly key: readonly string[];
  /** Rows of photos are thousands of times as long as others. */
  readonly hasBytes: boolean;
};

/**
 * The tables of an archive, read from the catalogue so that a new one can't be forgotten, each after those that it
 * refers to. References that can be deferred don't count: they close the circles.
 */
export async function listBookTables(sql: Sql | TransactionSql): Promise<BookTable[]> {
  const tables = await sql<BookTable[]>`
    select t.relname as name,
      array(select a.attname::text from pg_attribute a where a.attrelid = t.oid and a.attnum > 0
        and not a.attisdropped and a.attgenerated = '' order by a.attnum) as columns,
      array(select a.attname::text from pg_constraint k, unnest(k.conkey) with ordinality as c (attnum, place),
        pg_attribute a where k.conrelid = t.oid and k.contype = 'p' and a.attrelid = t.oid and a.attnum = c.attnum
        order by c.place) as key,
      exists (select from pg_attribute a where a.attrelid = t.oid and a.atttypid = 'bytea'::regtype
        and not a.attisdropped) as "hasBytes"
    from pg_class t join pg_namespace n on n.oid = t.relnamespace
    where n.nspname = ${BOOK_SCHEMA} and t.relkind in ('r', 'p') order by t.relname`;
  const references = await sql<{ from: string; to: string }[]>`
    select f.relname as from, t.relname as to
    from pg_constraint c join pg_class f on f.oid = c.conrelid join pg_class t on t.oid = c.confrelid
      join pg_namespace n on n.oid = f.relnamespace
    where n.nspname = ${BOOK_SCHEMA} and c.contype = 'f' and not c.condeferrable`;
  return orderByReference(
    tables.filter(({ name }) => LEFT_BEHIND[name] === undefined),
    references,
  );
}

/** So many rows are held at once, on the way out and in. */
export const rowsAtATime = ({ hasBytes }: BookTable): number => (hasBytes ? 8 : 500);

export function orderByReference<Table extends { readonly name: string }>(
  tables: readonly Table[],
  references: readonly { readonly from: string; readonly to: string }[],
): Table[] {
  const ordered: Table[] = [];
  let waiting = [...tables];
  while (waiting.length > 0) {
    const names = new Set(waiting.map(({ name }) => name));
    const isHeldUp = ({ name }: Table) => references.some(({ from, to }) => from === name && names.has(to));
    const ready = waiting.filter((table) => !isHeldUp(table));
    assert(
      ready.length > 0,
      `these tables refer to each other in a circle that can't be deferred: ${[...names]}`,
    );
    ordered.push(...ready);
    waiting = waiting.filter(isHeldUp);
  }
  return ordered;
}

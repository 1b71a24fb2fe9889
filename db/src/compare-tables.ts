import { getTableName, is } from 'drizzle-orm';
import { getTableConfig, type PgColumn, PgTable } from 'drizzle-orm/pg-core';
import type { Sql } from 'postgres';

/**
 * Compares Drizzle's tables with the catalogue, and returns each difference as a sentence; none when they agree.
 * `tables` are a module's exports, of which all that is no table is passed over. Every table of `schemas` must be
 * described. A domain counts as the type beneath it, for that is what a client sees.
 */
export async function compareTables(
  sql: Sql,
  tables: Readonly<Record<string, unknown>>,
  schemas: readonly string[] = ['book'],
): Promise<string[]> {
  const described = Object.values(tables).filter((table) => is(table, PgTable));
  const wanted = await describeTables(sql, described);
  const found = await readCatalogue(sql, schemas);
  const missing = [...found.keys()].filter((name) => !wanted.has(name));
  return [
    ...missing.map((name) => `${name} is in the database only`),
    ...[...wanted].flatMap(([name, table]) => compareTable(name, table, found.get(name))),
  ].toSorted();
}

type Column = { type: string; isNullable: boolean; mayBeLeftOut: boolean; isGenerated: boolean };
type Table = { columns: Map<string, Column>; primaryKey: string };

async function describeTables(sql: Sql, tables: readonly PgTable[]): Promise<Map<string, Table>> {
  const canonical = await spellTypes(sql, tables);
  return new Map(
    tables.map((table) => {
      const { schema, columns, primaryKeys } = getTableConfig(table);
      const key = primaryKeys[0]?.columns ?? columns.filter((column) => column.primary);
      return [
        `${schema ?? 'public'}.${getTableName(table)}`,
        {
          columns: new Map(columns.map((column) => [column.name, describeColumn(column, canonical)])),
          primaryKey: key.map((column) => column.name).join(', '),
        },
      ];
    }),
  );
}

function describeColumn(column: PgColumn, canonical: ReadonlyMap<string, string>): Column {
  return {
    type: canonical.get(column.getSQLType()) ?? column.getSQLType(),
    isNullable: !column.notNull,
    // A default that the client fills in needs none in the database.
    mayBeLeftOut: column.hasDefault && column.defaultFn === undefined,
    isGenerated: column.generated !== undefined,
  };
}

/** Drizzle writes char(3), the catalogue character(3): the server itself knows that they are one. */
async function spellTypes(sql: Sql, tables: readonly PgTable[]): Promise<Map<string, string>> {
  const types = tables.flatMap((table) => getTableConfig(table).columns.map((column) => column.getSQLType()));
  const rows = await sql<{ type: string; spelt: string | null }[]>`
    select type, format_type(to_regtype(type), to_regtypemod(type)) as spelt
    from unnest(${[...new Set(types)]}::text[]) as type`;
  return new Map(rows.map(({ type, spelt }) => [type, spelt ?? type]));
}

type CatalogueRow = { table: string; column: string; inKey: number | null } & Column;

async function readCatalogue(sql: Sql, schemas: readonly string[]): Promise<Map<string, Table>> {
  const rows = await sql<CatalogueRow[]>`
    select n.nspname || '.' || c.relname as table, a.attname as column,
      format_type(coalesce(nullif(t.typbasetype, 0), t.oid),
        case when t.typbasetype = 0 then a.atttypmod else t.typtypmod end) as type,
      not a.attnotnull as "isNullable", a.attgenerated <> '' as "isGenerated",
      a.atthasdef or a.attidentity <> '' or not a.attnotnull as "mayBeLeftOut",
      array_position(k.conkey, a.attnum) as "inKey"
    from pg_class c join pg_namespace n on n.oid = c.relnamespace join pg_attribute a on a.attrelid = c.oid
      join pg_type t on t.oid = a.atttypid left join pg_constraint k on k.conrelid = c.oid and k.contype = 'p'
    where n.nspname in ${sql(schemas)} and c.relkind in ('r', 'p') and a.attnum > 0 and not a.attisdropped
    order by c.oid, a.attnum`;
  const names = [...new Set(rows.map((row) => row.table))];
  return new Map(names.map((name) => [name, gatherTable(rows.filter((row) => row.table === name))]));
}

function gatherTable(rows: readonly CatalogueRow[]): Table {
  const key = rows.filter((row) => row.inKey !== null).toSorted((a, b) => (a.inKey ?? 0) - (b.inKey ?? 0));
  return {
    columns: new Map(rows.map((row) => [row.column, row])),
    primaryKey: key.map((row) => row.column).join(', '),
  };
}

function compareTable(name: string, wanted: Table, found: Table | undefined): string[] {
  if (!found) return [`${name} is in Drizzle only`];
  const columns = new Set([...wanted.columns.keys(), ...found.columns.keys()]);
  const differences = [...columns].flatMap((column) =>
    compareColumn(`${name}.${column}`, wanted.columns.get(column), found.columns.get(column)),
  );
  const isSameKey = wanted.primaryKey === found.primaryKey;
  const keys = `${name} has primary key (${found.primaryKey}), Drizzle says (${wanted.primaryKey})`;
  return isSameKey ? differences : [...differences, keys];
}

function compareColumn(name: string, wanted: Column | undefined, found: Column | undefined): string[] {
  if (!wanted) return [`${name} is in the database only`];
  if (!found) return [`${name} is in Drizzle only`];
  const say = (isNullable: boolean) => (isNullable ? 'nullable' : 'not null');
  return [
    wanted.type !== found.type && `${name} is ${found.type}, Drizzle says ${wanted.type}`,
    wanted.isNullable !== found.isNullable &&
      `${name} is ${say(found.isNullable)}, Drizzle says ${say(wanted.isNullable)}`,
    wanted.isGenerated !== found.isGenerated && `${name} is generated in one of the two only`,
    wanted.mayBeLeftOut && !found.mayBeLeftOut && `${name} has no default, Drizzle says it has one`,
  ].filter((difference) => difference !== false);
}

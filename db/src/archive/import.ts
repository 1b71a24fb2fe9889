import { drizzle } from 'drizzle-orm/postgres-js';
import postgres, { type Sql, type TransactionSql } from 'postgres';
import type { Tx } from '../connect.ts';
import { refuseUnless, StartRefusal } from '../refusal.ts';
import { txOver } from '../transaction.ts';
import { type BookTable, listBookTables, rowsAtATime } from './book-tables.ts';
import { type ArchiveHead, BOOK_SCHEMA } from './format.ts';
import { openArchive, type ReadRow } from './read.ts';
import { identifiers, loadMigrations } from './sql.ts';

export type Imported = { readonly head: ArchiveHead; readonly tables: Readonly<Record<string, number>> };

/**
 * Brings a storehouse into a database that doesn't have it, with its ids, entry numbers and instants as they were, in one
 * transaction. `verify` looks at what came, before it is committed, and throws to leave the database as it was. Done as
 * the owner of the tables, since the app may write neither entries nor totals.
 */
export async function importArchive<Result>(
  admin: Sql,
  lines: AsyncIterable<string>,
  verify: (tx: Tx, head: ArchiveHead) => Promise<Result>,
): Promise<Imported & { readonly verified: Result }> {
  drizzle(admin); // takes over its date parsers, which `verify` reads with
  const { head, rows } = await openArchive(lines);
  return admin
    .begin(async (tx) => {
      await tx`set local role sheafbook_owner`;
      await refuseUnfit(tx, head);
      await tx`set constraints all deferred`;
      const tables = await bringRows(tx, head, rows);
      await tx`set constraints all immediate`;
      await refuseWrongNumbers(tx, head);
      return { head, tables, verified: await verify(txOver(tx), head) };
    })
    .catch((error: unknown) => {
      throw explain(error);
    }) as Promise<Imported & { readonly verified: Result }>;
}

async function refuseUnfit(tx: TransactionSql, head: ArchiveHead): Promise<void> {
  const here = await loadMigrations(tx);
  refuseUnless(
    here.migrationsSha256 === head.migrationsSha256,
    `this archive was taken at migration ${head.migration}, and this database is at ${here.migration}: bring both servers to the same version of Sheafbook first`,
  );
  const [found] = await tx`select from book.storehouse where storehouse_id::text = ${head.storehouse.id}`;
  refuseUnless(
    !found,
    `the storehouse ${head.storehouse.name} (${head.storehouse.id}) is in this database already`,
  );
}

/** Whoever has left is marked so last of all: nothing can be tied to a household that has left. */
const LEAVES_LAST = { table: 'household', column: 'left_on' } as const;

async function bringRows(
  tx: TransactionSql,
  head: ArchiveHead,
  rows: AsyncIterable<ReadRow>,
): Promise<Record<string, number>> {
  const tables = new Map((await listBookTables(tx)).map((table) => [table.name, table]));
  const counts: Record<string, number> = {};
  const households: string[] = [];
  let batch: ReadRow[] = [];
  const bring = async () => {
    const table = tables.get(batch[0]?.table ?? '');
    if (table) await insertRows(tx, table, batch);
    batch = [];
  };
  for await (const row of rows) {
    const table = tables.get(row.table);
    refuseStrangeRow(head, table, row);
    if ((table && batch.length >= rowsAtATime(table)) || (batch[0] && batch[0].table !== row.table))
      await bring();
    batch.push(row);
    counts[row.table] = (counts[row.table] ?? 0) + 1;
    if (row.table === LEAVES_LAST.table) households.push(row.line);
  }
  await bring();
  await tx`update book.household h set left_on = (line::jsonb -> 'row' ->> 'left_on')::date
    from unnest(${households}::text[]) as line
    where h.storehouse_id = ${head.storehouse.id} and h.household_id = (line::jsonb -> 'row' ->> 'household_id')::uuid`;
  return counts;
}

/** The owner passes the tenants' walls, so the file must not name another's storehouse anywhere. */
function refuseStrangeRow(
  head: ArchiveHead,
  table: BookTable | undefined,
  { table: name, row, lineNo }: ReadRow,
): void {
  refuseUnless(table, `line ${lineNo}: this Sheafbook keeps no table ${name}`);
  refuseUnless(row.storehouse_id === head.storehouse.id, `line ${lineNo}: this row is another storehouse's`);
  const isWhole = table.columns.every((column) => Object.hasOwn(row, column));
  const hasMore = Object.keys(row).length !== table.columns.length;
  refuseUnless(isWhole && !hasMore, `line ${lineNo}: a row of ${name} must have exactly its own columns`);
}

async function insertRows(tx: TransactionSql, table: BookTable, rows: readonly ReadRow[]): Promise<void> {
  const columns = identifiers(tx, table.columns);
  const into = tx(`${BOOK_SCHEMA}.${table.name}`);
  const held = table.name === LEAVES_LAST.table ? LEAVES_LAST.column : '';
  await tx`insert into ${into} (${columns})
    select ${columns} from unnest(${rows.map(({ line }) => line)}::text[]) as archived (archived_line),
      jsonb_populate_record(null::${into}, (archived_line::jsonb -> 'row') - ${held}::text)`;
}

/** The next entry must get the number after the last. */
async function refuseWrongNumbers(tx: TransactionSql, head: ArchiveHead): Promise<void> {
  const [book] = await tx<{ isRight: boolean }[]>`
    select b.last_entry_no = coalesce(max(e.entry_no), 0) and b.last_entry_no = count(e.entry_no) as "isRight"
    from book.book_state b left join book.entry e on e.storehouse_id = b.storehouse_id
    where b.storehouse_id = ${head.storehouse.id} group by b.last_entry_no`;
  refuseUnless(
    book?.isRight,
    'the entries of this archive are not numbered without a gap up to its last number',
  );
}

/** A row that the database itself refuses: what was wrong with it is told without the row, which may be private. */
function explain(error: unknown): unknown {
  if (!(error instanceof postgres.PostgresError) || error instanceof StartRefusal) return error;
  const isData = /^(22|23)/.test(error.code);
  if (!isData) return error;
  const where = error.constraint_name ? ` breaks ${error.constraint_name}` : " can't be read";
  return new StartRefusal(`something in this archive${where}, so nothing of it was taken (${error.code})`, {
    cause: error,
  });
}

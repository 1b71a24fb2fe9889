import { createHash } from 'node:crypto';
import type { Sql, TransactionSql } from 'postgres';
import { refuseUnless } from '../refusal.ts';
import { type BookTable, listBookTables, rowsAtATime } from './book-tables.ts';
import { ARCHIVE_FORMAT, ARCHIVE_VERSION, type ArchiveEnd, type ArchiveHead, BOOK_SCHEMA } from './format.ts';
import { identifiers, loadMigrations } from './sql.ts';

export type Written = { readonly head: ArchiveHead; readonly end: ArchiveEnd['end'] };

/**
 * Writes a whole storehouse as lines of JSON, from one snapshot, in an order that is the same each time. Done as the
 * owner of the tables, whom the policies between neighbours don't bind: whoever runs this has the database anyway, and a
 * member has no way to it. Nothing in it opens a door: no logins, no sessions, and invitations without their tokens.
 */
export function writeArchive(
  admin: Sql,
  of: { storehouseId: string; takenAt: Date },
  writeLine: (line: string) => Promise<void>,
): Promise<Written> {
  return admin.begin('isolation level repeatable read read only', async (tx) => {
    await tx`set local role sheafbook_owner`;
    await tx`set local timezone to 'UTC'`;
    const hash = createHash('sha256');
    const write = (line: string): Promise<void> => {
      hash.update(`${line}\n`);
      return writeLine(line);
    };
    const head = await makeHead(tx, of);
    await write(JSON.stringify(head));
    const tables: Record<string, number> = {};
    for (const table of await listBookTables(tx)) {
      const count = await writeTable(tx, { table, ...of }, write);
      tables[table.name] = count;
    }
    const end = { tables, sha256: hash.digest('hex') };
    await writeLine(JSON.stringify({ end } satisfies ArchiveEnd));
    return { head, end };
  });
}

async function makeHead(
  tx: TransactionSql,
  of: { storehouseId: string; takenAt: Date },
): Promise<ArchiveHead> {
  const [storehouse] = await tx<{ id: string; name: string }[]>`
    select storehouse_id as id, name from book.storehouse where storehouse_id = ${of.storehouseId}`;
  refuseUnless(storehouse, `there is no storehouse ${of.storehouseId} in this database`);
  return {
    format: ARCHIVE_FORMAT,
    version: ARCHIVE_VERSION,
    takenAt: of.takenAt.toISOString(),
    ...(await loadMigrations(tx)),
    storehouse: { id: storehouse.id, name: storehouse.name },
  };
}

/** Row by row as PostgreSQL spells it, never read into numbers of JavaScript: some are larger than those can hold. */
async function writeTable(
  tx: TransactionSql,
  { table, storehouseId, takenAt }: { table: BookTable; storehouseId: string; takenAt: Date },
  write: (line: string) => Promise<void>,
): Promise<number> {
  const rows = tx<{ row: string }[]>`
    select (to_jsonb(t) || ${closedDoors(tx, table, takenAt)})::text as row
    from ${tx(`${BOOK_SCHEMA}.${table.name}`)} t where storehouse_id = ${storehouseId}
    order by ${identifiers(tx, table.key)}`.cursor(rowsAtATime(table));
  let count = 0;
  for await (const batch of rows)
    for (const { row } of batch) {
      await write(`{"table":${JSON.stringify(table.name)},"row":${row}}`);
      count += 1;
    }
  return count;
}

/** What a row has instead of a way in: people come without their logins, open invitations are withdrawn. */
function closedDoors(tx: TransactionSql, { name }: BookTable, takenAt: Date) {
  if (name === 'person') return tx`jsonb_build_object('login_id', null)`;
  if (name !== 'invitation') return tx`'{}'::jsonb`;
  return tx`jsonb_build_object('token_hash', 'withdrawn ' || t.invitation_id, 'withdrawn_at',
    case when t.used_at is null then coalesce(t.withdrawn_at, ${takenAt.toISOString()}::timestamptz) end)`;
}

import type { Tx } from '@sheafbook/db';
import {
  type BankBalanceRow,
  type BankFileRow,
  type BankLineRow,
  type BankMatchRow,
  bankBalances,
  bankFiles,
  bankLines,
  bankMatches,
  persons,
} from '@sheafbook/db/tables';
import type { BankLine } from '@sheafbook/ledger';
import { assert } from '@sheafbook/units';
import { and, desc, eq, isNull, lt, type SQL, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

/** The newest file that had these headings, so that the next one is read the same way. */
export async function findFileOfHeadings(tx: Tx, storehouseId: string, headings: string) {
  const [row] = await tx
    .select({ columns: bankFiles.columns })
    .from(bankFiles)
    .where(and(eq(bankFiles.storehouseId, storehouseId), eq(bankFiles.headings, headings)))
    .orderBy(desc(bankFiles.takenAt), desc(bankFiles.bankFileId))
    .limit(1);
  return row?.columns;
}

export async function insertFile(tx: Tx, file: typeof bankFiles.$inferInsert): Promise<BankFileRow> {
  const [row] = await tx.insert(bankFiles).values(file).returning();
  assert(row, 'an insert returns its row');
  return row;
}

/** Files, the newest first, with how many lines each brought that were not there before. */
export async function listFiles(
  tx: Tx,
  storehouseId: string,
  page: { after?: string | undefined; limit: number },
) {
  return tx
    .select({
      file: bankFiles,
      takenBy: persons.name,
      lines: sql`(select count(*) from book.bank_line l where l.storehouse_id = ${storehouseId}
        and l.bank_file_id = ${bankFiles.bankFileId})`.mapWith(Number),
    })
    .from(bankFiles)
    .innerJoin(persons, joinOn(persons, bankFiles, 'personId', 'takenBy'))
    .where(
      and(
        eq(bankFiles.storehouseId, storehouseId),
        page.after === undefined ? undefined : lt(bankFiles.bankFileId, page.after),
      ),
    )
    .orderBy(desc(bankFiles.bankFileId))
    .limit(page.limit + 1);
}

/** Of some lines, those that the bank gave before, as fingerprint and occurrence. */
export async function listKnownKeys(
  tx: Tx,
  storehouseId: string,
  lines: readonly BankLine[],
): Promise<Set<string>> {
  const fingerprints = [...new Set(lines.map(({ fingerprint }) => fingerprint))];
  const rows = await tx
    .select({ fingerprint: bankLines.fingerprint, occurrence: bankLines.occurrence })
    .from(bankLines)
    .where(
      and(
        eq(bankLines.storehouseId, storehouseId),
        sql`${bankLines.fingerprint} = any(${sql.param(fingerprints)}::text[])`,
      ),
    );
  return new Set(rows.map(keyOf));
}

export const keyOf = ({ fingerprint, occurrence }: Pick<BankLine, 'fingerprint' | 'occurrence'>): string =>
  `${occurrence} ${fingerprint}`;

/** Keeps the lines that are not kept yet, and says how many those were. */
export async function insertLines(
  tx: Tx,
  of: { storehouseId: string; bankFileId: string },
  lines: readonly BankLine[],
): Promise<number> {
  if (lines.length === 0) return 0;
  const rows = lines.map(({ rowNo, onDay, minorUnits, words, fingerprint, occurrence }) => ({
    ...{ rowNo, onDay, minorUnits, words, fingerprint, occurrence },
  }));
  const kept = await tx.execute(sql`
    insert into book.bank_line (storehouse_id, bank_file_id, row_no, on_day, minor_units, words, fingerprint, occurrence)
    select ${of.storehouseId}::uuid, ${of.bankFileId}::uuid, r."rowNo", r."onDay", r."minorUnits", r.words, r.fingerprint,
      r.occurrence
    from jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) as r("rowNo" int, "onDay" date, "minorUnits" bigint,
      words text, fingerprint text, occurrence int)
    order by r."onDay", r."rowNo" on conflict do nothing returning 1`);
  return kept.length;
}

export async function insertBalance(tx: Tx, balance: typeof bankBalances.$inferInsert): Promise<void> {
  await tx.insert(bankBalances).values(balance);
}

/** What the bank said last of the latest day through one; undefined while it said nothing. */
export async function findBalance(
  tx: Tx,
  storehouseId: string,
  throughOn: string,
): Promise<BankBalanceRow | undefined> {
  const [row] = await tx
    .select()
    .from(bankBalances)
    .where(and(eq(bankBalances.storehouseId, storehouseId), sql`${bankBalances.onDay} <= ${throughOn}::date`))
    .orderBy(desc(bankBalances.onDay), desc(bankBalances.saidAt), desc(bankBalances.bankBalanceId))
    .limit(1);
  return row;
}

export async function loadLine(tx: Tx, storehouseId: string, bankLineId: string): Promise<BankLineRow> {
  const [row] = await tx
    .select()
    .from(bankLines)
    .where(and(eq(bankLines.storehouseId, storehouseId), eq(bankLines.bankLineId, bankLineId)));
  if (!row) throw new Problem('thing-not-found', { thing: 'line' });
  return row;
}

/** What became of a line, while that stands. */
export const findMatch = (tx: Tx, storehouseId: string, bankLineId: string) =>
  findStanding(tx, storehouseId, eq(bankMatches.bankLineId, bankLineId));

export const findMatchOfEntry = (tx: Tx, storehouseId: string, entryId: string) =>
  findStanding(tx, storehouseId, eq(bankMatches.entryId, entryId));

/** A line and an entry have one open match each: the database holds both. */
async function findStanding(tx: Tx, storehouseId: string, which: SQL): Promise<BankMatchRow | undefined> {
  const [row] = await tx
    .select()
    .from(bankMatches)
    .where(and(eq(bankMatches.storehouseId, storehouseId), which, isNull(bankMatches.undoneAt)));
  return row;
}

export async function insertMatch(tx: Tx, match: typeof bankMatches.$inferInsert): Promise<BankMatchRow> {
  const [row] = await tx.insert(bankMatches).values(match).returning();
  assert(row, 'an insert returns its row');
  return row;
}

/** Lets a line go; undefined when somebody else just did. */
export async function updateUndone(
  tx: Tx,
  match: BankMatchRow,
  set: { undoneBy: string; undoneAt: Date; undoneBecause: string },
): Promise<BankMatchRow | undefined> {
  const [row] = await tx
    .update(bankMatches)
    .set(set)
    .where(
      and(
        eq(bankMatches.storehouseId, match.storehouseId),
        eq(bankMatches.bankMatchId, match.bankMatchId),
        isNull(bankMatches.undoneAt),
      ),
    )
    .returning();
  return row;
}

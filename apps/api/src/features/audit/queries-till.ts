import type { Tx } from '@sheafbook/db';
import type { AuditBankMatch, AuditTinCount } from '@sheafbook/ledger';
import { sql } from 'drizzle-orm';

/** Lines of the bank that stand as an entry. */
export async function listBankMatches(tx: Tx, storehouseId: string): Promise<AuditBankMatch[]> {
  const rows = await tx.execute<{ line_id: string; entry_id: string; minor_units: string }>(sql`
    select m.bank_line_id as line_id, m.entry_id, l.minor_units
    from book.bank_match m
    join book.bank_line l on l.storehouse_id = ${storehouseId} and l.bank_line_id = m.bank_line_id
    where m.storehouse_id = ${storehouseId} and m.entry_id is not null and m.undone_at is null
    order by m.bank_match_id`);
  return rows.map((row) => ({
    lineId: row.line_id,
    entryId: row.entry_id,
    lineMinorUnits: Number(row.minor_units),
  }));
}

export async function listTinCounts(tx: Tx, storehouseId: string): Promise<AuditTinCount[]> {
  const rows = await tx.execute<{ cash_count_id: string; entry_id: string | null; difference: string }>(sql`
    select cash_count_id, entry_id, counted_minor_units - expected_minor_units as difference
    from book.cash_count where storehouse_id = ${storehouseId} order by cash_count_id`);
  return rows.map((row) => ({
    countId: row.cash_count_id,
    entryId: row.entry_id,
    differenceMinorUnits: Number(row.difference),
  }));
}

import type { Tx } from '@sheafbook/db';
import type { AuditBooking, AuditLoan } from '@sheafbook/ledger';
import { sql } from 'drizzle-orm';

/** The times that hold a piece, or held it. */
export async function listBlockedTimes(tx: Tx, storehouseId: string): Promise<AuditBooking[]> {
  const rows = await tx.execute<{ booking_id: string; unit_id: string; from_at: string; to_at: string }>(sql`
    select booking_id, equipment_unit_id as unit_id, blocked_from as from_at, blocked_to as to_at
    from book.booking where storehouse_id = ${storehouseId} and state in ('offered', 'booked', 'out', 'returned')
    order by booking_id`);
  return rows.map((row) => ({
    bookingId: row.booking_id,
    unitId: row.unit_id,
    startMs: Date.parse(row.from_at),
    endMs: Date.parse(row.to_at),
  }));
}

/** Loans with their parts. A part that lost a piece before is one that the list had more of on that day. */
export async function listLoansOfAll(tx: Tx, storehouseId: string): Promise<AuditLoan[]> {
  const rows = await tx.execute<{
    loan_id: string;
    unit_id: string;
    item_id: string;
    item_units: string;
    out_at: string;
    in_at: string | null;
    parts: { out: number; back: number | null }[];
    is_crippled: boolean;
  }>(sql`
    select l.loan_id, l.equipment_unit_id as unit_id, u.equipment_item_id as item_id, l.out_at, l.in_at,
      (select count(*) from book.equipment_unit o where o.storehouse_id = ${storehouseId}
        and o.equipment_item_id = u.equipment_item_id) as item_units,
      (select coalesce(jsonb_agg(jsonb_build_object('out', p.out_pieces, 'back', p.in_pieces)), '[]')
        from book.loan_part p where p.storehouse_id = ${storehouseId} and p.loan_id = l.loan_id) as parts,
      exists (select from book.loan_part p where p.storehouse_id = ${storehouseId} and p.loan_id = l.loan_id
        and p.is_critical and p.out_pieces = 0) as is_crippled
    from book.loan l
    join book.equipment_unit u on u.storehouse_id = ${storehouseId} and u.equipment_unit_id = l.equipment_unit_id
    where l.storehouse_id = ${storehouseId} order by l.loan_id`);
  return rows.map((row) => ({
    loanId: row.loan_id,
    unitId: row.unit_id,
    itemId: row.item_id,
    itemUnits: Number(row.item_units),
    outMs: Date.parse(row.out_at),
    inMs: row.in_at === null ? null : Date.parse(row.in_at),
    parts: row.parts,
    isCrippled: row.is_crippled,
  }));
}

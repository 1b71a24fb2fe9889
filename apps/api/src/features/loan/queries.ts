import type { Tx } from '@sheafbook/db';
import {
  bookings,
  equipmentItems,
  equipmentUnits,
  households,
  type LoanPartRow,
  type LoanRow,
  loanParts,
  loans,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, gt, inArray, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, loanId: string) =>
  and(eq(loans.storehouseId, storehouseId), eq(loans.loanId, loanId));

export async function insertLoan(tx: Tx, row: typeof loans.$inferInsert): Promise<LoanRow> {
  const [inserted] = await tx.insert(loans).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

export async function insertLoanParts(
  tx: Tx,
  rows: readonly (typeof loanParts.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(loanParts).values([...rows]);
}

export async function loadLoan(tx: Tx, storehouseId: string, loanId: string): Promise<LoanRow> {
  const [row] = await tx.select().from(loans).where(isThis(storehouseId, loanId));
  if (!row) throw new Problem('thing-not-found', { thing: 'loan' });
  return row;
}

/** The loan that a piece is out on. */
export async function findOpenLoan(
  tx: Tx,
  storehouseId: string,
  unitId: string,
): Promise<LoanRow | undefined> {
  const [row] = await tx
    .select()
    .from(loans)
    .where(and(eq(loans.storehouseId, storehouseId), eq(loans.equipmentUnitId, unitId), isNull(loans.inAt)));
  return row;
}

/** When the piece of a loan went out again after it; null while it has not. Where `loans` is joined. */
const outAgainAt = sql<Date | null>`(
  select min(l.out_at) from book.loan l
  where l.storehouse_id = ${loans.storehouseId} and l.equipment_unit_id = ${loans.equipmentUnitId}
    and l.out_at > ${loans.outAt})`.mapWith(loans.outAt);

/** The loan after another of the same piece; undefined while it went to nobody since. */
export async function findNextLoan(tx: Tx, loan: LoanRow): Promise<LoanRow | undefined> {
  const [row] = await tx
    .select()
    .from(loans)
    .where(
      and(
        eq(loans.storehouseId, loan.storehouseId),
        eq(loans.equipmentUnitId, loan.equipmentUnitId),
        gt(loans.outAt, loan.outAt),
      ),
    )
    .orderBy(asc(loans.outAt))
    .limit(1);
  return row;
}

/** Under the lock of its thing. */
export async function updateLoan(
  tx: Tx,
  loan: LoanRow,
  change: Partial<typeof loans.$inferInsert>,
): Promise<LoanRow> {
  const [row] = await tx.update(loans).set(change).where(isThis(loan.storehouseId, loan.loanId)).returning();
  assert(row, 'the loan was read before, under the lock of its thing');
  return row;
}

export async function listLoanParts(
  tx: Tx,
  storehouseId: string,
  loanIds: readonly string[],
): Promise<LoanPartRow[]> {
  return tx
    .select()
    .from(loanParts)
    .where(and(eq(loanParts.storehouseId, storehouseId), inArray(loanParts.loanId, [...loanIds])))
    .orderBy(asc(loanParts.loanId), desc(loanParts.isCritical), asc(loanParts.name));
}

export async function updatePartBack(tx: Tx, part: LoanPartRow, inPieces: number): Promise<void> {
  await tx
    .update(loanParts)
    .set({ inPieces })
    .where(
      and(
        eq(loanParts.storehouseId, part.storehouseId),
        eq(loanParts.loanId, part.loanId),
        eq(loanParts.equipmentPartId, part.equipmentPartId),
      ),
    );
}

export type LoansOf = {
  readonly loanId?: string;
  readonly bookingId?: string;
  readonly householdId?: string | undefined;
  readonly itemId?: string;
  readonly isOut?: boolean;
};

/** Loans with their thing, piece, household and parts: what is out by its due time, then what is back, the newest first. */
export async function listLoans(tx: Tx, storehouseId: string, of: LoansOf) {
  const rows = await tx
    .select({
      loan: loans,
      booking: bookings,
      item: equipmentItems,
      unit: equipmentUnits,
      seat: households.seat,
      householdName: households.name,
      outAgainAt,
    })
    .from(loans)
    .innerJoin(bookings, joinOn(bookings, loans, 'bookingId'))
    .innerJoin(equipmentUnits, joinOn(equipmentUnits, loans, 'equipmentUnitId'))
    .innerJoin(
      equipmentItems,
      and(
        eq(equipmentItems.storehouseId, loans.storehouseId),
        eq(equipmentItems.equipmentItemId, equipmentUnits.equipmentItemId),
      ),
    )
    .innerJoin(households, joinOn(households, loans, 'householdId'))
    .where(
      and(
        eq(loans.storehouseId, storehouseId),
        of.loanId === undefined ? undefined : eq(loans.loanId, of.loanId),
        of.bookingId === undefined ? undefined : eq(loans.bookingId, of.bookingId),
        of.householdId === undefined ? undefined : eq(loans.householdId, of.householdId),
        of.itemId === undefined ? undefined : eq(equipmentItems.equipmentItemId, of.itemId),
        of.isOut ? isNull(loans.inAt) : undefined,
      ),
    )
    .orderBy(
      sql`${loans.inAt} desc nulls first`,
      sql`case when ${loans.inAt} is null then ${loans.dueAt} end`,
      desc(loans.outAt),
    );
  const parts = await listLoanParts(
    tx,
    storehouseId,
    rows.map(({ loan }) => loan.loanId),
  );
  return rows.map((row) => ({ ...row, parts: parts.filter(({ loanId }) => loanId === row.loan.loanId) }));
}
export type ListedLoan = Awaited<ReturnType<typeof listLoans>>[number];

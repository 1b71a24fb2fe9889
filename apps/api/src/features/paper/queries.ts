import type { Tx } from '@sheafbook/db';
import { buys, depositAsks, type PaperRow, papers } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq, inArray, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

/** The number of the last entry in the book: what a paper is "as of". */
export async function loadLastEntryNo(tx: Tx, storehouseId: string): Promise<number> {
  const [row] = await tx.execute<{ last: string }>(
    sql`select last_entry_no as last from book.book_state where storehouse_id = ${storehouseId}`,
  );
  assert(row, 'a storehouse is founded with its book');
  return Number(row.last);
}

export type Printing = Omit<PaperRow, 'paperId' | 'paperNo' | 'paperCode'>;

/** The same paper printed before by the same person on the same day, with nothing booked meanwhile. */
export async function findPrinting(tx: Tx, printing: Printing): Promise<PaperRow | undefined> {
  const [row] = await tx
    .select()
    .from(papers)
    .where(
      and(
        eq(papers.storehouseId, printing.storehouseId),
        eq(papers.kind, printing.kind),
        sql`${papers.buyId} is not distinct from ${printing.buyId}::uuid`,
        sql`${papers.householdId} is not distinct from ${printing.householdId}::uuid`,
        sql`${papers.subjectId} is not distinct from ${printing.subjectId}::uuid`,
        eq(papers.detail, printing.detail),
        eq(papers.asOfEntryNo, printing.asOfEntryNo),
        eq(papers.printedOn, printing.printedOn),
        eq(papers.printedBy, printing.printedBy),
      ),
    );
  return row;
}

/** Undefined when the very same printing was kept meanwhile. */
export async function insertPaper(tx: Tx, paper: typeof papers.$inferInsert): Promise<PaperRow | undefined> {
  const [row] = await tx.insert(papers).values(paper).onConflictDoNothing().returning();
  return row;
}

export async function loadPaperByCode(tx: Tx, storehouseId: string, paperCode: string): Promise<PaperRow> {
  const [row] = await tx
    .select()
    .from(papers)
    .where(and(eq(papers.storehouseId, storehouseId), eq(papers.paperCode, paperCode)));
  if (!row) throw new Problem('thing-not-found', { thing: 'paper' });
  return row;
}

/** The deposits asked of a household for buys that have not charged it yet, waived ones left out. */
export async function listAskedDeposits(tx: Tx, storehouseId: string, householdId: string) {
  return tx
    .select({
      buyId: buys.buyId,
      buy: buys.name,
      askedMinorUnits: depositAsks.askedMinorUnits,
      dueOn: depositAsks.dueOn,
    })
    .from(depositAsks)
    .innerJoin(buys, joinOn(buys, depositAsks, 'buyId'))
    .where(
      and(
        eq(depositAsks.storehouseId, storehouseId),
        eq(depositAsks.householdId, householdId),
        isNull(depositAsks.waivedBy),
        inArray(buys.stage, ['fixed', 'ordered', 'landed']),
      ),
    )
    .orderBy(asc(buys.buyId));
}

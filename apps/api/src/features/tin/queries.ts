import type { Tx } from '@sheafbook/db';
import { type CashCountRow, cashCounts, entries, persons } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq, lt } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import { joinOn } from '../../platform/join-on.ts';

export async function insertCount(tx: Tx, count: typeof cashCounts.$inferInsert): Promise<CashCountRow> {
  const [row] = await tx.insert(cashCounts).values(count).returning();
  assert(row, 'an insert returns its row');
  return row;
}

const along = alias(persons, 'along');

/** Counts of the tin, the newest first; one row more than the page holds. */
export async function listCounts(
  tx: Tx,
  storehouseId: string,
  page: { after?: string | undefined; limit: number },
) {
  return tx
    .select({ count: cashCounts, by: persons.name, alongside: along.name, entryNo: entries.entryNo })
    .from(cashCounts)
    .innerJoin(persons, joinOn(persons, cashCounts, 'personId', 'countedBy'))
    .leftJoin(along, joinOn(along, cashCounts, 'personId', 'countedWith'))
    .leftJoin(entries, joinOn(entries, cashCounts, 'entryId'))
    .where(
      and(
        eq(cashCounts.storehouseId, storehouseId),
        page.after === undefined ? undefined : lt(cashCounts.cashCountId, page.after),
      ),
    )
    .orderBy(desc(cashCounts.cashCountId))
    .limit(page.limit + 1);
}

import type { Tx } from '@sheafbook/db';
import { bookStates, periodCloses, persons } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq, sql } from 'drizzle-orm';
import { fieldProblem } from '../../platform/problem.ts';

/** The last day that the books are closed through; null while none is. */
export async function loadClosedThrough(tx: Tx, storehouseId: string): Promise<string | null> {
  const [row] = await tx
    .select({ closedThrough: bookStates.closedThrough })
    .from(bookStates)
    .where(eq(bookStates.storehouseId, storehouseId));
  assert(row, 'a storehouse is founded with its book');
  return row.closedThrough;
}

/** Refuses a day of a closed period and names its field; posting checks again under the lock of the book's row. */
export async function refuseClosedDay(
  tx: Tx,
  storehouseId: string,
  day: { field: string; on: string },
): Promise<void> {
  const closedThrough = await loadClosedThrough(tx, storehouseId);
  if (closedThrough !== null && day.on <= closedThrough)
    throw fieldProblem(
      'period-closed',
      day.field,
      `The books are closed through ${closedThrough}. Post it today and name the old day in the note.`,
    );
}

/** Closes through a day; null when they are closed through that day or a later one already. */
export async function updateClosedThrough(tx: Tx, throughOn: string): Promise<string | null> {
  const [row] = await tx.execute<{ closed: string | null }>(
    sql`select book.close_period(${throughOn}::date) as closed`,
  );
  return row?.closed ?? null;
}

export async function insertPeriodClose(tx: Tx, close: typeof periodCloses.$inferInsert): Promise<void> {
  await tx.insert(periodCloses).values(close);
}

export async function listPeriodCloses(tx: Tx, storehouseId: string) {
  return tx
    .select({
      closedThrough: periodCloses.closedThrough,
      closedAt: periodCloses.closedAt,
      closedBy: persons.name,
    })
    .from(periodCloses)
    .innerJoin(
      persons,
      and(eq(persons.storehouseId, periodCloses.storehouseId), eq(persons.personId, periodCloses.closedBy)),
    )
    .where(eq(periodCloses.storehouseId, storehouseId))
    .orderBy(desc(periodCloses.closedThrough));
}

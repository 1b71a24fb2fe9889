import type { Tx } from '@sheafbook/db';
import {
  bookStates,
  type PeriodCloseRow,
  periodCloses,
  periodSignatures,
  persons,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, lt, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';

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
      entryCount: periodCloses.entryCount,
      digestSha256: periodCloses.digestSha256,
    })
    .from(periodCloses)
    .innerJoin(persons, joinOn(persons, periodCloses, 'personId', 'closedBy'))
    .where(eq(periodCloses.storehouseId, storehouseId))
    .orderBy(desc(periodCloses.closedThrough));
}

export async function loadPeriodClose(
  tx: Tx,
  storehouseId: string,
  throughOn: string,
): Promise<PeriodCloseRow> {
  const [row] = await tx
    .select()
    .from(periodCloses)
    .where(and(eq(periodCloses.storehouseId, storehouseId), eq(periodCloses.closedThrough, throughOn)));
  if (!row) throw new Problem('thing-not-found', { thing: 'close' });
  return row;
}

export async function findCloseBefore(
  tx: Tx,
  storehouseId: string,
  throughOn: string,
): Promise<PeriodCloseRow | undefined> {
  const [row] = await tx
    .select()
    .from(periodCloses)
    .where(and(eq(periodCloses.storehouseId, storehouseId), lt(periodCloses.closedThrough, throughOn)))
    .orderBy(desc(periodCloses.closedThrough))
    .limit(1);
  return row;
}

export async function insertSignature(
  tx: Tx,
  signature: typeof periodSignatures.$inferInsert,
): Promise<void> {
  await tx.insert(periodSignatures).values(signature);
}

export async function listSignatures(tx: Tx, storehouseId: string) {
  return tx
    .select({
      closedThrough: periodSignatures.closedThrough,
      duty: periodSignatures.duty,
      signedBy: persons.name,
      signedAt: periodSignatures.signedAt,
      remarks: periodSignatures.remarks,
    })
    .from(periodSignatures)
    .innerJoin(persons, joinOn(persons, periodSignatures, 'personId'))
    .where(eq(periodSignatures.storehouseId, storehouseId))
    .orderBy(asc(periodSignatures.signedAt));
}

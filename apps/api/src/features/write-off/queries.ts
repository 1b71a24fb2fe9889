import type { Tx } from '@sheafbook/db';
import { households, type WriteOffRow, writeOffs } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq, gt, isNotNull, isNull, lt, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, writeOffId: string) =>
  and(eq(writeOffs.storehouseId, storehouseId), eq(writeOffs.writeOffId, writeOffId));

export async function lockWriteOff(tx: Tx, storehouseId: string, writeOffId: string): Promise<WriteOffRow> {
  const [row] = await tx.select().from(writeOffs).where(isThis(storehouseId, writeOffId)).for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'write-off' });
  return row;
}

export async function insertWriteOff(tx: Tx, row: typeof writeOffs.$inferInsert): Promise<WriteOffRow> {
  const [inserted] = await tx.insert(writeOffs).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

export async function updateWriteOff(
  tx: Tx,
  row: WriteOffRow,
  set: Partial<Pick<WriteOffRow, 'agreedBy' | 'agreedAt' | 'withdrawnAt' | 'entryId'>>,
): Promise<WriteOffRow> {
  const [updated] = await tx
    .update(writeOffs)
    .set(set)
    .where(isThis(row.storehouseId, row.writeOffId))
    .returning();
  assert(updated, 'the write-off was locked before');
  return updated;
}

/** What one person alone has written off for a household since an instant, and nobody took back. */
export async function sumWrittenOffAlone(
  tx: Tx,
  storehouseId: string,
  of: { householdId: string; since: Date },
): Promise<number> {
  const [row] = await tx
    .select({ minorUnits: sql`coalesce(sum(${writeOffs.minorUnits}), 0)`.mapWith(Number) })
    .from(writeOffs)
    .where(
      and(
        eq(writeOffs.storehouseId, storehouseId),
        eq(writeOffs.householdId, of.householdId),
        gt(writeOffs.askedAt, of.since),
        isNotNull(writeOffs.entryId),
        isNull(writeOffs.agreedBy),
        sql`not exists (select from book.entry r where r.storehouse_id = ${storehouseId}
          and r.reverses_id = ${writeOffs.entryId})`,
      ),
    );
  assert(row, 'an aggregate without group by returns one row');
  return row.minorUnits;
}

/** The newest first; one row more than the page holds. */
export async function listWriteOffs(
  tx: Tx,
  storehouseId: string,
  page: { after?: string | undefined; limit: number },
) {
  return tx
    .select({
      writeOff: writeOffs,
      householdName: households.name,
      isTakenBack: sql<boolean>`exists (select from book.entry r where r.storehouse_id = ${storehouseId}
        and r.reverses_id = ${writeOffs.entryId})`,
    })
    .from(writeOffs)
    .innerJoin(households, joinOn(households, writeOffs, 'householdId'))
    .where(
      and(
        eq(writeOffs.storehouseId, storehouseId),
        page.after === undefined ? undefined : lt(writeOffs.writeOffId, sql`${page.after}::uuid`),
      ),
    )
    .orderBy(desc(writeOffs.writeOffId))
    .limit(page.limit + 1);
}

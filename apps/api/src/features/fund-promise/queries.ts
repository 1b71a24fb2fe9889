import type { Tx } from '@sheafbook/db';
import { entries, equipmentItems, type FundPromiseRow, fundPromises } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq, lt, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import { fundKinds } from '../money/queries.ts';

const isThis = (storehouseId: string, fundPromiseId: string) =>
  and(eq(fundPromises.storehouseId, storehouseId), eq(fundPromises.fundPromiseId, fundPromiseId));

/** An entry that was taken back fulfils nothing: the promise stands again. */
const isFulfilled = (
  storehouseId: string,
) => sql<boolean>`(${fundPromises.entryId} is not null and not exists (
  select from book.entry r where r.storehouse_id = ${storehouseId} and r.reverses_id = ${fundPromises.entryId}))`;

const selectPromises = (tx: Tx, storehouseId: string) =>
  tx
    .select({
      promise: fundPromises,
      item: equipmentItems.name,
      entryNo: entries.entryNo,
      isFulfilled: isFulfilled(storehouseId),
    })
    .from(fundPromises)
    .leftJoin(equipmentItems, joinOn(equipmentItems, fundPromises, 'equipmentItemId'))
    .leftJoin(entries, joinOn(entries, fundPromises, 'entryId'));

/** The newest first; one row more than the page holds. */
export async function listFundPromises(
  tx: Tx,
  storehouseId: string,
  page: { after?: string | undefined; limit: number },
) {
  return selectPromises(tx, storehouseId)
    .where(
      and(
        eq(fundPromises.storehouseId, storehouseId),
        page.after === undefined ? undefined : lt(fundPromises.fundPromiseId, sql`${page.after}::uuid`),
      ),
    )
    .orderBy(desc(fundPromises.fundPromiseId))
    .limit(page.limit + 1);
}
export type FundPromiseReading = Awaited<ReturnType<typeof listFundPromises>>[number];

export async function loadFundPromise(
  tx: Tx,
  storehouseId: string,
  fundPromiseId: string,
): Promise<FundPromiseReading> {
  const [row] = await selectPromises(tx, storehouseId).where(isThis(storehouseId, fundPromiseId));
  if (!row) throw new Problem('thing-not-found', { thing: 'fund promise' });
  return row;
}

/** Whoever fulfils or withdraws a promise waits for whoever does so at this moment. */
export async function lockFundPromise(tx: Tx, storehouseId: string, fundPromiseId: string): Promise<void> {
  await tx
    .select({ id: fundPromises.fundPromiseId })
    .from(fundPromises)
    .where(isThis(storehouseId, fundPromiseId))
    .for('update');
}

export async function insertFundPromise(
  tx: Tx,
  row: typeof fundPromises.$inferInsert,
): Promise<FundPromiseRow> {
  const [inserted] = await tx.insert(fundPromises).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

export async function updateFundPromise(
  tx: Tx,
  { storehouseId, fundPromiseId }: FundPromiseRow,
  set: Partial<Pick<FundPromiseRow, 'entryId' | 'withdrawnBy' | 'withdrawnAt' | 'withdrawnBecause'>>,
): Promise<void> {
  await tx.update(fundPromises).set(set).where(isThis(storehouseId, fundPromiseId));
}

/** What is promised and neither fulfilled nor withdrawn. */
export async function sumPromised(tx: Tx, storehouseId: string): Promise<number> {
  const [row] = await tx
    .select({ minorUnits: sql`coalesce(sum(${fundPromises.minorUnits}), 0)`.mapWith(Number) })
    .from(fundPromises)
    .where(
      and(
        eq(fundPromises.storehouseId, storehouseId),
        sql`${fundPromises.withdrawnAt} is null and not ${isFulfilled(storehouseId)}`,
      ),
    );
  assert(row, 'an aggregate without group by returns one row');
  return row.minorUnits;
}

/** An entry by its number, with what it took out of the fund or out of what the year's end carries into it. */
export async function findSpending(tx: Tx, storehouseId: string, entryNo: number) {
  const rows = await tx.execute<{ entry_id: string; is_undone: boolean; minor_units: string }>(sql`
    select e.entry_id, exists (select from book.entry r
        where r.storehouse_id = ${storehouseId} and r.reverses_id = e.entry_id) as is_undone,
      coalesce((select sum(case when d.kind = any(k.kinds) then m.amount else 0 end
          - case when s.kind = any(k.kinds) then m.amount else 0 end)
        from book.movement m
        join book.account s on s.storehouse_id = ${storehouseId} and s.account_id = m.source_id
        join book.account d on d.storehouse_id = ${storehouseId} and d.account_id = m.destination_id
        cross join (select ${sql.param(fundKinds)}::text[] as kinds) k
        where m.storehouse_id = ${storehouseId} and m.entry_id = e.entry_id and s.unit_kind = 'currency'), 0)
        as minor_units
    from book.entry e where e.storehouse_id = ${storehouseId} and e.entry_no = ${entryNo}`);
  const [row] = rows;
  return row && { entryId: row.entry_id, isUndone: row.is_undone, minorUnits: Number(row.minor_units) };
}

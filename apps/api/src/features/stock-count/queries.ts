import type { Tx } from '@sheafbook/db';
import { persons, type StockCountRow, stockCounts } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq, lt, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import type { LotValue } from './worth.ts';

/** Common stock in one bag or container, as the book has it. */
export type CommonStock = {
  readonly accountId: string;
  readonly vesselId: string;
  readonly vesselKind: string;
  readonly code: string;
  readonly lotId: string;
  readonly ownerId: string;
  readonly foodEn: string;
  readonly foodEs: string;
  readonly grams: number;
};

const inVessels = (storehouseId: string) => sql`
  select a.account_id as "accountId", a.vessel_id as "vesselId", a.vessel_kind as "vesselKind",
    coalesce(g.bag_code, c.container_code) as code, a.unit_id as "lotId", a.owner_id as "ownerId",
    f.name_en as "foodEn", f.name_es as "foodEs", a.inflow - a.outflow as grams
  from book.account a
  join book.owner o on o.storehouse_id = ${storehouseId} and o.owner_id = a.owner_id and o.kind = 'common'
  join book.lot l on l.storehouse_id = ${storehouseId} and l.lot_id = a.unit_id
  join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = l.food_id
  left join book.bag g on g.storehouse_id = ${storehouseId} and g.bag_id = a.vessel_id
  left join book.container c on c.storehouse_id = ${storehouseId} and c.container_id = a.vessel_id
  where a.storehouse_id = ${storehouseId} and a.vessel_kind in ('bag', 'container')`;

type Row = Omit<CommonStock, 'grams'> & { grams: string };
const readRow = (row: Row): CommonStock => ({ ...row, grams: Number(row.grams) });

/** What the book says there is, by code; what is empty and was never counted is left out. */
export async function listCommonStock(tx: Tx, storehouseId: string): Promise<CommonStock[]> {
  const rows = await tx.execute<Row>(sql`${inVessels(storehouseId)} and (a.inflow <> a.outflow
    or exists (select from book.stock_count k where k.storehouse_id = ${storehouseId} and k.account_id = a.account_id))
    order by f.name_en, code`);
  return rows.map(readRow);
}

/** One of them. What is booked of a count is its difference, so it stays right whatever moves meanwhile. */
export async function loadCommonStock(tx: Tx, storehouseId: string, accountId: string): Promise<CommonStock> {
  const [row] = await tx.execute<Row>(sql`${inVessels(storehouseId)} and a.account_id = ${accountId}`);
  if (!row) throw new Problem('thing-not-found', { thing: 'common stock' });
  return readRow(row);
}

/** What a lot's common stock stands at in account 1400, how many grams of it there are, and how much of both ever came. */
export async function loadLotValue(tx: Tx, storehouseId: string, lotId: string): Promise<LotValue> {
  const [row] = await tx.execute<Record<keyof LotValue, string>>(sql`
    with stock as (select a.account_id, a.inflow - a.outflow as grams from book.account a
      join book.owner o on o.storehouse_id = ${storehouseId} and o.owner_id = a.owner_id and o.kind = 'common'
      where a.storehouse_id = ${storehouseId} and a.unit_id = ${lotId} and a.vessel_kind in ('bag', 'container')),
    cost as (select inflow, inflow - outflow as balance from book.account
      where storehouse_id = ${storehouseId} and kind = 'common_stock' and cause_id = ${lotId})
    select (select coalesce(sum(balance), 0) from cost) as "minorUnits",
      (select coalesce(sum(inflow), 0) from cost) as "cameMinorUnits",
      (select coalesce(sum(grams), 0) from stock) as grams,
      (select coalesce(sum(m.amount), 0) from book.movement m where m.storehouse_id = ${storehouseId}
        and m.destination_id in (select account_id from stock)
        and m.source_id not in (select account_id from stock)) as "cameGrams"`);
  assert(row, 'a select without from returns one row');
  return {
    minorUnits: Number(row.minorUnits),
    grams: Number(row.grams),
    cameMinorUnits: Number(row.cameMinorUnits),
    cameGrams: Number(row.cameGrams),
  };
}

export async function insertCount(tx: Tx, count: typeof stockCounts.$inferInsert): Promise<void> {
  await tx.insert(stockCounts).values(count);
}

export async function setBooked(tx: Tx, count: StockCountRow, entryId: string): Promise<void> {
  await tx
    .update(stockCounts)
    .set({ entryId })
    .where(
      and(eq(stockCounts.storehouseId, count.storehouseId), eq(stockCounts.stockCountId, count.stockCountId)),
    );
}

export async function lockCount(tx: Tx, storehouseId: string, stockCountId: string): Promise<StockCountRow> {
  const [row] = await tx
    .select()
    .from(stockCounts)
    .where(and(eq(stockCounts.storehouseId, storehouseId), eq(stockCounts.stockCountId, stockCountId)))
    .for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'count' });
  return row;
}

/** The newest first. */
export async function listCounts(
  tx: Tx,
  storehouseId: string,
  { after, limit }: { after?: string | undefined; limit: number },
) {
  return tx
    .select({ count: stockCounts, countedBy: persons.name })
    .from(stockCounts)
    .innerJoin(persons, joinOn(persons, stockCounts, 'personId', 'countedBy'))
    .where(
      and(
        eq(stockCounts.storehouseId, storehouseId),
        after ? lt(stockCounts.stockCountId, after) : undefined,
      ),
    )
    .orderBy(desc(stockCounts.stockCountId))
    .limit(limit + 1);
}

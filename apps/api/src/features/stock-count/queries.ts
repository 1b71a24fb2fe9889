import type { Tx } from '@sheafbook/db';
import { persons, type StockCountRow, stockCounts } from '@sheafbook/db/tables';
import { and, desc, eq, lt, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import { type DaySpan, dayOf, isWithin } from '../../platform/storehouse-day.ts';
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

/** What the common stock of some lots stands at in account 1400, how many grams there are, and how much of both ever came. */
export async function loadLotValues(
  tx: Tx,
  storehouseId: string,
  lotIds: readonly string[],
): Promise<Map<string, LotValue>> {
  const ids = sql.param([...new Set(lotIds)]);
  const rows = await tx.execute<{ lotId: string } & Record<keyof LotValue, string>>(sql`
    with stock as (select a.unit_id as lot_id, a.account_id, a.inflow - a.outflow as grams from book.account a
      join book.owner o on o.storehouse_id = ${storehouseId} and o.owner_id = a.owner_id and o.kind = 'common'
      where a.storehouse_id = ${storehouseId} and a.unit_id = any(${ids}::uuid[]) and a.vessel_kind in ('bag', 'container')),
    cost as (select cause_id as lot_id, inflow, inflow - outflow as balance from book.account
      where storehouse_id = ${storehouseId} and kind = 'common_stock' and cause_id = any(${ids}::uuid[]))
    select w.lot_id as "lotId",
      (select coalesce(sum(balance), 0) from cost c where c.lot_id = w.lot_id) as "minorUnits",
      (select coalesce(sum(inflow), 0) from cost c where c.lot_id = w.lot_id) as "cameMinorUnits",
      (select coalesce(sum(grams), 0) from stock s where s.lot_id = w.lot_id) as grams,
      (select coalesce(sum(m.amount), 0) from book.movement m where m.storehouse_id = ${storehouseId}
        and m.destination_id in (select account_id from stock s where s.lot_id = w.lot_id)
        and m.source_id not in (select account_id from stock s where s.lot_id = w.lot_id)) as "cameGrams"
    from unnest(${ids}::uuid[]) as w(lot_id)`);
  return new Map(
    rows.map(({ lotId, minorUnits, grams, cameMinorUnits, cameGrams }) => [
      lotId,
      {
        ...{ minorUnits: Number(minorUnits), grams: Number(grams) },
        ...{ cameMinorUnits: Number(cameMinorUnits), cameGrams: Number(cameGrams) },
      },
    ]),
  );
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

type CountsWish = {
  readonly after?: string | undefined;
  readonly limit: number;
  /** Only those that were counted on these days. */
  readonly days?: DaySpan & { readonly timeZone: string };
};

/** The newest first. */
export async function listCounts(tx: Tx, storehouseId: string, { after, limit, days }: CountsWish) {
  return tx
    .select({ count: stockCounts, countedBy: persons.name })
    .from(stockCounts)
    .innerJoin(persons, joinOn(persons, stockCounts, 'personId', 'countedBy'))
    .where(
      and(
        eq(stockCounts.storehouseId, storehouseId),
        after ? lt(stockCounts.stockCountId, after) : undefined,
        days ? isWithin(dayOf(sql`${stockCounts.countedAt}`, days.timeZone), days) : undefined,
      ),
    )
    .orderBy(desc(stockCounts.stockCountId))
    .limit(limit + 1);
}

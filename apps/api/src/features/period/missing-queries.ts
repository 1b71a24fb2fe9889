import type { Tx } from '@sheafbook/db';
import { sql } from 'drizzle-orm';

/** A buy that money stood on by a day. Clearing as it stands now, the deposits as they stood then. */
export type BuyAtClose = {
  readonly buyId: string;
  readonly name: string;
  readonly stage: string;
  readonly sharedOutAt: Date | null;
  readonly clearingMinorUnits: number;
  readonly depositMinorUnits: number;
};

export async function listBuysAtClose(
  tx: Tx,
  storehouseId: string,
  throughOn: string,
): Promise<BuyAtClose[]> {
  const rows = await tx.execute<
    Record<'id' | 'name' | 'stage' | 'clearing' | 'deposits', string> & { at: string | null }
  >(sql`
    with a as (select account_id, kind, cause_id from book.account
      where storehouse_id = ${storehouseId} and kind in ('buy_clearing', 'buy_deposit')),
    m as (
      select a.kind, a.cause_id, m.entry_id, m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id
      union all
      select a.kind, a.cause_id, m.entry_id, -m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id)
    select b.buy_id as id, b.name, b.stage,
      coalesce(sum(m.amount) filter (where m.kind = 'buy_clearing'), 0) as clearing,
      coalesce(-sum(m.amount) filter (where m.kind = 'buy_deposit' and e.on_day <= ${throughOn}::date), 0) as deposits,
      (select max(s.moved_at)::text from book.stage_move s where s.storehouse_id = ${storehouseId}
        and s.buy_id = b.buy_id and s.to_stage in ('shared-out', 'called-off')) as at
    from m
    join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = m.cause_id
    group by b.buy_id, b.name, b.stage
    having bool_or(e.on_day <= ${throughOn}::date) order by b.name, b.buy_id`);
  return rows.map((row) => ({
    buyId: row.id,
    name: row.name,
    stage: row.stage,
    sharedOutAt: row.at === null ? null : new Date(row.at),
    clearingMinorUnits: Number(row.clearing),
    depositMinorUnits: Number(row.deposits),
  }));
}

export async function listClaimsAtClose(tx: Tx, storehouseId: string, throughOn: string) {
  const rows = await tx.execute<{ buyId: string; name: string; minorUnits: string; count: number }>(sql`
    select b.buy_id as "buyId", b.name, sum(c.minor_units) as "minorUnits", count(*)::int as count
    from book.claim c join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = c.buy_id
    where c.storehouse_id = ${storehouseId} and c.state = 'open' and c.raised_on <= ${throughOn}::date
    group by b.buy_id, b.name order by b.name, b.buy_id`);
  return rows.map((row) => ({ ...row, minorUnits: Number(row.minorUnits) }));
}

/** Entries of the tin by a day that were written after it was counted last. */
export async function countUncountedCash(tx: Tx, storehouseId: string, throughOn: string): Promise<number> {
  const [row] = await tx.execute<{ count: number }>(sql`
    select count(distinct e.entry_id)::int as count from book.account a
    join book.movement m on m.storehouse_id = ${storehouseId} and a.account_id in (m.source_id, m.destination_id)
    join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    where a.storehouse_id = ${storehouseId} and a.kind = 'cash_tin' and e.on_day <= ${throughOn}::date
      and e.recorded_at > coalesce((select max(counted_at) from book.cash_count
        where storehouse_id = ${storehouseId}), '-infinity')`);
  return row?.count ?? 0;
}

/** Bags and cans of common stock not counted since the close before, and last counts whose difference is not booked. */
export async function countStockAtClose(tx: Tx, storehouseId: string) {
  const [row] = await tx.execute<{ uncounted: number; differing: number }>(sql`
    with stock as (select a.account_id, a.inflow - a.outflow as grams from book.account a
      join book.owner o on o.storehouse_id = ${storehouseId} and o.owner_id = a.owner_id and o.kind = 'common'
      where a.storehouse_id = ${storehouseId} and a.vessel_kind in ('bag', 'container')),
    last as (select distinct on (k.account_id) k.account_id, k.counted_at,
        k.entry_id is null and k.book_grams <> k.counted_grams as differs
      from book.stock_count k where k.storehouse_id = ${storehouseId}
      order by k.account_id, k.stock_count_id desc)
    select count(*) filter (where s.grams <> 0 and (l.counted_at is null or l.counted_at <= coalesce(
        (select max(closed_at) from book.period_close where storehouse_id = ${storehouseId}), '-infinity')))::int as uncounted,
      count(*) filter (where l.differs)::int as differing
    from stock s left join last l on l.account_id = s.account_id`);
  return { uncounted: row?.uncounted ?? 0, differing: row?.differing ?? 0 };
}

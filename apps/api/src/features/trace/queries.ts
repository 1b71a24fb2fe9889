import type { Tx } from '@sheafbook/db';
import { sql } from 'drizzle-orm';

/** Every bag that was taken in, by its code. Refused ones never held anything of ours. */
export async function listBagCodes(tx: Tx, storehouseId: string): Promise<string[]> {
  const rows = await tx.execute<{ code: string }>(sql`
    select bag_code as code from book.bag where storehouse_id = ${storehouseId} and decision <> 'refused'
    order by bag_code`);
  return rows.map(({ code }) => code);
}

export type TracedBag = {
  readonly bagId: string;
  readonly bagCode: string;
  readonly bagNo: number;
  readonly netGrams: number;
  readonly lotId: string;
  readonly supplierMark: string;
  readonly supplier: string;
  readonly buyId: string;
  readonly buy: string;
  readonly foodEn: string;
  readonly foodEs: string;
  readonly arrivedOn: string;
};

export async function listTracedBags(
  tx: Tx,
  storehouseId: string,
  codes: readonly string[],
): Promise<TracedBag[]> {
  const rows = await tx.execute<Omit<TracedBag, 'netGrams'> & { netGrams: string }>(sql`
    select g.bag_id as "bagId", g.bag_code as "bagCode", g.bag_no as "bagNo", g.net_grams as "netGrams",
      g.lot_id as "lotId", l.supplier_mark as "supplierMark", s.name as supplier, g.buy_id as "buyId", b.name as buy,
      f.name_en as "foodEn", f.name_es as "foodEs", d.arrived_on::text as "arrivedOn"
    from book.bag g
    join book.lot l on l.storehouse_id = ${storehouseId} and l.lot_id = g.lot_id
    join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = l.food_id
    join book.delivery d on d.storehouse_id = ${storehouseId} and d.delivery_id = g.delivery_id
    join book.supplier s on s.storehouse_id = ${storehouseId} and s.supplier_id = d.supplier_id
    join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = g.buy_id
    where g.storehouse_id = ${storehouseId} and g.bag_code = any(${sql.param([...codes])}::text[])`);
  return rows.map((row) => ({ ...row, netGrams: Number(row.netGrams) }));
}

/** Grams that crossed the hem of a bag, or lie in it still: from where, to where, and whose. */
export type TracedStep = {
  readonly bagId: string;
  readonly way: 'in' | 'out' | 'left';
  /** The other vessel's kind, such as supplier, container or eaten; the bag itself for what is left. */
  readonly place: string;
  readonly ownerKind: string;
  readonly ownerName: string | null;
  readonly grams: number;
};

/** Summed by place and owner. What moves from owner to owner inside the bag is no step, since it stays in the bag. */
export async function listTracedSteps(
  tx: Tx,
  storehouseId: string,
  bagIds: readonly string[],
): Promise<TracedStep[]> {
  const ids = sql.param([...bagIds]);
  const rows = await tx.execute<Omit<TracedStep, 'grams'> & { grams: string }>(sql`
    with a as (
      select a.account_id, a.vessel_id, a.vessel_kind, a.owner_id, a.inflow - a.outflow as grams from book.account a
      where a.storehouse_id = ${storehouseId} and a.unit_kind = 'lot'),
    inside as (select * from a where vessel_id = any(${ids}::uuid[])),
    steps as (
      select i.vessel_id as bag_id, 'in' as way, o.vessel_kind as place, i.owner_id, m.amount as grams
      from inside i join book.movement m on m.storehouse_id = ${storehouseId} and m.destination_id = i.account_id
      join a o on o.account_id = m.source_id where o.vessel_id <> i.vessel_id
      union all
      select i.vessel_id, 'out', o.vessel_kind, i.owner_id, m.amount
      from inside i join book.movement m on m.storehouse_id = ${storehouseId} and m.source_id = i.account_id
      join a o on o.account_id = m.destination_id where o.vessel_id <> i.vessel_id
      union all
      select i.vessel_id, 'left', 'bag', i.owner_id, i.grams from inside i where i.grams <> 0)
    select st.bag_id as "bagId", st.way, st.place, o.kind as "ownerKind", h.name as "ownerName",
      sum(st.grams) as grams
    from steps st
    join book.owner o on o.storehouse_id = ${storehouseId} and o.owner_id = st.owner_id
    left join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = st.owner_id
    group by st.bag_id, st.way, st.place, o.kind, h.seat, h.name
    order by st.bag_id, st.way, st.place, h.seat nulls first`);
  return rows.map((row) => ({ ...row, grams: Number(row.grams) }));
}

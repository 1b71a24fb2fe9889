import type { Tx } from '@sheafbook/db';
import { sql } from 'drizzle-orm';

/** Every bag that was taken in, by its code. Refused ones never held anything of ours. */
export async function listBagCodes(tx: Tx, storehouseId: string): Promise<string[]> {
  const rows = await tx.execute<{ code: string }>(sql`
    select bag_code as code from book.bag where storehouse_id = ${storehouseId} and decision <> 'refused'
    order by bag_code`);
  return rows.map(({ code }) => code);
}

/**
 * Containers of common stock, and a household's as far as the storehouse's food was poured into it from a bag. What a
 * household brought or keeps otherwise was never the group's, and is drawn by nobody.
 */
export async function listContainerCodes(tx: Tx, storehouseId: string): Promise<string[]> {
  const rows = await tx.execute<{ code: string }>(sql`
    select c.container_code as code from book.container c
    where c.storehouse_id = ${storehouseId} and (c.household_id is null or exists (
      select from book.account a
      join book.movement m on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id
      join book.account s on s.storehouse_id = ${storehouseId} and s.account_id = m.source_id
      where a.storehouse_id = ${storehouseId} and a.vessel_id = c.container_id and s.vessel_kind = 'bag'))
    order by c.container_code`);
  return rows.map(({ code }) => code);
}

/** Entries that moved money, each with its number after a hash sign: no bag and no container has such a code. */
export async function listMoneyEntries(tx: Tx, storehouseId: string) {
  const rows = await tx.execute<{ entryId: string; code: string }>(sql`
    select e.entry_id as "entryId", '#' || e.entry_no as code from book.entry e
    where e.storehouse_id = ${storehouseId} and exists (
      select from book.movement m
      join book.account a on a.storehouse_id = ${storehouseId} and a.account_id = m.source_id
      where m.storehouse_id = ${storehouseId} and m.entry_id = e.entry_id and a.unit_kind = 'currency')
    order by e.entry_no`);
  return [...rows];
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

export type TracedContainer = {
  readonly containerId: string;
  readonly containerCode: string;
  /** Null for common stock. */
  readonly householdId: string | null;
  readonly kindEn: string;
  readonly kindEs: string;
  readonly packedOn: string;
  readonly foodEn: string;
  readonly foodEs: string;
  readonly supplier: string | null;
  readonly supplierMark: string;
  readonly buyId: string | null;
  readonly buy: string | null;
  /** How an opening stock or a gift came, where no buy brought it. */
  readonly originNote: string;
  /** The import that brought it into the book, if one did. */
  readonly importNo: number | null;
  /** The bags that were poured into it, each with the day of its delivery. */
  readonly bags: readonly { readonly bagCode: string; readonly arrivedOn: string; readonly grams: number }[];
};

/** Containers on their way back: lot, buy and supplier, the bags that were poured in and when those arrived. */
export async function listTracedContainers(
  tx: Tx,
  storehouseId: string,
  codes: readonly string[],
): Promise<TracedContainer[]> {
  const rows = await tx.execute<TracedContainer>(sql`
    select c.container_id as "containerId", c.container_code as "containerCode", c.household_id as "householdId",
      k.name_en as "kindEn", k.name_es as "kindEs", c.packed_on::text as "packedOn", f.name_en as "foodEn",
      f.name_es as "foodEs", s.name as supplier, l.supplier_mark as "supplierMark", b.buy_id as "buyId", b.name as buy,
      l.origin_note as "originNote", (
        select min(i.import_no) from book.account a
        join book.movement m on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id
        join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
        join book.import i on i.storehouse_id = ${storehouseId} and i.import_id = e.subject_id
        where a.storehouse_id = ${storehouseId} and a.vessel_id = c.container_id) as "importNo", (
        select coalesce(jsonb_agg(jsonb_build_object('bagCode', p.bag_code, 'arrivedOn', p.arrived_on, 'grams', p.grams)
          order by p.bag_code), '[]')
        from (select g.bag_code, d.arrived_on, sum(m.amount) as grams from book.account a
          join book.movement m on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id
          join book.account o on o.storehouse_id = ${storehouseId} and o.account_id = m.source_id
          join book.bag g on g.storehouse_id = ${storehouseId} and g.bag_id = o.vessel_id
          join book.delivery d on d.storehouse_id = ${storehouseId} and d.delivery_id = g.delivery_id
          where a.storehouse_id = ${storehouseId} and a.vessel_id = c.container_id
          group by g.bag_code, d.arrived_on) p) as bags
    from book.container c
    join book.container_kind k on k.storehouse_id = ${storehouseId} and k.container_kind_id = c.container_kind_id
    join book.lot l on l.storehouse_id = ${storehouseId} and l.lot_id = c.lot_id
    join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = l.food_id
    left join book.supplier s on s.storehouse_id = ${storehouseId} and s.supplier_id = l.supplier_id
    left join book.buy_line bl on bl.storehouse_id = ${storehouseId} and bl.buy_line_id = l.buy_line_id
    left join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = bl.buy_id
    where c.storehouse_id = ${storehouseId} and c.container_code = any(${sql.param([...codes])}::text[])`);
  return [...rows];
}

/** Grams that crossed the hem of a bag or the brim of a container, or lie in it still: from where, to where, whose. */
export type TracedStep = {
  readonly vesselId: string;
  readonly way: 'in' | 'out' | 'left';
  /** The other vessel's kind, such as supplier, container or eaten; its own for what is left. */
  readonly place: string;
  readonly ownerKind: string;
  readonly ownerName: string | null;
  readonly grams: number;
};

/** Summed by place and owner. What moves from owner to owner inside a vessel is no step, since it stays in there. */
export async function listTracedSteps(
  tx: Tx,
  storehouseId: string,
  vesselIds: readonly string[],
): Promise<TracedStep[]> {
  const ids = sql.param([...vesselIds]);
  const rows = await tx.execute<Omit<TracedStep, 'grams'> & { grams: string }>(sql`
    with a as (
      select a.account_id, a.vessel_id, a.vessel_kind, a.owner_id, a.inflow - a.outflow as grams from book.account a
      where a.storehouse_id = ${storehouseId} and a.unit_kind = 'lot'),
    inside as (select * from a where vessel_id = any(${ids}::uuid[])),
    steps as (
      select i.vessel_id, 'in' as way, o.vessel_kind as place, i.owner_id, m.amount as grams
      from inside i join book.movement m on m.storehouse_id = ${storehouseId} and m.destination_id = i.account_id
      join a o on o.account_id = m.source_id where o.vessel_id <> i.vessel_id
      union all
      select i.vessel_id, 'out', o.vessel_kind, i.owner_id, m.amount
      from inside i join book.movement m on m.storehouse_id = ${storehouseId} and m.source_id = i.account_id
      join a o on o.account_id = m.destination_id where o.vessel_id <> i.vessel_id
      union all
      select i.vessel_id, 'left', i.vessel_kind, i.owner_id, i.grams from inside i where i.grams <> 0)
    select st.vessel_id as "vesselId", st.way, st.place, o.kind as "ownerKind", h.name as "ownerName",
      sum(st.grams) as grams
    from steps st
    join book.owner o on o.storehouse_id = ${storehouseId} and o.owner_id = st.owner_id
    left join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = st.owner_id
    group by st.vessel_id, st.way, st.place, o.kind, h.seat, h.name
    order by st.vessel_id, st.way, st.place, h.seat nulls first`);
  return rows.map((row) => ({ ...row, grams: Number(row.grams) }));
}

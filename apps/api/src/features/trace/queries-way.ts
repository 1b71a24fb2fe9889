import type { Tx } from '@sheafbook/db';
import type { TraceMovement, TracePoint, VesselKind } from '@sheafbook/ledger';
import type { LinePour } from '@sheafbook/packing';
import { sql } from 'drizzle-orm';
import type { Found } from './queries-find.ts';

type Kindless = Pick<Found, 'kind' | 'id'>;

/** The vessels in which the way of a thing begins. */
export async function listStartVessels(
  tx: Tx,
  storehouseId: string,
  { kind, id }: Kindless,
): Promise<string[]> {
  const rows = await tx.execute<{ id: string }>(sql`
    with lots as (
      select l.lot_id from book.lot l where l.storehouse_id = ${storehouseId} and ((${kind} = 'lot' and l.lot_id = ${id})
        or (${kind} = 'mark' and exists (select from book.lot x where x.storehouse_id = l.storehouse_id
          and x.lot_id = ${id} and x.supplier_mark = l.supplier_mark
          and x.supplier_id is not distinct from l.supplier_id))))
    select g.bag_id as id from book.bag g where g.storehouse_id = ${storehouseId} and g.decision <> 'refused'
      and (g.lot_id in (select lot_id from lots) or (${kind} = 'delivery' and g.delivery_id = ${id}))
    union
    select c.container_id from book.container c
      where c.storehouse_id = ${storehouseId} and c.lot_id in (select lot_id from lots)
    union
    select p.container_id from book.line_closed p where ${kind} = 'session' and p.storehouse_id = ${storehouseId}
      and p.packing_session_id = ${id} and p.undone_entry_id is null
    union
    select i.container_id from book.gift_line i where ${kind} = 'manifest' and i.storehouse_id = ${storehouseId}
      and i.gift_manifest_id = ${id}
    union
    select s.container_id from book.container_place s where ${kind} = 'place' and s.storehouse_id = ${storehouseId}
      and s.place_id = ${id} and exists (select from book.account a where a.storehouse_id = s.storehouse_id
        and a.vessel_id = s.container_id and a.inflow > a.outflow)
    union
    select v.vessel_id from book.vessel v where ${kind} in ('bag', 'container', 'kitchen')
      and v.storehouse_id = ${storehouseId} and v.vessel_id = ${id}
    order by 1`);
  return rows.map((row) => row.id);
}

type MovementRow = Pick<TraceMovement, 'entryId' | 'reversesEntryId' | 'end'> & {
  readonly lotId: string;
  readonly fromId: string;
  readonly fromKind: VesselKind;
  readonly fromOwner: string;
  readonly toId: string;
  readonly toKind: VesselKind;
  readonly toOwner: string;
  readonly grams: string;
};

/** Every movement of the lots that these vessels ever held, oldest first; what went to a pantry names it. */
export async function listLotMovements(
  tx: Tx,
  storehouseId: string,
  vesselIds: readonly string[],
): Promise<TraceMovement[]> {
  const rows = await tx.execute<MovementRow>(sql`
    select m.entry_id as "entryId", e.reverses_id as "reversesEntryId", m.unit_id as "lotId",
      s.vessel_id as "fromId", s.vessel_kind as "fromKind", s.owner_id as "fromOwner",
      d.vessel_id as "toId", d.vessel_kind as "toKind", d.owner_id as "toOwner", m.amount as grams,
      case when d.vessel_kind = 'given' then coalesce(p.name, '') else '' end as "end"
    from book.account s
    join book.movement m on m.storehouse_id = ${storehouseId} and m.source_id = s.account_id
    join book.account d on d.storehouse_id = ${storehouseId} and d.account_id = m.destination_id
    join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    left join book.gift_manifest g on g.storehouse_id = ${storehouseId} and g.entry_id = e.entry_id
    left join book.pantry p on p.storehouse_id = ${storehouseId} and p.pantry_id = g.pantry_id
    where s.storehouse_id = ${storehouseId} and s.kind = 'mass' and s.unit_id in (
      select a.unit_id from book.account a where a.storehouse_id = ${storehouseId} and a.kind = 'mass'
        and a.vessel_id = any(${sql.param([...vesselIds])}::uuid[]))
    order by e.entry_no, m.line`);
  return rows.map(({ entryId, reversesEntryId, end, grams, lotId, ...row }) => ({
    ...{ entryId, reversesEntryId, end, amountGrams: Number(grams) },
    source: { vesselId: row.fromId, vesselKind: row.fromKind, ownerId: row.fromOwner, lotId },
    destination: { vesselId: row.toId, vesselKind: row.toKind, ownerId: row.toOwner, lotId },
  }));
}

/** The grams that the book itself counts in some vessels, by its running totals: what a walk must come to. */
export async function sumBooked(
  tx: Tx,
  storehouseId: string,
  points: readonly Pick<TracePoint, 'vesselId' | 'lotId' | 'ownerId'>[],
): Promise<number> {
  const list = (of: 'vesselId' | 'lotId' | 'ownerId') => sql.param(points.map((point) => point[of]));
  const [row] = await tx.execute<{ grams: string }>(sql`
    select coalesce(sum(a.inflow - a.outflow), 0) as grams
    from book.account a join unnest(${list('vesselId')}::uuid[], ${list('lotId')}::uuid[], ${list('ownerId')}::uuid[])
      w (vessel_id, lot_id, owner_id) on w.vessel_id = a.vessel_id and w.lot_id = a.unit_id and w.owner_id = a.owner_id
    where a.storehouse_id = ${storehouseId} and a.kind = 'mass'`);
  return Number(row?.grams ?? 0);
}

export type WayLot = {
  readonly lotId: string;
  readonly foodId: string;
  readonly foodEn: string;
  readonly foodEs: string;
  readonly allergens: readonly string[];
  readonly mark: string;
  readonly harvestYear: number | null;
  readonly supplierId: string | null;
  readonly supplier: string | null;
  readonly buyId: string | null;
  readonly buy: string | null;
  readonly orderNos: readonly number[];
  readonly deliveries: readonly { readonly id: string; readonly arrivedOn: string; readonly bags: number }[];
};

/** Where lots came from: food, mark, supplier, buy and its orders, and the deliveries that brought bags of them. */
export async function listWayLots(
  tx: Tx,
  storehouseId: string,
  lotIds: readonly string[],
): Promise<WayLot[]> {
  const rows = await tx.execute<WayLot>(sql`
    select l.lot_id as "lotId", f.food_id as "foodId", f.name_en as "foodEn", f.name_es as "foodEs", f.allergens,
      l.supplier_mark as mark, l.harvest_year as "harvestYear", s.supplier_id as "supplierId", s.name as supplier,
      b.buy_id as "buyId", b.name as buy,
      (select coalesce(jsonb_agg(o.order_no order by o.order_no), '[]') from book.supplier_order o
        where o.storehouse_id = ${storehouseId} and o.buy_id = b.buy_id and o.supplier_id = l.supplier_id) as "orderNos",
      (select coalesce(jsonb_agg(jsonb_build_object('id', x.delivery_id, 'arrivedOn', x.arrived_on, 'bags', x.bags)
          order by x.arrived_on, x.delivery_id), '[]')
        from (select d.delivery_id, d.arrived_on, count(*) as bags from book.bag g
          join book.delivery d on d.storehouse_id = ${storehouseId} and d.delivery_id = g.delivery_id
          where g.storehouse_id = ${storehouseId} and g.lot_id = l.lot_id and g.decision <> 'refused'
          group by d.delivery_id, d.arrived_on) x) as deliveries
    from book.lot l
    join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = l.food_id
    left join book.supplier s on s.storehouse_id = ${storehouseId} and s.supplier_id = l.supplier_id
    left join book.buy_line bl on bl.storehouse_id = ${storehouseId} and bl.buy_line_id = l.buy_line_id
    left join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = bl.buy_id
    where l.storehouse_id = ${storehouseId} and l.lot_id = any(${sql.param([...lotIds])}::uuid[])
    order by f.name_en, l.supplier_mark, l.lot_id`);
  return [...rows];
}

export type WayVessel = {
  readonly vesselId: string;
  readonly code: string;
  /** Null for common stock and for bags, in which several may have a part. */
  readonly householdId: string | null;
  readonly bagNo: number | null;
  readonly kindEn: string | null;
  readonly kindEs: string | null;
  readonly packedOn: string | null;
  readonly sessionId: string | null;
  readonly session: string | null;
  readonly line: number | null;
  readonly serial: number | null;
  readonly isHeld: boolean;
};

/** What is written on bags and containers, on which packing day a line closed them, and whether they are on hold. */
export async function listWayVessels(
  tx: Tx,
  storehouseId: string,
  vesselIds: readonly string[],
): Promise<WayVessel[]> {
  const rows = await tx.execute<WayVessel>(sql`
    select v.vessel_id as "vesselId", coalesce(g.bag_code, c.container_code) as code, c.household_id as "householdId",
      g.bag_no as "bagNo",
      k.name_en as "kindEn", k.name_es as "kindEs", c.packed_on::text as "packedOn",
      s.packing_session_id as "sessionId", s.name as session, p.line, p.serial,
      exists (select from book.held x where x.storehouse_id = ${storehouseId} and x.vessel_id = v.vessel_id) as "isHeld"
    from book.vessel v
    left join book.bag g on g.storehouse_id = ${storehouseId} and g.bag_id = v.vessel_id
    left join book.container c on c.storehouse_id = ${storehouseId} and c.container_id = v.vessel_id
    left join book.container_kind k on k.storehouse_id = ${storehouseId} and k.container_kind_id = c.container_kind_id
    left join book.line_closed p on p.storehouse_id = ${storehouseId} and p.container_id = v.vessel_id
      and p.undone_entry_id is null
    left join book.packing_session s on s.storehouse_id = ${storehouseId} and s.packing_session_id = p.packing_session_id
    where v.storehouse_id = ${storehouseId} and v.vessel_id = any(${sql.param([...vesselIds])}::uuid[])
      and coalesce(g.bag_id, c.container_id) is not null`);
  return [...rows];
}

export type WayOwner = { readonly ownerId: string; readonly kind: string; readonly name: string | null };

export async function listWayOwners(
  tx: Tx,
  storehouseId: string,
  ownerIds: readonly string[],
): Promise<WayOwner[]> {
  const rows = await tx.execute<WayOwner>(sql`
    select o.owner_id as "ownerId", o.kind, h.name from book.owner o
    left join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = o.owner_id
    where o.storehouse_id = ${storehouseId} and o.owner_id = any(${sql.param([...ownerIds])}::uuid[])
    order by h.seat nulls first, o.owner_id`);
  return [...rows];
}

export type WayPour = Omit<LinePour, 'carries'> & {
  readonly code: string;
  readonly householdId: string | null;
  readonly foodEn: string;
  readonly foodEs: string;
  readonly allergens: readonly string[];
  readonly gluten: string;
  readonly isThere: boolean;
};

/** Everything that was closed on the lines that closed one of these containers. */
export async function listLinePours(
  tx: Tx,
  storehouseId: string,
  containerIds: readonly string[],
): Promise<WayPour[]> {
  const rows = await tx.execute<WayPour>(sql`
    select p.container_id as "containerId", p.packing_session_id as "sessionId", p.line, p.serial, f.allergens, f.gluten,
      c.container_code as code, c.household_id as "householdId", f.name_en as "foodEn", f.name_es as "foodEs",
      exists (select from book.account a where a.storehouse_id = ${storehouseId} and a.vessel_id = c.container_id
        and a.inflow > a.outflow) as "isThere"
    from book.line_closed p
    join book.container c on c.storehouse_id = ${storehouseId} and c.container_id = p.container_id
    join book.lot l on l.storehouse_id = ${storehouseId} and l.lot_id = c.lot_id
    join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = l.food_id
    where p.storehouse_id = ${storehouseId} and p.undone_entry_id is null
      and (p.packing_session_id, p.line) in (select x.packing_session_id, x.line from book.line_closed x
        where x.storehouse_id = ${storehouseId} and x.undone_entry_id is null
          and x.container_id = any(${sql.param([...containerIds])}::uuid[]))`);
  return [...rows];
}

export type WayHold = { readonly id: string; readonly scope: string; readonly reason: string };

/** The holds that stand on some vessels, oldest first. */
export async function listHoldsOn(
  tx: Tx,
  storehouseId: string,
  vesselIds: readonly string[],
): Promise<WayHold[]> {
  const rows = await tx.execute<WayHold>(sql`
    select h.hold_id as id, h.scope, h.reason from book.hold h
    where h.storehouse_id = ${storehouseId} and h.released_at is null and exists (select from book.hold_vessel v
      where v.storehouse_id = ${storehouseId} and v.hold_id = h.hold_id and v.ended_at is null
        and v.vessel_id = any(${sql.param([...vesselIds])}::uuid[]))
    order by h.hold_id`);
  return [...rows];
}

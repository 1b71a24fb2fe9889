import type { Tx } from '@sheafbook/db';
import type { HoldRow } from '@sheafbook/db/tables';
import { sql } from 'drizzle-orm';

type OfHold = Pick<HoldRow, 'storehouseId' | 'holdId'>;

/** A bag or container as a recall notice names it, with what is left in it by the book. */
export type NoticePart = {
  readonly vesselId: string;
  readonly code: string;
  readonly kindEn: string | null;
  readonly kindEs: string | null;
  readonly foodEn: string;
  readonly foodEs: string;
  readonly grams: number;
};

/** The vessels that a notice names: what a hold reached, and of a bag's hold the containers of its lot, which are not held. */
const namedBy = ({ storehouseId, holdId }: OfHold) => sql`
  select v.vessel_id from book.hold_vessel v where v.storehouse_id = ${storehouseId} and v.hold_id = ${holdId}
  union
  select c.container_id from book.hold h
  join book.bag b on b.storehouse_id = h.storehouse_id and b.bag_id = h.bag_id
  join book.container c on c.storehouse_id = h.storehouse_id and c.lot_id = b.lot_id
  where h.storehouse_id = ${storehouseId} and h.hold_id = ${holdId}`;

/** What a household has or had in what a hold reached, by code, and what else of it the household was told of. */
export async function listNoticeParts(
  tx: Tx,
  { storehouseId, holdId }: OfHold,
  householdId: string,
): Promise<NoticePart[]> {
  const rows = await tx.execute<Omit<NoticePart, 'grams'> & { grams: string }>(sql`
    select o.vessel_id as "vesselId", coalesce(b.bag_code, c.container_code) as code, k.name_en as "kindEn",
      k.name_es as "kindEs", f.name_en as "foodEn", f.name_es as "foodEs", a.inflow - a.outflow as grams
    from (${namedBy({ storehouseId, holdId })}) o
    join book.account a on a.storehouse_id = ${storehouseId} and a.vessel_id = o.vessel_id and a.kind = 'mass'
      and a.owner_id = ${householdId} and a.inflow > 0
    join book.lot l on l.storehouse_id = a.storehouse_id and l.lot_id = a.unit_id
    join book.food f on f.storehouse_id = l.storehouse_id and f.food_id = l.food_id
    left join book.bag b on b.storehouse_id = a.storehouse_id and b.bag_id = a.vessel_id
    left join book.container c on c.storehouse_id = a.storehouse_id and c.container_id = a.vessel_id
    left join book.container_kind k on k.storehouse_id = c.storehouse_id and k.container_kind_id = c.container_kind_id
    order by b.bag_code is null, 2`);
  return rows.map((row) => ({ ...row, grams: Number(row.grams) }));
}

/** The codes on the notices of some households. Needs the task `notice`. */
export async function listPartsOf(
  tx: Tx,
  { storehouseId, holdId }: OfHold,
  householdIds: readonly string[],
): Promise<{ householdId: string; code: string }[]> {
  const rows = await tx.execute<{ householdId: string; code: string }>(sql`
    select a.owner_id as "householdId", coalesce(b.bag_code, c.container_code) as code
    from (${namedBy({ storehouseId, holdId })}) o
    join book.account a on a.storehouse_id = ${storehouseId} and a.vessel_id = o.vessel_id and a.kind = 'mass'
      and a.owner_id = any(${sql.param([...householdIds])}::uuid[]) and a.inflow > 0
    left join book.bag b on b.storehouse_id = a.storehouse_id and b.bag_id = a.vessel_id
    left join book.container c on c.storehouse_id = a.storehouse_id and c.container_id = a.vessel_id
    order by b.bag_code is null, 2`);
  return [...rows];
}

/** What a pantry took of what a hold reached, or has on the way: each container by the manifest that it went by. */
export type GivenPart = NoticePart & { readonly manifestNo: number; readonly onDay: string };

export async function listGivenParts(
  tx: Tx,
  { storehouseId, holdId }: OfHold,
  pantryId: string,
): Promise<GivenPart[]> {
  const rows = await tx.execute<Omit<GivenPart, 'grams'> & { grams: string }>(sql`
    select c.container_id as "vesselId", c.container_code as code, k.name_en as "kindEn", k.name_es as "kindEs", f.name_en as "foodEn",
      f.name_es as "foodEs", i.grams, m.manifest_no as "manifestNo", m.on_day::text as "onDay"
    from book.hold_vessel v
    join book.gift_line i on i.storehouse_id = v.storehouse_id and i.container_id = v.vessel_id
      and i.is_accepted is distinct from false
    join book.gift_manifest m on m.storehouse_id = v.storehouse_id and m.gift_manifest_id = i.gift_manifest_id
      and m.stage <> 'called-off' and m.pantry_id = ${pantryId}
    join book.container c on c.storehouse_id = v.storehouse_id and c.container_id = v.vessel_id
    join book.container_kind k on k.storehouse_id = c.storehouse_id and k.container_kind_id = c.container_kind_id
    join book.lot l on l.storehouse_id = c.storehouse_id and l.lot_id = c.lot_id
    join book.food f on f.storehouse_id = l.storehouse_id and f.food_id = l.food_id
    where v.storehouse_id = ${storehouseId} and v.hold_id = ${holdId}
    order by m.manifest_no, c.container_code`);
  return rows.map((row) => ({ ...row, grams: Number(row.grams) }));
}

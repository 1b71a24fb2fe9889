import type { Tx } from '@sheafbook/db';
import type { BagRow, HoldRow } from '@sheafbook/db/tables';
import { sql } from 'drizzle-orm';
import { pathIn } from '../../platform/path-in.ts';

/** A household with food of a bag's lot: in the bag itself, and in containers of its own by their codes. */
export type OwnerOfLot = {
  readonly householdId: string;
  readonly isInBag: boolean;
  readonly containerCodes: readonly string[];
};

/** Everybody who owns something in a bag, or has something of its lot poured into a container. */
export async function listOwnersOfLot(
  tx: Tx,
  storehouseId: string,
  { bagId, lotId }: Pick<BagRow, 'bagId' | 'lotId'>,
): Promise<OwnerOfLot[]> {
  return tx.execute<OwnerOfLot>(sql`
    select "householdId", bool_or(code is null) as "isInBag",
      coalesce(array_agg(code order by code) filter (where code is not null), '{}') as "containerCodes"
    from (
      select h.household_id as "householdId", null as code
      from book.account a
      join book.household h on h.storehouse_id = a.storehouse_id and h.household_id = a.owner_id
      where a.storehouse_id = ${storehouseId} and a.kind = 'mass' and a.vessel_id = ${bagId} and a.inflow > a.outflow
      union all
      select c.household_id, c.container_code
      from book.container c
      join book.account a on a.storehouse_id = c.storehouse_id and a.kind = 'mass'
        and a.vessel_id = c.container_id and a.owner_id = c.household_id and a.inflow > a.outflow
      where c.storehouse_id = ${storehouseId} and c.lot_id = ${lotId}
    ) held
    group by "householdId" order by "householdId"`);
}

/** A household with a part in what a hold reached: the codes with something of its own in them, and what it used up. */
export type Concerned = {
  readonly householdId: string;
  readonly codes: readonly string[];
  readonly usedGrams: number;
};

/** Everybody who has something in what a hold reached, or ate it or gave it away, in the order of their seats. */
export async function listConcerned(
  tx: Tx,
  { storehouseId, holdId }: Pick<HoldRow, 'storehouseId' | 'holdId'>,
): Promise<Concerned[]> {
  const rows = await tx.execute<Omit<Concerned, 'usedGrams'> & { usedGrams: string }>(sql`
    with own as (
      select a.account_id, a.owner_id, a.inflow > a.outflow as has_some, coalesce(b.bag_code, c.container_code) as code
      from book.hold_vessel v
      join book.account a on a.storehouse_id = v.storehouse_id and a.vessel_id = v.vessel_id and a.kind = 'mass'
      left join book.bag b on b.storehouse_id = v.storehouse_id and b.bag_id = v.vessel_id
      left join book.container c on c.storehouse_id = v.storehouse_id and c.container_id = v.vessel_id
      where v.storehouse_id = ${storehouseId} and v.hold_id = ${holdId}),
    used as (
      select o.owner_id, sum(m.amount) as grams from own o
      join book.movement m on m.storehouse_id = ${storehouseId} and m.source_id = o.account_id
      join book.account d on d.storehouse_id = ${storehouseId} and d.account_id = m.destination_id
        and d.vessel_kind in ('kitchen', 'eaten', 'given', 'animals', 'composted')
      join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id and e.reverses_id is null
      where not exists (select from book.entry u where u.storehouse_id = ${storehouseId} and u.reverses_id = e.entry_id)
      group by o.owner_id)
    select h.household_id as "householdId", coalesce(u.grams, 0) as "usedGrams",
      coalesce(array_agg(o.code order by o.code) filter (where o.has_some), '{}') as codes
    from own o
    join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = o.owner_id and h.left_on is null
    left join used u on u.owner_id = o.owner_id
    group by h.household_id, h.seat, u.grams
    having bool_or(o.has_some) or u.grams > 0
    order by h.seat`);
  return rows.map((row) => ({ ...row, usedGrams: Number(row.usedGrams) }));
}

/** Where notices of a hold lead to, by which it is known whom they told. */
export const pathOf = ({ storehouseId, holdId }: Pick<HoldRow, 'storehouseId' | 'holdId'>): string =>
  pathIn(storehouseId, `/holds/${holdId}`);

/** The households that were told of a hold, though they may have eaten what they had. Needs the task `notice`. */
export async function listToldOfHold(tx: Tx, storehouseId: string, holdId: string): Promise<string[]> {
  const rows = await tx.execute<{ householdId: string }>(sql`
    select distinct n.household_id as "householdId"
    from book.notice n
    join book.household h on h.storehouse_id = n.storehouse_id and h.household_id = n.household_id
    where n.storehouse_id = ${storehouseId} and n.kind = 'held' and h.left_on is null
      and n.path = ${pathOf({ storehouseId, holdId })}
    order by 1`);
  return rows.map(({ householdId }) => householdId);
}

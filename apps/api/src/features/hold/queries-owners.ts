import type { Tx } from '@sheafbook/db';
import type { BagRow } from '@sheafbook/db/tables';
import { sql } from 'drizzle-orm';

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

/** The households that were told of a hold, though they may have eaten what they had. Needs the task `notice`. */
export async function listToldOfHold(tx: Tx, storehouseId: string, holdId: string): Promise<string[]> {
  const rows = await tx.execute<{ householdId: string }>(sql`
    select distinct n.household_id as "householdId"
    from book.notice n
    join book.household h on h.storehouse_id = n.storehouse_id and h.household_id = n.household_id
    where n.storehouse_id = ${storehouseId} and n.kind = 'held' and h.left_on is null
      and n.path = ${`/api/storehouses/${storehouseId}/holds/${holdId}`}
    order by 1`);
  return rows.map(({ householdId }) => householdId);
}

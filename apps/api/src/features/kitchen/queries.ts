import type { Tx } from '@sheafbook/db';
import { accounts, type FoodRow, foods, heldInKitchen, lots, vessels } from '@sheafbook/db/tables';
import { and, eq, gt, type SQL, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

type Subject = { readonly storehouseId: string; readonly householdId: string };

/** A lot in a kitchen, and the hold that stands on what some of it came out of. */
export type KitchenLot = {
  readonly lotId: string;
  readonly food: FoodRow;
  readonly grams: number;
  readonly holdId: string | null;
};

/** Standing or undone, one taking of grams out of a container. */
export type TakeRow = {
  readonly entryId: string;
  readonly onDay: string;
  readonly lotId: string;
  readonly grams: number;
  readonly containerId: string;
  readonly containerCode: string;
  readonly hasOpenedIt: boolean;
  readonly isUndone: boolean;
};

/** A household's kitchen is the vessel with its own id. */
export async function ensureKitchen(tx: Tx, { storehouseId, householdId }: Subject): Promise<void> {
  await tx
    .insert(vessels)
    .values({ storehouseId, vesselId: householdId, kind: 'kitchen' })
    .onConflictDoNothing();
}

/** What is in the kitchen, lot by lot. */
export async function listKitchen(tx: Tx, { storehouseId, householdId }: Subject): Promise<KitchenLot[]> {
  return tx
    .select({
      lotId: lots.lotId,
      food: foods,
      grams: sql<number>`${accounts.inflow} - ${accounts.outflow}`.mapWith(Number),
      holdId: sql<string | null>`(select ${heldInKitchen.holdId} from ${heldInKitchen}
        where ${heldInKitchen.storehouseId} = ${accounts.storehouseId}
        and ${heldInKitchen.householdId} = ${accounts.vesselId} and ${heldInKitchen.lotId} = ${accounts.unitId}
        order by 1 limit 1)`,
    })
    .from(accounts)
    .innerJoin(lots, joinOn(lots, accounts, 'lotId', 'unitId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.vesselId, householdId),
        eq(accounts.vesselKind, 'kitchen'),
        gt(accounts.inflow, accounts.outflow),
      ),
    )
    .orderBy(foods.foodCode, lots.lotId);
}

const takesWhere = (tx: Tx, { storehouseId, householdId }: Subject, condition: SQL) =>
  tx.execute<Omit<TakeRow, 'grams'> & { grams: string }>(sql`
    select e.entry_id as "entryId", e.on_day::text as "onDay", m.unit_id as "lotId", m.amount as grams,
      c.container_id as "containerId", c.container_code as "containerCode",
      e.what = 'opened-to-kitchen' as "hasOpenedIt",
      exists (select from book.entry later where later.storehouse_id = e.storehouse_id
        and later.reverses_id = e.entry_id) as "isUndone"
    from book.account k
    join book.movement m on m.storehouse_id = k.storehouse_id and m.destination_id = k.account_id
    join book.entry e on e.storehouse_id = m.storehouse_id and e.entry_id = m.entry_id
      and e.what in ('opened-to-kitchen', 'taken-to-kitchen')
    join book.account f on f.storehouse_id = m.storehouse_id and f.account_id = m.source_id
    join book.container c on c.storehouse_id = f.storehouse_id and c.container_id = f.vessel_id
    where k.storehouse_id = ${storehouseId} and k.vessel_id = ${householdId} and k.vessel_kind = 'kitchen' and ${condition}
    order by e.entry_no desc`);

/** What was taken to the kitchen and not put back, of the lots that still lie there, the latest first. */
export async function listTakes(tx: Tx, subject: Subject): Promise<TakeRow[]> {
  const stands = sql`not exists (select from book.entry later where later.storehouse_id = e.storehouse_id
    and later.reverses_id = e.entry_id) and k.inflow > k.outflow`;
  const rows = await takesWhere(tx, subject, stands);
  return rows.map((row) => ({ ...row, grams: Number(row.grams) }));
}

/** One taking of this household's; a neighbour's is not there. */
export async function loadTake(tx: Tx, subject: Subject, entryId: string): Promise<TakeRow> {
  const [row] = await takesWhere(tx, subject, sql`e.entry_id = ${entryId}`);
  if (!row) throw new Problem('thing-not-found', { thing: 'take' });
  return { ...row, grams: Number(row.grams) };
}

/** Whether anything else that stands took grams out of a container. */
export async function hasOtherUses(
  tx: Tx,
  storehouseId: string,
  { containerId, entryId }: { containerId: string; entryId: string },
): Promise<boolean> {
  const [row] = await tx.execute<{ has: boolean }>(sql`
    select exists (select from book.account f
      join book.movement m on m.storehouse_id = f.storehouse_id and m.source_id = f.account_id
      join book.entry e on e.storehouse_id = m.storehouse_id and e.entry_id = m.entry_id and e.reverses_id is null
      where f.storehouse_id = ${storehouseId} and f.vessel_id = ${containerId} and e.entry_id <> ${entryId}
        and not exists (select from book.entry later where later.storehouse_id = e.storehouse_id
          and later.reverses_id = e.entry_id)) as has`);
  return row?.has ?? false;
}

import type { Tx } from '@sheafbook/db';
import { type HoldAnswerRow, type HoldRow, holdAnswers } from '@sheafbook/db/tables';
import { and, eq, sql } from 'drizzle-orm';
import { pathOf } from './queries-owners.ts';

type OfHold = Pick<HoldRow, 'storehouseId' | 'holdId'>;

/** Where a hold stands: on a whole bag or container, or on a lot in a kitchen. */
const standingOn = ({ storehouseId, holdId }: OfHold) => sql`
  select v.vessel_id, null::uuid as lot_id from book.hold_vessel v
  where v.storehouse_id = ${storehouseId} and v.hold_id = ${holdId} and v.ended_at is null
  union all
  select k.household_id, k.lot_id from book.held_in_kitchen k
  where k.storehouse_id = ${storehouseId} and k.hold_id = ${holdId}`;

/** A household that a hold was told to, with what it still has of it and what it said. */
export type InRecall = {
  readonly householdId: string;
  readonly name: string;
  readonly vessels: number;
  readonly grams: number;
  readonly acknowledgedAt: string | null;
  readonly isTold: boolean;
  readonly answer: {
    readonly hasSome: boolean;
    readonly eatenOn: string | null;
    readonly givenOn: string | null;
    readonly note: string;
    readonly answeredAt: string;
  } | null;
};

/** Every household that was told of a hold or has some of it, in the order of seats. Needs the task `notice`. */
export async function listInRecall(tx: Tx, { storehouseId, holdId }: OfHold): Promise<InRecall[]> {
  const path = pathOf({ storehouseId, holdId });
  const rows = await tx.execute<Omit<InRecall, 'grams' | 'vessels'> & { grams: string; vessels: string }>(sql`
    with has as (
      select a.owner_id, count(distinct a.vessel_id) as vessels, sum(a.inflow - a.outflow) as grams
      from (${standingOn({ storehouseId, holdId })}) v
      join book.account a on a.storehouse_id = ${storehouseId} and a.vessel_id = v.vessel_id and a.inflow > a.outflow
        and (v.lot_id is null or a.unit_id = v.lot_id)
      group by a.owner_id),
    told as (
      select n.household_id, min(r.acknowledged_at) as acknowledged_at
      from book.notice n
      left join book.notice_acknowledged r on r.storehouse_id = n.storehouse_id and r.notice_id = n.notice_id
        and r.household_id = n.household_id
      where n.storehouse_id = ${storehouseId} and n.kind = 'held' and n.path = ${path}
      group by n.household_id)
    select h.household_id as "householdId", h.name, coalesce(x.vessels, 0) as vessels, coalesce(x.grams, 0) as grams,
      t.household_id is not null as "isTold", t.acknowledged_at as "acknowledgedAt",
      case when w.household_id is null then null else jsonb_build_object('hasSome', w.has_some, 'eatenOn', w.eaten_on,
        'givenOn', w.given_on, 'note', w.note, 'answeredAt', w.answered_at) end as answer
    from book.household h
    left join has x on x.owner_id = h.household_id
    left join told t on t.household_id = h.household_id
    left join book.hold_answer w on w.storehouse_id = h.storehouse_id and w.hold_id = ${holdId}
      and w.household_id = h.household_id
    where h.storehouse_id = ${storehouseId} and h.left_on is null
      and (x.owner_id is not null or t.household_id is not null or w.household_id is not null)
    order by h.seat`);
  return rows.map((row) => ({ ...row, grams: Number(row.grams), vessels: Number(row.vessels) }));
}

export type PantryInRecall = {
  readonly pantryId: string;
  readonly pantry: string;
  readonly contactDuty: string;
  readonly contact: string;
  readonly manifestNo: number;
  readonly onDay: string;
  readonly codes: readonly string[];
  readonly grams: number;
};

/** Pantries that took some of what a hold reached, or have it on the way, by manifest. */
export async function listPantriesIn(tx: Tx, { storehouseId, holdId }: OfHold): Promise<PantryInRecall[]> {
  const rows = await tx.execute<Omit<PantryInRecall, 'grams'> & { grams: string }>(sql`
    select p.pantry_id as "pantryId", p.name as pantry, p.contact_duty as "contactDuty", p.contact,
      m.manifest_no as "manifestNo", m.on_day::text as "onDay",
      array_agg(c.container_code order by c.container_code) as codes, sum(i.grams) as grams
    from book.hold_vessel v
    join book.gift_line i on i.storehouse_id = v.storehouse_id and i.container_id = v.vessel_id
      and i.is_accepted is distinct from false
    join book.gift_manifest m on m.storehouse_id = v.storehouse_id and m.gift_manifest_id = i.gift_manifest_id
      and m.stage <> 'called-off'
    join book.pantry p on p.storehouse_id = v.storehouse_id and p.pantry_id = m.pantry_id
    join book.container c on c.storehouse_id = v.storehouse_id and c.container_id = i.container_id
    where v.storehouse_id = ${storehouseId} and v.hold_id = ${holdId}
    group by p.pantry_id, p.name, p.contact_duty, p.contact, m.manifest_no, m.on_day
    order by m.manifest_no`);
  return rows.map((row) => ({ ...row, grams: Number(row.grams) }));
}

/** What an owner still has in what a hold stands on: each vessel with its lot and grams. */
export type OwnHeld = {
  readonly vesselId: string;
  readonly vesselKind: 'bag' | 'container' | 'kitchen';
  /** Empty of a kitchen, which has none. */
  readonly code: string;
  readonly lotId: string;
  readonly buyId: string | null;
  readonly ownerId: string;
  readonly grams: number;
};

export async function listHeldOf(
  tx: Tx,
  { storehouseId, holdId }: OfHold,
  ownerIds: readonly string[],
): Promise<OwnHeld[]> {
  const rows = await tx.execute<Omit<OwnHeld, 'grams'> & { grams: string }>(sql`
    select a.vessel_id as "vesselId", a.vessel_kind as "vesselKind",
      coalesce(b.bag_code, c.container_code, '') as code,
      a.unit_id as "lotId", b.buy_id as "buyId", a.owner_id as "ownerId", a.inflow - a.outflow as grams
    from (${standingOn({ storehouseId, holdId })}) v
    join book.account a on a.storehouse_id = ${storehouseId} and a.vessel_id = v.vessel_id and a.inflow > a.outflow
      and (v.lot_id is null or a.unit_id = v.lot_id)
    left join book.bag b on b.storehouse_id = a.storehouse_id and b.bag_id = v.vessel_id
    left join book.container c on c.storehouse_id = a.storehouse_id and c.container_id = v.vessel_id
    where a.owner_id = any(${sql.param([...ownerIds])}::uuid[])
    order by a.vessel_kind, code, a.owner_id`);
  return rows.map((row) => ({ ...row, grams: Number(row.grams) }));
}

/** The vessels of a hold in which somebody still has something. */
export async function listVesselsWithSome(tx: Tx, { storehouseId, holdId }: OfHold): Promise<string[]> {
  const rows = await tx.execute<{ id: string }>(sql`
    select distinct v.vessel_id as id from book.hold_vessel v
    join book.account a on a.storehouse_id = v.storehouse_id and a.vessel_id = v.vessel_id and a.inflow > a.outflow
    where v.storehouse_id = ${storehouseId} and v.hold_id = ${holdId} order by 1`);
  return rows.map(({ id }) => id);
}

/** Whether a household was told of a hold or has some of it. Needs its own rows alone. */
export async function isInHold(tx: Tx, hold: OfHold, householdId: string): Promise<boolean> {
  const { storehouseId, holdId } = hold;
  const [row] = await tx.execute<{ is: boolean }>(sql`
    select exists (select from book.notice n where n.storehouse_id = ${storehouseId} and n.path = ${pathOf(hold)}
        and n.household_id = ${householdId})
      or exists (select from book.hold_vessel v
        join book.account a on a.storehouse_id = v.storehouse_id and a.vessel_id = v.vessel_id
        where v.storehouse_id = ${storehouseId} and v.hold_id = ${holdId} and a.owner_id = ${householdId}) as is`);
  return row?.is === true;
}

export async function upsertAnswer(tx: Tx, row: typeof holdAnswers.$inferInsert): Promise<void> {
  const { storehouseId, holdId, householdId, ...said } = row;
  await tx
    .insert(holdAnswers)
    .values(row)
    .onConflictDoUpdate({
      target: [holdAnswers.storehouseId, holdAnswers.holdId, holdAnswers.householdId],
      set: said,
    });
}

export async function findAnswer(
  tx: Tx,
  { storehouseId, holdId }: OfHold,
  householdId: string,
): Promise<HoldAnswerRow | null> {
  const [row] = await tx
    .select()
    .from(holdAnswers)
    .where(
      and(
        eq(holdAnswers.storehouseId, storehouseId),
        eq(holdAnswers.holdId, holdId),
        eq(holdAnswers.householdId, householdId),
      ),
    );
  return row ?? null;
}

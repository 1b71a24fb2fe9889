import type { Tx } from '@sheafbook/db';
import { bookings, equipmentUnits, equipmentWishes, loans } from '@sheafbook/db/tables';
import { and, eq, gt, gte, isNull, lt, ne, or, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

type Days = { readonly from: Date; readonly to: Date };

/** Every loan that was out at some time of these days, or fell due in them, with its thing. */
export function listLoansWithin(tx: Tx, storehouseId: string, { from, to }: Days) {
  return tx
    .select({
      itemId: equipmentUnits.equipmentItemId,
      unitId: loans.equipmentUnitId,
      outAt: loans.outAt,
      dueAt: loans.dueAt,
      inAt: loans.inAt,
    })
    .from(loans)
    .innerJoin(equipmentUnits, joinOn(equipmentUnits, loans, 'equipmentUnitId'))
    .where(
      and(
        eq(loans.storehouseId, storehouseId),
        lt(loans.outAt, to),
        or(isNull(loans.inAt), gt(loans.inAt, from), gte(loans.dueAt, from)),
      ),
    );
}

/** The times of packing days that had a piece and were not called off. */
export function listSessionsWithin(tx: Tx, storehouseId: string, { from, to }: Days) {
  return tx
    .select({
      itemId: bookings.equipmentItemId,
      unitId: bookings.equipmentUnitId,
      startsAt: bookings.startsAt,
      endsAt: bookings.endsAt,
    })
    .from(bookings)
    .where(
      and(
        eq(bookings.storehouseId, storehouseId),
        eq(bookings.purpose, 'session'),
        ne(bookings.state, 'cancelled'),
        lt(bookings.startsAt, to),
        gt(bookings.endsAt, from),
      ),
    );
}

/** How often each thing was used, by what was counted when it came back or its day was over. */
export async function sumUses(
  tx: Tx,
  storehouseId: string,
  { from, to }: Days,
): Promise<Map<string, number>> {
  const rows = await tx
    .select({
      itemId: bookings.equipmentItemId,
      uses: sql`coalesce(sum(${bookings.uses}), 0)`.mapWith(Number),
    })
    .from(bookings)
    .where(
      and(eq(bookings.storehouseId, storehouseId), gte(bookings.endsAt, from), lt(bookings.startsAt, to)),
    )
    .groupBy(bookings.equipmentItemId);
  return new Map(rows.map(({ itemId, uses }) => [itemId, uses]));
}

/**
 * What repairs and parts of each thing came to on days after `fromOn` and through `toOn`, less what was charged for them.
 * What a year's end carries into the store fund is no cost and is left out.
 */
export async function sumRepairs(
  tx: Tx,
  storehouseId: string,
  { fromOn, toOn }: { fromOn: string; toOn: string },
): Promise<Map<string, number>> {
  const rows = await tx.execute<{ item_id: string; cost: string }>(sql`
    with r as (select account_id, cause_id from book.account
      where storehouse_id = ${storehouseId} and kind = 'repairs' and cause_id is not null),
    m as (
      select r.cause_id, m.entry_id, m.amount, m.source_id as other_id from r join book.movement m
        on m.storehouse_id = ${storehouseId} and m.destination_id = r.account_id
      union all
      select r.cause_id, m.entry_id, -m.amount, m.destination_id from r join book.movement m
        on m.storehouse_id = ${storehouseId} and m.source_id = r.account_id)
    select m.cause_id as item_id, sum(m.amount) as cost
    from m join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    join book.account o on o.storehouse_id = ${storehouseId} and o.account_id = m.other_id
    where e.on_day > ${fromOn}::date and e.on_day <= ${toOn}::date and o.kind <> 'store_fund'
    group by m.cause_id`);
  return new Map(rows.map((row) => [row.item_id, Number(row.cost)]));
}

/** The wishes that were put on the waiting list in these days, and whether the time they were offered was taken. */
export function listWishesWithin(tx: Tx, storehouseId: string, { from, to }: Days) {
  return tx
    .select({
      itemId: equipmentWishes.equipmentItemId,
      startsAt: equipmentWishes.startsAt,
      endedAt: equipmentWishes.endedAt,
      isServed: sql<boolean>`coalesce(${bookings.state} in ('booked', 'out', 'returned'), false)`,
      isOffered: sql<boolean>`coalesce(${bookings.state} = 'offered', false)`,
    })
    .from(equipmentWishes)
    .leftJoin(bookings, joinOn(bookings, equipmentWishes, 'bookingId'))
    .where(
      and(
        eq(equipmentWishes.storehouseId, storehouseId),
        gte(equipmentWishes.askedAt, from),
        lt(equipmentWishes.askedAt, to),
      ),
    );
}

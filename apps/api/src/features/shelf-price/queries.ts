import type { Tx } from '@sheafbook/db';
import { foods, persons, type ShelfPriceRow, shelfPrices } from '@sheafbook/db/tables';
import type { BoughtFoods } from '@sheafbook/sharing';
import { assert } from '@sheafbook/units';
import { and, desc, eq, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** Every price that stands, the newest first, with its food and who noted it. */
export function listShelfPrices(tx: Tx, storehouseId: string) {
  return tx
    .select({ price: shelfPrices, food: foods, notedByName: persons.name })
    .from(shelfPrices)
    .innerJoin(foods, joinOn(foods, shelfPrices, 'foodId'))
    .innerJoin(
      persons,
      and(eq(persons.storehouseId, shelfPrices.storehouseId), eq(persons.personId, shelfPrices.notedBy)),
    )
    .where(and(eq(shelfPrices.storehouseId, storehouseId), isNull(shelfPrices.withdrawnAt)))
    .orderBy(desc(shelfPrices.seenOn), desc(shelfPrices.shelfPriceId));
}

export async function insertShelfPrice(tx: Tx, row: typeof shelfPrices.$inferInsert): Promise<ShelfPriceRow> {
  const [inserted] = await tx.insert(shelfPrices).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

/** False where there is no such price, or it was withdrawn before. */
export async function withdrawShelfPrice(
  tx: Tx,
  { storehouseId, shelfPriceId }: { storehouseId: string; shelfPriceId: string },
  withdrawnAt: Date,
): Promise<boolean> {
  const withdrawn = await tx
    .update(shelfPrices)
    .set({ withdrawnAt })
    .where(
      and(
        eq(shelfPrices.storehouseId, storehouseId),
        eq(shelfPrices.shelfPriceId, shelfPriceId),
        isNull(shelfPrices.withdrawnAt),
      ),
    )
    .returning({ shelfPriceId: shelfPrices.shelfPriceId });
  return withdrawn.length > 0;
}

type Days = { readonly fromOn: string; readonly throughOn: string; readonly timeZone: string };

/**
 * The buys that were shared out in some days with what was charged for each food, the first one first. Charges know what a
 * claim took off, what came back after the sharing out, and what a later bill put on.
 */
export async function listBoughtFoods(tx: Tx, storehouseId: string, days: Days): Promise<BoughtFoods[]> {
  const { fromOn, throughOn, timeZone } = days;
  type Row = Record<'buy' | 'on_day' | 'food' | 'grams' | 'goods' | 'together', string>;
  const rows = await tx.execute<Row>(sql`
    with shared as (
      select b.buy_id, max((s.moved_at at time zone ${timeZone})::date) as on_day
      from book.buy b
      join book.stage_move s on s.storehouse_id = ${storehouseId} and s.buy_id = b.buy_id and s.to_stage = 'shared-out'
      where b.storehouse_id = ${storehouseId} and b.stage in ('shared-out', 'closed')
      group by b.buy_id),
    charged as (
      select c.buy_id, c.buy_line_id, sum(c.minor_units) as minor_units
      from book.charge_line c join shared s on s.buy_id = c.buy_id
      where c.storehouse_id = ${storehouseId} group by c.buy_id, c.buy_line_id)
    select s.buy_id as buy, s.on_day::text as on_day, l.food_id as food,
      (select coalesce(sum(g.net_grams), 0) from book.bag g
        join book.lot o on o.storehouse_id = ${storehouseId} and o.lot_id = g.lot_id
        where g.storehouse_id = ${storehouseId} and g.buy_id = s.buy_id and o.buy_line_id = l.buy_line_id
          and g.decision <> 'refused') as grams,
      (select coalesce(sum(minor_units), 0) from charged
        where buy_id = s.buy_id and buy_line_id = l.buy_line_id) as goods,
      (select coalesce(sum(minor_units), 0) from charged
        where buy_id = s.buy_id and buy_line_id is null) as together
    from shared s
    join book.buy_line l on l.storehouse_id = ${storehouseId} and l.buy_id = s.buy_id
    where s.on_day between ${fromOn}::date and ${throughOn}::date
    order by s.on_day, s.buy_id, l.position`);
  return [...new Set(rows.map(({ buy }) => buy))].flatMap((buy) => {
    const own = rows.filter((row) => row.buy === buy);
    const [first] = own;
    if (first === undefined) return [];
    const foods = own.map(({ food, grams, goods }) => ({
      ...{ foodId: food, grams: Number(grams), goodsMinorUnits: Number(goods) },
    }));
    return [{ onDay: first.on_day, foods, togetherMinorUnits: Number(first.together) }];
  });
}

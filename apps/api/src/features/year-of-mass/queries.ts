import type { Tx } from '@sheafbook/db';
import { type MassFlow, type MassSide, STOCK_KINDS } from '@sheafbook/ledger';
import { type SQL, sql } from 'drizzle-orm';

type Whose = { readonly storehouseId: string; readonly ownerIds: readonly string[] };
type Days = { readonly fromOn: string; readonly toOn: string };

/**
 * Movements of grams between the stock of some owners and what is outside it, one row each. What was undone counts as
 * if it had never been, on both days. Bags, containers and kitchens hold stock; all other vessels are the outside.
 */
const crossing = ({ storehouseId, ownerIds }: Whose): SQL => {
  const inStock = (account: SQL) => sql`${account}.vessel_kind = any(${sql.param([...STOCK_KINDS])}::text[])`;
  const isTheirs = (account: SQL) =>
    sql`(${account}.owner_id = any(${sql.param([...ownerIds])}::uuid[]) and ${inStock(account)})`;
  const sideOf = (other: SQL) => sql`case when ${inStock(other)} then 'others' else ${other}.vessel_kind end`;
  const [from, to] = [sql`s`, sql`d`];
  return sql`
    select e.entry_id, e.entry_no, e.what, e.on_day, m.amount, m.unit_id, ${isTheirs(to)} as is_in,
      case when ${isTheirs(to)} then ${sideOf(from)} else ${sideOf(to)} end as side
    from book.movement m
    join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    join book.account s on s.storehouse_id = ${storehouseId} and s.account_id = m.source_id
    join book.account d on d.storehouse_id = ${storehouseId} and d.account_id = m.destination_id
    where m.storehouse_id = ${storehouseId} and s.kind = 'mass' and d.kind = 'mass'
      and ${isTheirs(from)} <> ${isTheirs(to)} and e.reverses_id is null
      and not exists (select from book.entry r where r.storehouse_id = ${storehouseId} and r.reverses_id = e.entry_id)`;
};

/** What some owners had when a year began, and what moved over its border in it, by side. */
export async function sumCrossings(
  tx: Tx,
  whose: Whose,
  { fromOn, toOn }: Days,
): Promise<{ openingGrams: number; flows: MassFlow[] }> {
  const rows = await tx.execute<{ side: MassSide; opening: string; came: string; went: string }>(sql`
    select c.side,
      coalesce(sum(case when c.is_in then c.amount else -c.amount end) filter (where c.on_day < ${fromOn}::date), 0) as opening,
      coalesce(sum(c.amount) filter (where c.is_in and c.on_day >= ${fromOn}::date), 0) as came,
      coalesce(sum(c.amount) filter (where not c.is_in and c.on_day >= ${fromOn}::date), 0) as went
    from (${crossing(whose)}) c where c.on_day <= ${toOn}::date group by c.side`);
  return {
    openingGrams: rows.reduce((sum, { opening }) => sum + Number(opening), 0),
    flows: rows.map(({ side, came, went }) => ({ side, inGrams: Number(came), outGrams: Number(went) })),
  };
}

/** The entries behind one number of a year, the newest first; grams count toward the number. */
export async function listCrossings(
  tx: Tx,
  whose: Whose,
  { fromOn, toOn, sides, way }: Days & { sides: readonly string[]; way: 'in' | 'out' | 'both' },
) {
  const wanted = sql`any(${sql.param([...sides])}::text[])`;
  const ways = way === 'both' ? sql`true` : way === 'in' ? sql`c.is_in` : sql`not c.is_in`;
  const rows = await tx.execute<{
    entry_id: string;
    entry_no: string;
    what: string;
    on_day: string;
    side: MassSide;
    food_en: string;
    food_es: string;
    came: string;
    went: string;
  }>(sql`
    select c.entry_id, c.entry_no, c.what, c.on_day::text, c.side, f.name_en as food_en, f.name_es as food_es,
      coalesce(sum(c.amount) filter (where c.is_in), 0) as came,
      coalesce(sum(c.amount) filter (where not c.is_in), 0) as went
    from (${crossing(whose)}) c
    join book.lot l on l.storehouse_id = ${whose.storehouseId} and l.lot_id = c.unit_id
    join book.food f on f.storehouse_id = ${whose.storehouseId} and f.food_id = l.food_id
    where c.on_day between ${fromOn}::date and ${toOn}::date and c.side = ${wanted} and ${ways}
    group by 1, 2, 3, 4, 5, 6, 7 order by c.entry_no desc, f.name_en`);
  return rows.map((row) => ({
    ...{ entryId: row.entry_id, entryNo: Number(row.entry_no), what: row.what, onDay: row.on_day },
    ...{ side: row.side, foodEn: row.food_en, foodEs: row.food_es },
    ...{ inGrams: Number(row.came), outGrams: Number(row.went) },
  }));
}

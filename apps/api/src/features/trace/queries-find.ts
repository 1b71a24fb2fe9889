import type { Tx } from '@sheafbook/db';
import { sql } from 'drizzle-orm';
import type { FoundKind } from './schema.ts';

/** Something that a code names, and what is written beside it so that a reader can choose among several. */
export type Found = {
  readonly kind: FoundKind;
  readonly id: string;
  readonly label: string;
  /** Supplier, day or buy, whatever tells two of the same name apart; may be empty. */
  readonly about: string;
  /** Null for common stock and for what belongs to nobody alone. */
  readonly householdId: string | null;
};

const DAY_PAPERS = sql`('run-sheet', 'seam-log')`;

/**
 * Whatever here goes by a text: a code of ours on a bag, a container or a packing day's paper, a mark of a supplier, the
 * name of a packing day or of a place of the store's, and the number of an order or a manifest. Small letters count like
 * capitals.
 */
export function listFoundByCode(
  tx: Tx,
  storehouseId: string,
  typed: { readonly text: string; readonly code: string | null; readonly number: number | null },
): Promise<Found[]> {
  return find(tx, storehouseId, {
    bag: sql`g.bag_code = ${typed.code}`,
    container: sql`c.container_code = ${typed.code}`,
    lot: sql`false`,
    mark: sql`lower(l.supplier_mark) = lower(${typed.text})`,
    delivery: sql`lower(d.carrier_note) = lower(${typed.text}) or exists (select from book.supplier_order o
      where o.storehouse_id = d.storehouse_id and o.buy_id = d.buy_id and o.supplier_id = d.supplier_id
        and o.order_no = ${typed.number})`,
    session: sql`lower(s.name) = lower(${typed.text}) or exists (select from book.paper p
      where p.storehouse_id = s.storehouse_id and p.subject_id = s.packing_session_id
        and p.kind in ${DAY_PAPERS} and p.paper_code = ${typed.code})`,
    manifest: sql`m.manifest_no = ${typed.number}`,
    kitchen: sql`false`,
    place: sql`lower(w.name) = lower(${typed.text})`,
  });
}

/** The one thing that a kind and an id name, if it is here. */
export async function findOne(
  tx: Tx,
  storehouseId: string,
  { kind, id }: { readonly kind: FoundKind; readonly id: string },
): Promise<Found | undefined> {
  const only = (other: FoundKind, column: ReturnType<typeof sql>) =>
    kind === other ? sql`${column} = ${id}` : sql`false`;
  const [found] = await find(tx, storehouseId, {
    bag: only('bag', sql`g.bag_id`),
    container: only('container', sql`c.container_id`),
    lot: only('lot', sql`l.lot_id`),
    mark:
      kind === 'mark'
        ? sql`exists (select from book.lot x where x.storehouse_id = l.storehouse_id and x.lot_id = ${id}
            and x.supplier_mark = l.supplier_mark and x.supplier_id is not distinct from l.supplier_id)`
        : sql`false`,
    delivery: only('delivery', sql`d.delivery_id`),
    session: only('session', sql`s.packing_session_id`),
    manifest: only('manifest', sql`m.gift_manifest_id`),
    kitchen: only('kitchen', sql`h.household_id`),
    place: only('place', sql`w.place_id`),
  });
  return found;
}

type Conditions = Readonly<Record<FoundKind, ReturnType<typeof sql>>>;

async function find(tx: Tx, storehouseId: string, where: Conditions): Promise<Found[]> {
  const rows = await tx.execute<Found>(sql`
    select 'bag' as kind, g.bag_id as id, g.bag_code as label, f.name_en as about, null::uuid as "householdId"
    from book.bag g
    join book.lot l on l.storehouse_id = ${storehouseId} and l.lot_id = g.lot_id
    join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = l.food_id
    where g.storehouse_id = ${storehouseId} and g.decision <> 'refused' and (${where.bag})
    union all
    select 'container', c.container_id, c.container_code, '', c.household_id
    from book.container c where c.storehouse_id = ${storehouseId} and (${where.container})
    union all
    select 'lot', l.lot_id, coalesce(nullif(l.supplier_mark, ''), f.name_en), f.name_en, null
    from book.lot l join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = l.food_id
    where l.storehouse_id = ${storehouseId} and (${where.lot})
    union all
    select 'mark', (array_agg(l.lot_id order by l.lot_id))[1], min(l.supplier_mark), coalesce(s.name, ''), null
    from book.lot l left join book.supplier s on s.storehouse_id = ${storehouseId} and s.supplier_id = l.supplier_id
    where l.storehouse_id = ${storehouseId} and l.supplier_mark <> '' and (${where.mark})
    group by l.supplier_id, s.name, l.supplier_mark
    union all
    select 'delivery', d.delivery_id, s.name, d.arrived_on::text, null
    from book.delivery d join book.supplier s on s.storehouse_id = ${storehouseId} and s.supplier_id = d.supplier_id
    where d.storehouse_id = ${storehouseId} and (${where.delivery})
    union all
    select 'session', s.packing_session_id, s.name, '', null
    from book.packing_session s where s.storehouse_id = ${storehouseId} and (${where.session})
    union all
    select 'manifest', m.gift_manifest_id, m.manifest_no::text, p.name, null
    from book.gift_manifest m join book.pantry p on p.storehouse_id = ${storehouseId} and p.pantry_id = m.pantry_id
    where m.storehouse_id = ${storehouseId} and (${where.manifest})
    union all
    select 'kitchen', h.household_id, h.name, '', h.household_id
    from book.household h where h.storehouse_id = ${storehouseId} and (${where.kitchen})
    union all
    select 'place', w.place_id, w.name, '', null from book.place w
    where w.storehouse_id = ${storehouseId} and w.household_id is null and (${where.place})
    order by 1, 3, 4, 2`);
  return [...rows];
}

/** Which of these codes stand on a bag, or on a container of common stock or of this household. */
export async function listKnownCodes(
  tx: Tx,
  storehouseId: string,
  { codes, householdId }: { readonly codes: readonly string[]; readonly householdId: string | null },
): Promise<string[]> {
  const wanted = sql`any(${sql.param([...codes])}::text[])`;
  const rows = await tx.execute<{ code: string }>(sql`
    select g.bag_code as code from book.bag g where g.storehouse_id = ${storehouseId} and g.bag_code = ${wanted}
    union all
    select c.container_code from book.container c where c.storehouse_id = ${storehouseId}
      and c.container_code = ${wanted} and (c.household_id is null or c.household_id = ${householdId})
    order by 1`);
  return rows.map(({ code }) => code);
}

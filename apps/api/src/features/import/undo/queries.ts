import type { Tx } from '@sheafbook/db';
import {
  containers,
  eaters,
  equipmentItems,
  foods,
  householdContacts,
  households,
  importFiles,
  imports,
  importThings,
  importUndoings,
  persons,
  suppliers,
} from '@sheafbook/db/tables';
import { and, eq, sql } from 'drizzle-orm';
import { Problem } from '../../../platform/problem.ts';
import { inParts } from '../in-parts.ts';

export type Of = { readonly storehouseId: string; readonly importId: string };

export async function loadImport(tx: Tx, { storehouseId, importId }: Of) {
  const [row] = await tx
    .select()
    .from(imports)
    .where(and(eq(imports.storehouseId, storehouseId), eq(imports.importId, importId)));
  if (!row) throw new Problem('thing-not-found', { thing: 'import' });
  return row;
}

export async function listFiles(tx: Tx, { storehouseId, importId }: Of) {
  return tx
    .select()
    .from(importFiles)
    .where(and(eq(importFiles.storehouseId, storehouseId), eq(importFiles.importId, importId)))
    .orderBy(importFiles.position);
}

export async function isUndone(tx: Tx, { storehouseId, importId }: Of): Promise<boolean> {
  const rows = await tx
    .select({ importId: importUndoings.importId })
    .from(importUndoings)
    .where(and(eq(importUndoings.storehouseId, storehouseId), eq(importUndoings.importId, importId)));
  return rows.length > 0;
}

export const insertThings = (tx: Tx, rows: readonly (typeof importThings.$inferInsert)[]) =>
  inParts(rows, (part) => tx.insert(importThings).values(part));

/** How many things of each kind an import made. */
export async function countThings(tx: Tx, { storehouseId, importId }: Of): Promise<Map<string, number>> {
  const rows = await tx
    .select({ kind: importThings.kind, count: sql`count(*)`.mapWith(Number) })
    .from(importThings)
    .where(and(eq(importThings.storehouseId, storehouseId), eq(importThings.importId, importId)))
    .groupBy(importThings.kind);
  return new Map(rows.map(({ kind, count }) => [kind, count]));
}

/** The import's own entries that nobody took back, in the order of the book, with the line of the bank that has one. */
export async function listEntries(tx: Tx, { storehouseId, importId }: Of) {
  return tx.execute<{ entry_id: string; entry_no: string; is_at_bank: boolean }>(sql`
    select e.entry_id, e.entry_no, exists (select from book.bank_match b where b.storehouse_id = ${storehouseId}
      and b.entry_id = e.entry_id and b.undone_at is null) as is_at_bank
    from book.entry e
    where e.storehouse_id = ${storehouseId} and e.subject_id = ${importId} and e.reverses_id is null
      and not exists (select from book.entry u where u.storehouse_id = ${storehouseId} and u.reverses_id = e.entry_id)
    order by e.entry_no`);
}

/** Entries of others that moved money or grams of what the import made. */
export async function listOtherEntries(tx: Tx, { storehouseId, importId }: Of): Promise<number[]> {
  const rows = await tx.execute<{ entry_no: string }>(sql`
    with t as (select thing_id from book.import_thing
      where storehouse_id = ${storehouseId} and import_id = ${importId}),
    a as (
      select a.account_id from t join book.account a on a.storehouse_id = ${storehouseId} and a.owner_id = t.thing_id
      union
      select a.account_id from t join book.account a on a.storehouse_id = ${storehouseId} and a.unit_id = t.thing_id),
    m as (
      select m.entry_id from a join book.movement m on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id
      union
      select m.entry_id from a
        join book.movement m on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id)
    select e.entry_no from m join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    where e.subject_id is distinct from ${importId} order by e.entry_no`);
  return rows.map((row) => Number(row.entry_no));
}

export type LeaningRow = { leaning: string; kind: string; thing_id: string; row_count: string; name: string };

/** Rows of other tables that point at what the import made, and what was changed by hand since. Under the task "import". */
export async function listLeaningRows(tx: Tx, { storehouseId, importId }: Of): Promise<LeaningRow[]> {
  return tx.execute<LeaningRow>(sql`
    with l as (
      select * from book.list_leaning_on_import(${importId})
      union all
      select 'changed-by-hand', t.kind, t.thing_id, 1 from book.import_thing t
        join book.eater e on e.storehouse_id = ${storehouseId} and e.eater_id = t.thing_id and e.version > 1
        where t.storehouse_id = ${storehouseId} and t.import_id = ${importId}
      union all
      select 'changed-by-hand', t.kind, t.thing_id, 1 from book.import_thing t join book.equipment_item e
        on e.storehouse_id = ${storehouseId} and e.equipment_item_id = t.thing_id and e.version > 1
        where t.storehouse_id = ${storehouseId} and t.import_id = ${importId}
      union all
      select 'contact', t.kind, t.thing_id, 1 from book.import_thing t join book.household_contact c
        on c.storehouse_id = ${storehouseId} and c.household_id = t.thing_id and c.version > 1
        where t.storehouse_id = ${storehouseId} and t.import_id = ${importId})
    select l.leaning, l.kind, l.thing_id, sum(l.row_count)::bigint as row_count,
      coalesce(max(h.name), max(p.name), max(eh.name), max(f.name_en), max(s.name), max(i.name), max(c.container_code),
        max(lf.name_en), '') as name
    from l
    left join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = l.thing_id
    left join book.person p on p.storehouse_id = ${storehouseId} and p.person_id = l.thing_id
    left join book.eater e on e.storehouse_id = ${storehouseId} and e.eater_id = l.thing_id
    left join book.household eh on eh.storehouse_id = ${storehouseId} and eh.household_id = e.household_id
    left join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = l.thing_id
    left join book.supplier s on s.storehouse_id = ${storehouseId} and s.supplier_id = l.thing_id
    left join book.equipment_item i on i.storehouse_id = ${storehouseId} and i.equipment_item_id = l.thing_id
    left join book.container c on c.storehouse_id = ${storehouseId} and c.container_id = l.thing_id
    left join book.lot lot on lot.storehouse_id = ${storehouseId} and lot.lot_id = l.thing_id
    left join book.food lf on lf.storehouse_id = ${storehouseId} and lf.food_id = lot.food_id
    group by l.leaning, l.kind, l.thing_id order by l.leaning, name, l.thing_id`);
}

/** The households whose eaters or shelf the import wrote on: they see that it was taken back. */
export async function listHouseholdsOf(tx: Tx, { storehouseId, importId }: Of): Promise<string[]> {
  const rows = await tx.execute<{ household_id: string }>(sql`
    select e.household_id from book.import_thing t
      join book.eater e on e.storehouse_id = ${storehouseId} and e.eater_id = t.thing_id
      where t.storehouse_id = ${storehouseId} and t.import_id = ${importId}
    union
    select c.household_id from book.import_thing t
      join book.container c on c.storehouse_id = ${storehouseId} and c.container_id = t.thing_id
      where t.storehouse_id = ${storehouseId} and t.import_id = ${importId} and c.household_id is not null`);
  return rows.map((row) => row.household_id);
}

const isMade = ({ storehouseId, importId }: Of, kind: string, id: unknown) =>
  sql`${id} in (select t.thing_id from book.import_thing t
    where t.storehouse_id = ${storehouseId} and t.import_id = ${importId} and t.kind = ${kind})`;

/** Nothing of these stays: they were never used. */
export async function deleteUnused(tx: Tx, of: Of): Promise<void> {
  const { storehouseId } = of;
  const ours = isMade(of, 'eater', eaters.eaterId);
  await tx.delete(eaters).where(and(eq(eaters.storehouseId, storehouseId), ours));
  const theirs = isMade(of, 'household', householdContacts.householdId);
  await tx.delete(householdContacts).where(and(eq(householdContacts.storehouseId, storehouseId), theirs));
  const items = isMade(of, 'equipment_item', equipmentItems.equipmentItemId);
  await tx.delete(equipmentItems).where(and(eq(equipmentItems.storehouseId, storehouseId), items));
}

/** Households and their persons stay as their seats alone, like those of a household that left. */
export async function updateSeatsLeft(tx: Tx, of: Of, leftOn: string): Promise<void> {
  const { storehouseId } = of;
  await tx
    .update(persons)
    .set({
      name: sql`'Seat ' || (select h.seat from book.household h where h.storehouse_id = ${storehouseId}
        and h.household_id = ${persons.householdId})`,
      leftOn,
    })
    .where(and(eq(persons.storehouseId, storehouseId), isMade(of, 'person', persons.personId)));
  await tx
    .update(households)
    .set({
      name: sql`'Seat ' || ${households.seat}`,
      leftOn,
      version: sql`${households.version} + 1`,
    })
    .where(and(eq(households.storehouseId, storehouseId), isMade(of, 'household', households.householdId)));
}

/** What the book's lines still name stays under a name that says so, and leaves its own name and code free. */
export async function updateSetAside(
  tx: Tx,
  of: Of,
  { importNo, retiredAt }: { importNo: number; retiredAt: Date },
): Promise<void> {
  const { storehouseId } = of;
  const aside = ` (import ${importNo}, taken back)`;
  const named = (name: unknown) => sql`left(${name}, ${120 - aside.length}::int) || ${aside}::text`;
  await tx
    .update(foods)
    .set({
      ...{ nameEn: named(foods.nameEn), nameEs: named(foods.nameEs) },
      foodCode: sql`rtrim(left(${foods.foodCode}, 60), '-') || ${`-taken-back-${importNo}`}::text`,
      ...{ retiredAt, version: sql`${foods.version} + 1` },
    })
    .where(and(eq(foods.storehouseId, storehouseId), isMade(of, 'food', foods.foodId)));
  await tx
    .update(suppliers)
    .set({ name: named(suppliers.name), version: sql`${suppliers.version} + 1` })
    .where(and(eq(suppliers.storehouseId, storehouseId), isMade(of, 'supplier', suppliers.supplierId)));
  await tx
    .update(containers)
    .set({ note: `Import ${importNo}, taken back` })
    .where(and(eq(containers.storehouseId, storehouseId), isMade(of, 'container', containers.containerId)));
}

/** The same files may be brought over again from here on. */
export async function insertUndoing(tx: Tx, row: typeof importUndoings.$inferInsert): Promise<void> {
  const { storehouseId, importId } = row;
  await tx.insert(importUndoings).values(row);
  await tx
    .update(importFiles)
    .set({ takenBack: true })
    .where(and(eq(importFiles.storehouseId, storehouseId), eq(importFiles.importId, importId)));
}

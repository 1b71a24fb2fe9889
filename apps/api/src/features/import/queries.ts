import type { Tx } from '@sheafbook/db';
import {
  containerKinds,
  eaters,
  equipmentItems,
  foods,
  householdContacts,
  households,
  importFiles,
  imports,
  importUndoings,
  persons,
  suppliers,
} from '@sheafbook/db/tables';
import { and, asc, desc, eq, inArray, lt, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { inParts } from './in-parts.ts';
import { addFood, addHousehold, type Known, keyOf } from './plan/book.ts';
import { foldText } from './sheet/kinds.ts';

/** What stands in the book already; eaters and stock only where the sheets are about them. */
export async function loadKnown(
  tx: Tx,
  storehouseId: string,
  { commonId, withStock }: { commonId: string; withStock: boolean },
): Promise<Known> {
  const [house, food, kinds, suppliersHere, items, openings, stock] = await Promise.all([
    tx.select().from(households).where(eq(households.storehouseId, storehouseId)).orderBy(households.seat),
    tx.select().from(foods).where(eq(foods.storehouseId, storehouseId)).orderBy(foods.foodCode),
    tx
      .select()
      .from(containerKinds)
      .where(eq(containerKinds.storehouseId, storehouseId))
      .orderBy(containerKinds.kindCode),
    tx.select().from(suppliers).where(eq(suppliers.storehouseId, storehouseId)).orderBy(suppliers.name),
    tx.select().from(equipmentItems).where(eq(equipmentItems.storehouseId, storehouseId)),
    listOpenings(tx, storehouseId),
    withStock ? listStock(tx, storehouseId) : [],
  ]);
  const known = { households: { byName: new Map(), bySeat: new Map() }, foods: new Map() };
  for (const { householdId: id, name, seat, leftOn } of house)
    addHousehold(known, { id, name, seat, hasLeft: leftOn !== null });
  for (const { foodId: id, foodCode: code, nameEn, nameEs, retiredAt, bulkMicrogramsPerMillilitre } of food)
    addFood(known, {
      ...{ id, code, names: [nameEn, nameEs], isRetired: retiredAt !== null, bulkMicrogramsPerMillilitre },
    });
  return {
    ...{ storehouseId, commonId, kinds, eaters: new Set<string>(), ...known },
    suppliers: new Map(
      suppliersHere.map(({ supplierId: id, name }) => [foldText(name), { id, name }] as const),
    ),
    openings: new Map(openings.map((row) => [row.owner, Number(row.balance)])),
    stock: new Map(
      stock.map((row) => [
        keyOf(
          row.owner_id,
          row.food_id,
          row.kind_id,
          Number(row.grams),
          row.packed_on,
          row.origin_note,
          row.harvest_year,
        ),
        Number(row.count),
      ]),
    ),
    equipment: new Set(items.map(({ name }) => foldText(name))),
  };
}

/** Opening balances that were not reversed, signed as the book signs them. */
function listOpenings(tx: Tx, storehouseId: string) {
  return tx.execute<{ owner: string; balance: string }>(sql`
    select coalesce(a.owner_id::text, case a.kind when 'cash_tin' then 'cash' else a.kind end) as owner,
      sum(case when m.destination_id = a.account_id then m.amount else -m.amount end) as balance
    from book.entry e
    join book.movement m on m.storehouse_id = ${storehouseId} and m.entry_id = e.entry_id
    join book.account a on a.storehouse_id = ${storehouseId} and a.account_id in (m.source_id, m.destination_id)
      and a.kind <> 'store_fund'
    where e.storehouse_id = ${storehouseId} and e.what = 'opening-balance'
      and not exists (select from book.entry u where u.storehouse_id = ${storehouseId} and u.reverses_id = e.entry_id)
    group by 1`);
}

/** Containers that were brought in from outside and not taken back, counted by everything that tells them apart. */
function listStock(tx: Tx, storehouseId: string) {
  return tx.execute<{
    owner_id: string;
    food_id: string;
    kind_id: string;
    grams: string;
    packed_on: string;
    origin_note: string;
    harvest_year: number | null;
    count: string;
  }>(sql`
    select a.owner_id, l.food_id, c.container_kind_id as kind_id, m.amount as grams, c.packed_on::text, l.origin_note,
      l.harvest_year, count(*) as count
    from book.entry e
    join book.movement m on m.storehouse_id = ${storehouseId} and m.entry_id = e.entry_id
    join book.account a on a.storehouse_id = ${storehouseId} and a.account_id = m.destination_id
    join book.container c on c.storehouse_id = ${storehouseId} and c.container_id = a.vessel_id
    join book.lot l on l.storehouse_id = ${storehouseId} and l.lot_id = c.lot_id
    where e.storehouse_id = ${storehouseId} and e.what = 'stock-brought-in'
      and not exists (select from book.entry u where u.storehouse_id = ${storehouseId} and u.reverses_id = e.entry_id)
    group by 1, 2, 3, 4, 5, 6, 7`);
}

/** The names of the eaters of some households, under the task "import". */
export async function listEaterNames(tx: Tx, storehouseId: string, householdIds: readonly string[]) {
  if (householdIds.length === 0) return [];
  return tx
    .select({ householdId: eaters.householdId, name: eaters.name })
    .from(eaters)
    .where(and(eq(eaters.storehouseId, storehouseId), inArray(eaters.householdId, [...householdIds])));
}

export const insertContacts = (tx: Tx, rows: readonly (typeof householdContacts.$inferInsert)[]) =>
  inParts(rows, (part) => tx.insert(householdContacts).values(part));

export const insertEaters = (tx: Tx, rows: readonly (typeof eaters.$inferInsert)[]) =>
  inParts(rows, (part) => tx.insert(eaters).values(part));

export const insertFoods = (tx: Tx, rows: readonly (typeof foods.$inferInsert)[]) =>
  inParts(rows, (part) => tx.insert(foods).values(part));

export const insertItems = (tx: Tx, rows: readonly (typeof equipmentItems.$inferInsert)[]) =>
  inParts(rows, (part) => tx.insert(equipmentItems).values(part));

/** Files with these digests that were posted before, with the import that brought them. */
export async function listPostedFiles(tx: Tx, storehouseId: string, digests: readonly string[]) {
  return tx
    .select({ sha256: importFiles.sha256, importNo: imports.importNo, importedAt: imports.importedAt })
    .from(importFiles)
    .innerJoin(imports, joinOn(imports, importFiles, 'importId'))
    .where(
      and(
        eq(importFiles.storehouseId, storehouseId),
        eq(importFiles.takenBack, false),
        inArray(importFiles.sha256, [...digests]),
      ),
    );
}

/** The next number of an import; the book is locked, so no two take the same. */
export async function nextImportNo(tx: Tx, storehouseId: string): Promise<number> {
  const [row] = await tx
    .select({ last: sql<number>`coalesce(max(${imports.importNo}), 0)`.mapWith(Number) })
    .from(imports)
    .where(eq(imports.storehouseId, storehouseId));
  return (row?.last ?? 0) + 1;
}

export async function insertImport(
  tx: Tx,
  row: typeof imports.$inferInsert,
  files: readonly (typeof importFiles.$inferInsert)[],
): Promise<void> {
  await tx.insert(imports).values(row);
  await tx.insert(importFiles).values([...files]);
}

/** Newest first; `after` is the number that the page before ended with. */
export async function listImports(
  tx: Tx,
  storehouseId: string,
  page: { after?: number | undefined; limit: number },
) {
  const found = await tx
    .select({ import: imports, importedBy: persons.name, undoing: importUndoings })
    .from(imports)
    .innerJoin(persons, joinOn(persons, imports, 'personId', 'importedBy'))
    .leftJoin(importUndoings, joinOn(importUndoings, imports, 'importId'))
    .where(
      and(
        eq(imports.storehouseId, storehouseId),
        page.after === undefined ? undefined : lt(imports.importNo, page.after),
      ),
    )
    .orderBy(desc(imports.importNo))
    .limit(page.limit + 1);
  const ids = found.map((row) => row.import.importId);
  const files = await tx
    .select()
    .from(importFiles)
    .where(and(eq(importFiles.storehouseId, storehouseId), inArray(importFiles.importId, ids)))
    .orderBy(asc(importFiles.position));
  return found.map((row) => ({
    ...row,
    files: files.filter((file) => file.importId === row.import.importId),
  }));
}
export type ListedImport = Awaited<ReturnType<typeof listImports>>[number];

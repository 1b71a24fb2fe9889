import type { Tx } from '@sheafbook/db';
import {
  type EquipmentItemRow,
  type EquipmentPartRow,
  type EquipmentUnitRow,
  equipmentItems,
  equipmentParts,
  equipmentUnits,
  missingParts,
  scaleChecks,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq, gt, inArray, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, itemId: string) =>
  and(eq(equipmentItems.storehouseId, storehouseId), eq(equipmentItems.equipmentItemId, itemId));

/** The group's own things in the order of their names, one more than the page holds. */
export async function listItems(
  tx: Tx,
  storehouseId: string,
  page: { after?: string | undefined; limit: number },
): Promise<EquipmentItemRow[]> {
  return tx
    .select()
    .from(equipmentItems)
    .where(
      and(
        eq(equipmentItems.storehouseId, storehouseId),
        page.after === undefined ? undefined : gt(equipmentItems.name, page.after),
      ),
    )
    .orderBy(asc(equipmentItems.name))
    .limit(page.limit + 1);
}

export async function loadItem(tx: Tx, storehouseId: string, itemId: string): Promise<EquipmentItemRow> {
  const [row] = await tx.select().from(equipmentItems).where(isThis(storehouseId, itemId));
  return found(row);
}

/** Whoever books, lends or changes a thing waits for whoever does so at this moment. */
export async function lockItem(tx: Tx, storehouseId: string, itemId: string): Promise<EquipmentItemRow> {
  const [row] = await tx.select().from(equipmentItems).where(isThis(storehouseId, itemId)).for('update');
  return found(row);
}

function found(row: EquipmentItemRow | undefined): EquipmentItemRow {
  if (!row) throw new Problem('thing-not-found', { thing: 'equipment' });
  return row;
}

export async function hasItemNamed(tx: Tx, storehouseId: string, name: string): Promise<boolean> {
  const [row] = await tx
    .select({ id: equipmentItems.equipmentItemId })
    .from(equipmentItems)
    .where(and(eq(equipmentItems.storehouseId, storehouseId), eq(equipmentItems.name, name)));
  return row !== undefined;
}

/** Whether a thing was checked as the scale or the thermometer that it is. */
export async function hasScaleChecks(tx: Tx, storehouseId: string, itemId: string): Promise<boolean> {
  const [row] = await tx
    .select({ id: scaleChecks.scaleCheckId })
    .from(scaleChecks)
    .where(and(eq(scaleChecks.storehouseId, storehouseId), eq(scaleChecks.equipmentItemId, itemId)))
    .limit(1);
  return row !== undefined;
}

export async function insertItem(
  tx: Tx,
  item: typeof equipmentItems.$inferInsert,
): Promise<EquipmentItemRow> {
  const [row] = await tx.insert(equipmentItems).values(item).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function updateItem(
  tx: Tx,
  item: EquipmentItemRow,
  change: Partial<typeof equipmentItems.$inferInsert>,
): Promise<void> {
  await tx
    .update(equipmentItems)
    .set({ ...change, version: item.version + 1 })
    .where(isThis(item.storehouseId, item.equipmentItemId));
}

export async function listUnits(
  tx: Tx,
  storehouseId: string,
  itemIds: readonly string[],
): Promise<EquipmentUnitRow[]> {
  return tx
    .select()
    .from(equipmentUnits)
    .where(
      and(
        eq(equipmentUnits.storehouseId, storehouseId),
        inArray(equipmentUnits.equipmentItemId, [...itemIds]),
      ),
    )
    .orderBy(asc(equipmentUnits.equipmentItemId), asc(equipmentUnits.unitNo));
}

export async function loadUnit(tx: Tx, storehouseId: string, unitId: string): Promise<EquipmentUnitRow> {
  const [row] = await tx
    .select()
    .from(equipmentUnits)
    .where(and(eq(equipmentUnits.storehouseId, storehouseId), eq(equipmentUnits.equipmentUnitId, unitId)));
  if (!row) throw new Problem('thing-not-found', { thing: 'equipment' });
  return row;
}

export async function insertUnits(
  tx: Tx,
  rows: readonly (typeof equipmentUnits.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(equipmentUnits).values([...rows]);
}

export async function updateUnit(
  tx: Tx,
  unit: EquipmentUnitRow,
  change: { condition: string; conditionNote: string },
): Promise<void> {
  await tx
    .update(equipmentUnits)
    .set({ ...change, version: unit.version + 1 })
    .where(
      and(
        eq(equipmentUnits.storehouseId, unit.storehouseId),
        eq(equipmentUnits.equipmentUnitId, unit.equipmentUnitId),
      ),
    );
}

/** The parts that belong to things now, in the order of their lists. */
export async function listParts(
  tx: Tx,
  storehouseId: string,
  itemIds: readonly string[],
): Promise<EquipmentPartRow[]> {
  return tx
    .select()
    .from(equipmentParts)
    .where(
      and(
        eq(equipmentParts.storehouseId, storehouseId),
        inArray(equipmentParts.equipmentItemId, [...itemIds]),
        isNull(equipmentParts.droppedAt),
      ),
    )
    .orderBy(asc(equipmentParts.equipmentItemId), asc(equipmentParts.position), asc(equipmentParts.name));
}

export async function insertParts(
  tx: Tx,
  rows: readonly (typeof equipmentParts.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(equipmentParts).values([...rows]);
}

export async function updatePart(
  tx: Tx,
  part: EquipmentPartRow,
  change: Partial<typeof equipmentParts.$inferInsert>,
): Promise<void> {
  await tx
    .update(equipmentParts)
    .set(change)
    .where(
      and(
        eq(equipmentParts.storehouseId, part.storehouseId),
        eq(equipmentParts.equipmentPartId, part.equipmentPartId),
      ),
    );
}

/** What pieces lack of the parts that still belong to them. */
export async function listMissing(tx: Tx, storehouseId: string, unitIds: readonly string[]) {
  return tx
    .select({
      unitId: missingParts.equipmentUnitId,
      partId: missingParts.equipmentPartId,
      pieces: missingParts.pieces,
      name: equipmentParts.name,
      isCritical: equipmentParts.isCritical,
      valueMinorUnits: equipmentParts.valueMinorUnits,
    })
    .from(missingParts)
    .innerJoin(equipmentParts, joinOn(equipmentParts, missingParts, 'equipmentPartId'))
    .where(
      and(
        eq(missingParts.storehouseId, storehouseId),
        inArray(missingParts.equipmentUnitId, [...unitIds]),
        isNull(equipmentParts.droppedAt),
      ),
    )
    .orderBy(asc(equipmentParts.position), asc(equipmentParts.name));
}
export type Missing = Awaited<ReturnType<typeof listMissing>>[number];

/** Writes down anew what a piece lacks. */
export async function replaceMissing(
  tx: Tx,
  unit: Pick<EquipmentUnitRow, 'storehouseId' | 'equipmentUnitId'>,
  missing: readonly { readonly partId: string; readonly pieces: number }[],
): Promise<void> {
  const { storehouseId, equipmentUnitId } = unit;
  await tx
    .delete(missingParts)
    .where(
      and(eq(missingParts.storehouseId, storehouseId), eq(missingParts.equipmentUnitId, equipmentUnitId)),
    );
  if (missing.length === 0) return;
  await tx.insert(missingParts).values(
    missing.map(({ partId, pieces }) => ({
      ...{ storehouseId, equipmentUnitId, equipmentPartId: partId, pieces },
    })),
  );
}

export type Wear = {
  unitId: string;
  sinceOn: string;
  uses: number;
  /** Of how many bookings those uses are. */
  usedBookings: number;
  dueBackAt: Date | null;
};

/**
 * Since when each piece runs without service, how often it was used since, and until when it is out. Service is counted
 * from the last one that was recorded, else from the day on which the piece came into use.
 */
export async function listWear(tx: Tx, storehouseId: string, unitIds: readonly string[]): Promise<Wear[]> {
  if (unitIds.length === 0) return [];
  const rows = await tx.execute<{
    unit_id: string;
    since_on: string;
    uses: string;
    used_bookings: string;
    due_back_at: string | null;
  }>(sql`
    select u.equipment_unit_id as unit_id, coalesce(s.done_on, u.in_use_since)::text as since_on,
      used.uses, used.bookings as used_bookings,
      (select l.due_at from book.loan l where l.storehouse_id = ${storehouseId}
        and l.equipment_unit_id = u.equipment_unit_id and l.in_at is null) as due_back_at
    from book.equipment_unit u
    left join lateral (select m.done_on, m.recorded_at from book.maintenance m
      where m.storehouse_id = ${storehouseId} and m.equipment_unit_id = u.equipment_unit_id and m.is_service
      order by m.done_on desc, m.recorded_at desc limit 1) s on true
    cross join lateral (select coalesce(sum(b.uses), 0) as uses, count(*) filter (where b.uses > 0) as bookings
      from book.booking b where b.storehouse_id = ${storehouseId} and b.equipment_unit_id = u.equipment_unit_id
        and (s.recorded_at is null or b.ends_at > s.recorded_at)) used
    where u.storehouse_id = ${storehouseId} and ${inArray(sql`u.equipment_unit_id`, [...unitIds])}`);
  return rows.map((row) => ({
    unitId: row.unit_id,
    sinceOn: row.since_on,
    uses: Number(row.uses),
    usedBookings: Number(row.used_bookings),
    dueBackAt: row.due_back_at === null ? null : new Date(row.due_back_at),
  }));
}

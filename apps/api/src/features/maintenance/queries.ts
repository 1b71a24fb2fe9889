import type { Tx } from '@sheafbook/db';
import { equipmentUnits, type MaintenanceRow, maintenances, persons } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

export async function insertMaintenance(
  tx: Tx,
  row: typeof maintenances.$inferInsert,
): Promise<MaintenanceRow> {
  const [inserted] = await tx.insert(maintenances).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

/** What was done to the pieces of a thing, the newest first. */
export async function listMaintenance(tx: Tx, storehouseId: string, itemId: string) {
  return tx
    .select({ maintenance: maintenances, unitNo: equipmentUnits.unitNo, recordedBy: persons.name })
    .from(maintenances)
    .innerJoin(equipmentUnits, joinOn(equipmentUnits, maintenances, 'equipmentUnitId'))
    .innerJoin(persons, joinOn(persons, maintenances, 'personId', 'recordedBy'))
    .where(and(eq(maintenances.storehouseId, storehouseId), eq(equipmentUnits.equipmentItemId, itemId)))
    .orderBy(desc(maintenances.doneOn), desc(maintenances.recordedAt));
}
export type ListedMaintenance = Awaited<ReturnType<typeof listMaintenance>>[number];

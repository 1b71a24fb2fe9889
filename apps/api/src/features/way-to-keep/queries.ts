import type { Tx } from '@sheafbook/db';
import { type SupplyPriceRow, supplyPrices } from '@sheafbook/db/tables';
import { and, asc, eq } from 'drizzle-orm';

export async function listSupplyPrices(tx: Tx, storehouseId: string): Promise<SupplyPriceRow[]> {
  return tx
    .select()
    .from(supplyPrices)
    .where(eq(supplyPrices.storehouseId, storehouseId))
    .orderBy(asc(supplyPrices.supplyCode));
}

export async function upsertSupplyPrice(tx: Tx, row: SupplyPriceRow): Promise<void> {
  await tx
    .insert(supplyPrices)
    .values(row)
    .onConflictDoUpdate({
      target: [supplyPrices.storehouseId, supplyPrices.supplyCode],
      set: { priceMinorUnits: row.priceMinorUnits },
    });
}

export async function deleteSupplyPrice(tx: Tx, storehouseId: string, supplyCode: string): Promise<void> {
  await tx
    .delete(supplyPrices)
    .where(and(eq(supplyPrices.storehouseId, storehouseId), eq(supplyPrices.supplyCode, supplyCode)));
}

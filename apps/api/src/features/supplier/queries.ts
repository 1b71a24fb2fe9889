import type { Tx } from '@sheafbook/db';
import { owners, type SupplierRow, suppliers } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq, gt } from 'drizzle-orm';
import type { PageQuery } from '../../platform/paging.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, supplierId: string) =>
  and(eq(suppliers.storehouseId, storehouseId), eq(suppliers.supplierId, supplierId));

/** One row more than the page holds, so that the caller knows whether another page follows. */
export async function listSuppliers(
  tx: Tx,
  storehouseId: string,
  { after, limit }: PageQuery,
): Promise<SupplierRow[]> {
  return tx
    .select()
    .from(suppliers)
    .where(
      and(
        eq(suppliers.storehouseId, storehouseId),
        after === undefined ? undefined : gt(suppliers.name, after),
      ),
    )
    .orderBy(asc(suppliers.name))
    .limit(limit + 1);
}

export async function findSupplier(
  tx: Tx,
  storehouseId: string,
  supplierId: string,
): Promise<SupplierRow | undefined> {
  const [supplier] = await tx.select().from(suppliers).where(isThis(storehouseId, supplierId));
  return supplier;
}

export async function loadSupplier(tx: Tx, storehouseId: string, supplierId: string): Promise<SupplierRow> {
  return found(await findSupplier(tx, storehouseId, supplierId));
}

export async function lockSupplier(tx: Tx, storehouseId: string, supplierId: string): Promise<SupplierRow> {
  const [supplier] = await tx.select().from(suppliers).where(isThis(storehouseId, supplierId)).for('update');
  return found(supplier);
}

function found(supplier: SupplierRow | undefined): SupplierRow {
  if (!supplier) throw new Problem('thing-not-found', { thing: 'supplier' });
  return supplier;
}

export async function findSupplierByName(tx: Tx, storehouseId: string, name: string) {
  const [supplier] = await tx
    .select()
    .from(suppliers)
    .where(and(eq(suppliers.storehouseId, storehouseId), eq(suppliers.name, name)));
  return supplier;
}

/** A supplier can be owed money, so it is an owner first. */
export async function insertOwnerOfSupplier(tx: Tx, storehouseId: string, supplierId: string): Promise<void> {
  await tx.insert(owners).values({ storehouseId, ownerId: supplierId, kind: 'supplier' });
}

export async function insertSupplier(tx: Tx, supplier: typeof suppliers.$inferInsert): Promise<SupplierRow> {
  const [row] = await tx.insert(suppliers).values(supplier).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function updateSupplier(
  tx: Tx,
  supplier: SupplierRow,
  change: { name: string; contact: string },
): Promise<SupplierRow> {
  const [row] = await tx
    .update(suppliers)
    .set({ ...change, version: supplier.version + 1 })
    .where(isThis(supplier.storehouseId, supplier.supplierId))
    .returning();
  assert(row, 'the supplier was locked before');
  return row;
}

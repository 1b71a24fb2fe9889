import type { Tx } from '@sheafbook/db';
import type { SupplierRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { type PageQuery, pageOf } from '../../platform/paging.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { presentSupplier } from './present.ts';
import {
  findSupplierByName,
  insertOwnerOfSupplier,
  insertSupplier,
  listSuppliers,
  loadSupplier,
  lockSupplier,
  updateSupplier,
} from './queries.ts';
import type { SupplierEdit, SupplierWish } from './schema.ts';

/** A page of suppliers and carriers by name. */
export function findSuppliers(context: Context, query: PageQuery) {
  return withTx(context, async (tx) =>
    pageOf(
      await listSuppliers(tx, context.actor.storehouseId, query),
      query.limit,
      (supplier) => supplier.name,
    ),
  );
}

export function readSupplier(context: Context, supplierId: string): Promise<SupplierRow> {
  return withTx(context, (tx) => loadSupplier(tx, context.actor.storehouseId, supplierId));
}

export function addSupplier(context: Context, wish: SupplierWish): Promise<SupplierRow> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await refuseTakenName(tx, storehouseId, wish.name);
    const supplierId = newId(context);
    await insertOwnerOfSupplier(tx, storehouseId, supplierId);
    return insertSupplier(tx, { ...wish, storehouseId, supplierId });
  });
}

export function editSupplier(context: Context, supplierId: string, edit: SupplierEdit): Promise<SupplierRow> {
  const { storehouseId } = context.actor;
  const { version, ...change } = edit;
  return withTx(context, async (tx) => {
    const supplier = await lockSupplier(tx, storehouseId, supplierId);
    if (supplier.version !== version)
      throw new Problem('stale-version', { newer: presentSupplier(supplier) });
    if (supplier.name !== change.name) await refuseTakenName(tx, storehouseId, change.name);
    return updateSupplier(tx, supplier, change);
  });
}

async function refuseTakenName(tx: Tx, storehouseId: string, name: string): Promise<void> {
  if (await findSupplierByName(tx, storehouseId, name))
    throw fieldProblem('already-there', 'name', `There is a supplier called ${name} already.`);
}

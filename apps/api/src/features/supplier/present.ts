import type { SupplierRow } from '@sheafbook/db/tables';

export function presentSupplier(supplier: SupplierRow) {
  return {
    id: supplier.supplierId,
    name: supplier.name,
    contact: supplier.contact,
    version: supplier.version,
  };
}

export function presentSuppliers(page: { rows: readonly SupplierRow[]; next: string | null }) {
  return { suppliers: page.rows.map(presentSupplier), next: page.next };
}

import type { Tx } from '@sheafbook/db';
import { type InvoiceLineRow, type InvoiceRow, invoiceLines, invoices } from '@sheafbook/db/tables';
import { openBills } from '@sheafbook/ledger';
import { assert, compareText } from '@sheafbook/units';
import { and, eq, gt, inArray, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, invoiceId: string) =>
  and(eq(invoices.storehouseId, storehouseId), eq(invoices.invoiceId, invoiceId));

/** A line that a supplier or carrier bills, with whose invoice it stands on. */
export type BilledLine = {
  readonly invoiceId: string;
  readonly supplierId: string;
  readonly number: string;
  readonly onDay: string;
  readonly lineNo: number;
  readonly kind: 'goods' | 'freight' | 'other';
  readonly buyLineId: string | null;
  readonly minorUnits: number;
};

/** What a buy was billed, line by line; invoices that were entered by mistake count nothing. */
export async function listInvoiceLines(tx: Tx, storehouseId: string, buyId: string): Promise<BilledLine[]> {
  const rows = await tx
    .select({
      invoiceId: invoices.invoiceId,
      supplierId: invoices.supplierId,
      number: invoices.number,
      onDay: invoices.onDay,
      lineNo: invoiceLines.lineNo,
      kind: invoiceLines.kind,
      buyLineId: invoiceLines.buyLineId,
      minorUnits: invoiceLines.minorUnits,
    })
    .from(invoices)
    .innerJoin(invoiceLines, joinOn(invoiceLines, invoices, 'invoiceId'))
    .where(and(eq(invoices.storehouseId, storehouseId), eq(invoices.buyId, buyId), isNull(invoices.voidedAt)))
    .orderBy(invoices.invoiceId, invoiceLines.lineNo);
  return rows.map((row) => ({ ...row, kind: row.kind as BilledLine['kind'] }));
}

export async function listInvoices(
  tx: Tx,
  storehouseId: string,
  of: { buyId: string; after?: string | undefined; limit?: number },
): Promise<InvoiceRow[]> {
  const { buyId, after, limit = Number.MAX_SAFE_INTEGER } = of;
  return tx
    .select()
    .from(invoices)
    .where(
      and(
        eq(invoices.storehouseId, storehouseId),
        eq(invoices.buyId, buyId),
        after === undefined ? undefined : gt(invoices.invoiceId, after),
      ),
    )
    .orderBy(invoices.invoiceId)
    .limit(limit);
}

export async function listLinesOf(
  tx: Tx,
  storehouseId: string,
  invoiceIds: readonly string[],
): Promise<InvoiceLineRow[]> {
  return tx
    .select()
    .from(invoiceLines)
    .where(and(eq(invoiceLines.storehouseId, storehouseId), inArray(invoiceLines.invoiceId, [...invoiceIds])))
    .orderBy(invoiceLines.invoiceId, invoiceLines.lineNo);
}

export async function loadInvoice(tx: Tx, storehouseId: string, invoiceId: string): Promise<InvoiceRow> {
  const [row] = await tx.select().from(invoices).where(isThis(storehouseId, invoiceId));
  if (!row) throw new Problem('thing-not-found', { thing: 'invoice' });
  return row;
}

/** The invoice in force that has this number of this supplier. */
export async function findInvoiceByNumber(
  tx: Tx,
  storehouseId: string,
  of: { supplierId: string; number: string },
): Promise<InvoiceRow | undefined> {
  const [row] = await tx
    .select()
    .from(invoices)
    .where(
      and(
        eq(invoices.storehouseId, storehouseId),
        eq(invoices.supplierId, of.supplierId),
        eq(invoices.number, of.number),
        isNull(invoices.voidedAt),
      ),
    );
  return row;
}

export async function insertInvoice(tx: Tx, invoice: typeof invoices.$inferInsert): Promise<InvoiceRow> {
  const [row] = await tx.insert(invoices).values(invoice).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function insertInvoiceLines(
  tx: Tx,
  rows: readonly (typeof invoiceLines.$inferInsert)[],
): Promise<InvoiceLineRow[]> {
  return tx
    .insert(invoiceLines)
    .values([...rows])
    .returning();
}

export async function updateVoided(
  tx: Tx,
  invoice: InvoiceRow,
  set: { voidedBy: string; voidedAt: Date; voidReason: string },
): Promise<InvoiceRow> {
  const [row] = await tx
    .update(invoices)
    .set(set)
    .where(isThis(invoice.storehouseId, invoice.invoiceId))
    .returning();
  assert(row, 'the invoice was read under the lock of its buy');
  return row;
}

/**
 * What is left to pay of a bill, or of what no bill in the book asks; then bill and buy are null. The day is null where none is
 * named.
 */
export type SupplierBill = {
  readonly supplierId: string;
  readonly supplier: string;
  readonly invoiceId: string | null;
  readonly number: string;
  readonly buyId: string | null;
  readonly dueOn: string | null;
  readonly minorUnits: number;
};

type Row = {
  supplier_id: string;
  supplier: string;
  owed: string;
  invoice_id: string | null;
  number: string | null;
  buy_id: string | null;
  on_day: string | null;
  due_on: string | null;
  minor_units: string | null;
};

/** What suppliers and carriers are owed now, bill by bill in the order of the suppliers' names and of the bills' days. */
export async function listOpenBills(tx: Tx, storehouseId: string): Promise<SupplierBill[]> {
  const rows = await tx.execute<Row>(sql`
    select s.supplier_id, s.name as supplier, a.outflow - a.inflow as owed, i.invoice_id, i.number, i.buy_id,
      i.on_day, i.due_on, (select sum(l.minor_units) from book.invoice_line l
        where l.storehouse_id = ${storehouseId} and l.invoice_id = i.invoice_id) as minor_units
    from book.account a
    join book.supplier s on s.storehouse_id = ${storehouseId} and s.supplier_id = a.owner_id
    left join book.invoice i on i.storehouse_id = ${storehouseId} and i.supplier_id = s.supplier_id and i.voided_at is null
    where a.storehouse_id = ${storehouseId} and a.kind = 'supplier' and a.outflow > a.inflow`);
  const supplierIds = [...new Set(rows.map(({ supplier_id }) => supplier_id))];
  return supplierIds
    .flatMap((supplierId) => openOf(rows.filter(({ supplier_id }) => supplier_id === supplierId)))
    .sort((a, b) => compareText(a.supplier, b.supplier) || compareText(a.dueOn ?? '', b.dueOn ?? ''));
}

function openOf(rows: readonly Row[]): SupplierBill[] {
  const bills = rows.flatMap((row) =>
    row.invoice_id === null || row.on_day === null
      ? []
      : [{ billId: row.invoice_id, dueOn: row.due_on ?? row.on_day, minorUnits: Number(row.minor_units) }],
  );
  const [first] = rows;
  if (!first) return [];
  return openBills(bills, Number(first.owed)).map(({ billId, minorUnits }) => {
    const bill = rows.find((row) => billId !== null && row.invoice_id === billId);
    return {
      ...{ supplierId: first.supplier_id, supplier: first.supplier, invoiceId: billId, minorUnits },
      number: bill?.number ?? '',
      buyId: bill?.buy_id ?? null,
      dueOn: bill?.due_on ?? null,
    };
  });
}

import type { InvoiceLineRow, InvoiceRow } from '@sheafbook/db/tables';

export type WholeInvoice = { readonly invoice: InvoiceRow; readonly lines: readonly InvoiceLineRow[] };

export function presentInvoice({ invoice, lines }: WholeInvoice) {
  return {
    id: invoice.invoiceId,
    buyId: invoice.buyId,
    supplierId: invoice.supplierId,
    number: invoice.number,
    onDay: invoice.onDay,
    dueOn: invoice.dueOn,
    entryId: invoice.entryId,
    foreignNote: invoice.foreignNote,
    minorUnits: lines.reduce((sum, line) => sum + line.minorUnits, 0),
    lines: lines.map(({ lineNo, kind, buyLineId, minorUnits }) => ({ lineNo, kind, buyLineId, minorUnits })),
    voidedAt: invoice.voidedAt?.toISOString() ?? null,
    voidReason: invoice.voidReason,
  };
}

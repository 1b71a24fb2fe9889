import type { Tx } from '@sheafbook/db';
import type { BuyRow, InvoiceRow } from '@sheafbook/db/tables';
import { supplierInvoiced } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { reverseEntry } from '../../platform/post-entry.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listBuyLines, loadBuy, lockBuyForUpdate, requireStage } from '../buy/queries.ts';
import { checkedDay, postMoney } from '../money/use-cases.ts';
import { loadSupplier } from '../supplier/queries.ts';
import type { WholeInvoice } from './present.ts';
import {
  findInvoiceByNumber,
  insertInvoice,
  insertInvoiceLines,
  listInvoices,
  listLinesOf,
  loadInvoice,
  updateVoided,
} from './queries.ts';
import type { InvoiceQuery, InvoiceVoid, InvoiceWish } from './schema.ts';

/** Enters what a supplier or carrier bills a buy, line by line, at the cents of the storehouse's own currency. */
export function enterInvoice(context: Context, buyId: string, wish: InvoiceWish): Promise<WholeInvoice> {
  const { storehouseId, personId } = context.actor;
  const onDay = checkedDay(context, wish);
  const minorUnits = sumOfLines(wish);
  refuseDueBefore(wish);
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    const { supplierId, number, dueOn, foreignNote } = wish;
    await loadSupplier(tx, storehouseId, supplierId);
    await refuseForeignLines(tx, buy, wish);
    requireStage(buy, 'ordered', 'landed', 'shared-out');
    if (await findInvoiceByNumber(tx, storehouseId, { supplierId, number }))
      throw fieldProblem('already-there', 'number', 'This supplier’s invoice of that number is in the book.');
    const invoiceId = newId(context);
    const { entryId } = await postMoney(tx, context, {
      what: 'supplier-invoiced',
      ...{ onDay, minorUnits, buyId, note: number },
      subjectId: invoiceId,
      drafts: supplierInvoiced({ buyId, supplierId, amountMinorUnits: minorUnits }),
    });
    const invoice = await insertInvoice(tx, {
      ...{ storehouseId, invoiceId, buyId, supplierId, number, onDay, dueOn, foreignNote, entryId },
      enteredBy: personId,
      enteredAt: context.now(),
    });
    const rows = wish.lines.map((line, at) => ({ ...line, storehouseId, invoiceId, buyId, lineNo: at + 1 }));
    return { invoice, lines: await insertInvoiceLines(tx, rows) };
  });
}

function refuseDueBefore({ onDay, dueOn }: InvoiceWish): void {
  if (dueOn !== null && dueOn < onDay)
    throw fieldProblem('invalid-input', 'dueOn', 'A bill is due on its own day or later.');
}

/** Each line fits a double; their sum must, too. */
function sumOfLines({ lines }: InvoiceWish): number {
  const minorUnits = lines.reduce((sum, line) => sum + line.minorUnits, 0);
  if (!Number.isSafeInteger(minorUnits))
    throw fieldProblem('amount-too-large', 'lines', 'Together the lines are larger than the book can hold.');
  return minorUnits;
}

async function refuseForeignLines(tx: Tx, buy: BuyRow, { lines }: InvoiceWish): Promise<void> {
  const own = new Set((await listBuyLines(tx, buy.storehouseId, buy.buyId)).map((line) => line.buyLineId));
  for (const [at, { buyLineId }] of lines.entries())
    if (buyLineId !== null && !own.has(buyLineId))
      throw fieldProblem('thing-not-found', `lines.${at}.buyLineId`, 'There is no such food in this buy.');
}

/** Takes back an invoice that was entered by mistake: its entry is reversed, and its number is free again. */
export function voidInvoice(
  context: Context,
  invoiceId: string,
  { reason }: InvoiceVoid,
): Promise<WholeInvoice> {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const { buyId } = await loadInvoice(tx, storehouseId, invoiceId);
    requireStage(await lockBuyForUpdate(tx, storehouseId, buyId), 'ordered', 'landed', 'shared-out');
    const invoice = await loadInvoice(tx, storehouseId, invoiceId);
    if (invoice.voidedAt) throw new Problem('already-reversed', { voidedAt: invoice.voidedAt.toISOString() });
    await reverseEntry(tx, context, {
      what: 'invoice-voided',
      onDay: todayOf(context),
      ...{ buyId, subjectId: invoiceId, reversesId: invoice.entryId, note: reason },
    });
    const set = { voidedBy: personId, voidedAt: context.now(), voidReason: reason };
    const [whole] = await withLines(tx, storehouseId, [await updateVoided(tx, invoice, set)]);
    if (!whole) throw new Problem('thing-not-found', { thing: 'invoice' });
    return whole;
  });
}

async function withLines(tx: Tx, storehouseId: string, rows: readonly InvoiceRow[]): Promise<WholeInvoice[]> {
  const lines = await listLinesOf(
    tx,
    storehouseId,
    rows.map((row) => row.invoiceId),
  );
  return rows.map((invoice) => ({
    invoice,
    lines: lines.filter((line) => line.invoiceId === invoice.invoiceId),
  }));
}

export function readInvoices(context: Context, buyId: string, query: InvoiceQuery): Promise<WholeInvoice[]> {
  const { storehouseId } = context.actor;
  const { after, limit } = query;
  return withTx(context, async (tx) => {
    await loadBuy(tx, storehouseId, buyId);
    return withLines(
      tx,
      storehouseId,
      await listInvoices(tx, storehouseId, { buyId, after, limit: limit + 1 }),
    );
  });
}

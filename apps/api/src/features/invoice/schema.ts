import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { amountMinorUnits, bookDay, currency, note, reason } from '../money/schema.ts';

const invoiceLine = z
  .strictObject({
    kind: z.enum(['goods', 'freight', 'other']),
    /** The food that goods are billed for. */
    buyLineId: z.uuid().nullable().default(null),
    minorUnits: amountMinorUnits,
  })
  .refine((line) => (line.kind === 'goods') === (line.buyLineId !== null), {
    path: ['buyLineId'],
    message: 'Goods name their food; freight and other costs name none.',
  });

export const invoiceWish = z.strictObject({
  supplierId: z.uuid(),
  number: z.string().trim().min(1, 'An invoice has a number.').max(80, 'A number has 80 characters at most.'),
  onDay: bookDay,
  /** The day by which it asks to be paid; null where it names none. */
  dueOn: bookDay.nullable().default(null),
  currency,
  lines: z.array(invoiceLine).min(1, 'An invoice has at least one line.').max(200),
  /** What a foreign invoice said in its own currency; the lines are what was really paid. */
  foreignNote: note,
});
export type InvoiceWish = z.infer<typeof invoiceWish>;

export const invoiceVoid = z.strictObject({ reason });
export type InvoiceVoid = z.infer<typeof invoiceVoid>;

export const invoiceQuery = pageQuery.extend({ after: z.uuid().optional() });
export type InvoiceQuery = z.infer<typeof invoiceQuery>;

import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { amountMinorUnits, bookDay, currency, note, reason, till } from '../money/schema.ts';

const OF_A_FOOD = new Set(['short', 'damage', 'wrong']);

export const claimWish = z
  .strictObject({
    supplierId: z.uuid(),
    /** The food that the claim is about; null for freight, or the order as a whole. */
    buyLineId: z.uuid().nullable(),
    kind: z.enum(['short', 'damage', 'wrong', 'freight', 'goodwill']),
    minorUnits: amountMinorUnits,
    currency,
    because: reason,
  })
  .refine(({ kind, buyLineId }) => !OF_A_FOOD.has(kind) || buyLineId !== null, {
    path: ['buyLineId'],
    message: 'Name the food that came short, damaged or wrong.',
  })
  .refine(({ kind, buyLineId }) => kind !== 'freight' || buyLineId === null, {
    path: ['buyLineId'],
    message: 'Freight is claimed for the order as a whole.',
  });
export type ClaimWish = z.infer<typeof claimWish>;

/** What the supplier grants: by a credit note, or in money when a till is named. The rest counts as refused. */
export const claimCredit = z.strictObject({
  minorUnits: amountMinorUnits,
  currency,
  till: till.optional(),
  onDay: bookDay.optional(),
  note,
});
export type ClaimCredit = z.infer<typeof claimCredit>;

export const claimRefusal = z.strictObject({ onDay: bookDay.optional(), because: reason });
export type ClaimRefusal = z.infer<typeof claimRefusal>;

export const claimQuery = pageQuery.extend({ after: z.uuid().optional() });
export type ClaimQuery = z.infer<typeof claimQuery>;

import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { amountMinorUnits, currency, reason, tillMoney } from '../money/schema.ts';

export const fundPromiseWish = z.strictObject({
  minorUnits: amountMinorUnits,
  currency,
  purpose: z
    .string()
    .trim()
    .min(1, 'Say what the money is for.')
    .max(200, 'A purpose has 200 characters at most.'),
  itemId: z.uuid().optional(),
  /** Needed where more is promised than the fund has free. */
  overrideReason: reason.optional(),
});
export type FundPromiseWish = z.infer<typeof fundPromiseWish>;

export const promisePayment = tillMoney;

export const fulfilment = z.strictObject({ entryNo: z.int().positive('An entry has a number from 1 on.') });
export type Fulfilment = z.infer<typeof fulfilment>;

export const promiseWithdrawal = z.strictObject({ reason });
export type PromiseWithdrawal = z.infer<typeof promiseWithdrawal>;

export const fundPromiseQuery = pageQuery.extend({ after: z.uuid().optional() });

import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { note, reason } from '../money/schema.ts';

export const stockCountWish = z.strictObject({
  /** The account of the common stock in one bag or container, as the list of common stock names it. */
  accountId: z.uuid(),
  countedGrams: z
    .int('Grams are whole numbers.')
    .nonnegative('A count is 0 or more.')
    .max(1_000_000_000, 'That is more than a thousand tonnes.'),
  note,
});
export type StockCountWish = z.infer<typeof stockCountWish>;

export const countBooking = z.strictObject({ reason });
export type CountBooking = z.infer<typeof countBooking>;

export const stockCountQuery = pageQuery.extend({ after: z.uuid().optional() });
export type StockCountQuery = z.infer<typeof stockCountQuery>;

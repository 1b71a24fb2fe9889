import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { bookDay, reason } from '../money/schema.ts';

/** By entry number, which is the order in which the book was written. */
export const entriesQuery = pageQuery.extend({
  after: z.coerce.number().int().nonnegative().optional(),
  newestFirst: z.stringbool().default(false),
  buy: z.uuid().optional(),
  household: z.uuid().optional(),
});
export type EntriesQuery = z.infer<typeof entriesQuery>;

export const reversalWish = z.strictObject({ reason, onDay: bookDay.optional() });
export type ReversalWish = z.infer<typeof reversalWish>;

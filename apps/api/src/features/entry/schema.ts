import { CHART } from '@sheafbook/ledger';
import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { bookDay, reason } from '../money/schema.ts';

/** By entry number, which is the order in which the book was written. */
export const entriesQuery = pageQuery.extend({
  after: z.coerce.number().int().nonnegative().optional(),
  newestFirst: z.stringbool().default(false),
  buy: z.uuid().optional(),
  /** Entries that touch one account, or any account of one line of the chart: what stands behind a figure. */
  account: z.uuid().optional(),
  chart: z.enum(CHART.map(({ number }) => number)).optional(),
  fromOn: bookDay.optional(),
  toOn: bookDay.optional(),
  household: z.uuid().optional(),
  /** A word of the note, the buy or whoever's account moved, or the entry's number. */
  words: z.string().trim().min(1).max(100).optional(),
  /** Kinds of entries, with commas between them. */
  what: z.string().max(200).optional(),
});
export type EntriesQuery = z.infer<typeof entriesQuery>;

export const reversalWish = z.strictObject({ reason, onDay: bookDay.optional() });
export type ReversalWish = z.infer<typeof reversalWish>;

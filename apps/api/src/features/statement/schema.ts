import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { bookDay } from '../money/schema.ts';

/** `knownAt` reads the book as it was known at an earlier instant, without what was written down later. */
export const statementQuery = z.strictObject({
  from: bookDay.optional(),
  to: bookDay.optional(),
  knownAt: z.iso.datetime({ offset: true, error: 'An instant reads like 2026-09-05T08:30:00Z.' }).optional(),
  format: z.enum(['json', 'csv']).default('json'),
});
export type StatementQuery = z.infer<typeof statementQuery>;

/** By seat; `owing` leaves out whoever owes nothing. */
export const balancesQuery = pageQuery.extend({
  after: z.coerce.number().int().nonnegative().optional(),
  owing: z.stringbool().default(false),
});
export type BalancesQuery = z.infer<typeof balancesQuery>;

import { z } from 'zod';
import { bookDay } from '../money/schema.ts';

/** `throughOn` leaves out what belongs to later days. */
export const trialBalanceQuery = z.strictObject({
  throughOn: bookDay.optional(),
  format: z.enum(['json', 'csv']).default('json'),
});
export type TrialBalanceQuery = z.infer<typeof trialBalanceQuery>;

export const listFormat = z.strictObject({ format: z.enum(['json', 'csv']).default('json') });

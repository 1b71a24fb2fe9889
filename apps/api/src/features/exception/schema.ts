import { z } from 'zod';
import { bookDay } from '../money/schema.ts';

export const exceptionsQuery = z.strictObject({
  fromOn: bookDay.optional(),
  toOn: bookDay.optional(),
  format: z.enum(['json', 'csv']).default('json'),
});
export type ExceptionsQuery = z.infer<typeof exceptionsQuery>;

import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';

export const looksPage = pageQuery.extend({ after: z.uuid().optional() });

export const reviewQuery = z.strictObject({
  from: z.iso.date().optional(),
  to: z.iso.date().optional(),
  format: z.enum(['json', 'csv']).default('json'),
});
export type ReviewQuery = z.infer<typeof reviewQuery>;

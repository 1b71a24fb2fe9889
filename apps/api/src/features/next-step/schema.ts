import { z } from 'zod';

/** The list is short by its nature, so it has no pages. */
export const nextStepsQuery = z.strictObject({ format: z.enum(['json', 'csv']).default('json') });

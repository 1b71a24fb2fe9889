import { z } from 'zod';

export const traceQuery = z.strictObject({
  /** Any text; the same seed draws the same codes on anyone's machine. */
  seed: z
    .string()
    .trim()
    .min(1, 'Write a seed, such as the day and two names.')
    .max(200, 'A seed has 200 characters at most.'),
  format: z.enum(['json', 'csv']).default('json'),
});

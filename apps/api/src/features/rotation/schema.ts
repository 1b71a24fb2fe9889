import { z } from 'zod';

/** What if: each food eaten faster or slower, all moved where it helps, packed anew, or given what would not be begun in time. */
export const whatIfQuery = z.strictObject({
  eatPercent: z.coerce.number().int().min(0).max(1000, 'Eat ten times as fast at most.').optional(),
  moveTo: z.uuid().optional(),
  repack: z.stringbool().default(false),
  give: z.stringbool().default(false),
});
export type WhatIf = z.infer<typeof whatIfQuery>;

export const storeQuery = whatIfQuery.omit({ eatPercent: true });

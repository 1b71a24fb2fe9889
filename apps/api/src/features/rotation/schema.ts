import { z } from 'zod';

/** What if: each food eaten faster or slower, all moved where it helps, packed anew, or given what would not be begun in time. */
export const whatIfQuery = z.strictObject({
  eatPercent: z.coerce.number().int().min(0).max(1000, 'Eat ten times as fast at most.').optional(),
  moveTo: z.uuid().optional(),
  repack: z.stringbool().default(false),
  give: z.stringbool().default(false),
  /** The beginning of the queue is enough for a glance; the whole of it is asked for by name. */
  queue: z.enum(['first', 'whole']).default('first'),
});
export type RotationQuery = z.infer<typeof whatIfQuery>;
export type WhatIf = Omit<RotationQuery, 'queue'>;

export const storeQuery = whatIfQuery.omit({ eatPercent: true });

import { z } from 'zod';

export const wishes = z.strictObject({
  wishes: z
    .array(
      z.strictObject({
        containerKindId: z.uuid(),
        /** Whole grams of the share, or null for whatever is left. */
        grams: z.int().positive().max(100_000_000).nullable(),
      }),
    )
    .max(20)
    .refine(
      (list) => list.every(({ grams }, position) => grams !== null || position === list.length - 1),
      'The rest comes last.',
    ),
});
export type Wishes = z.infer<typeof wishes>;

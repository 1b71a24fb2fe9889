import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';

const pieces = z
  .array(z.strictObject({ eachMinorUnits: z.int().positive(), count: z.int().nonnegative().max(1_000_000) }))
  .max(40);

/** A count by notes and coins has to come to its total; `expectedMinorUnits` is what the book said when it was read. */
export const countWish = z.strictObject({
  countedMinorUnits: z.int().nonnegative('A tin can’t hold less than nothing.'),
  expectedMinorUnits: z.int().nonnegative(),
  pieces: pieces.nullable().default(null),
  countedWithPersonId: z.uuid().nullable().default(null),
  reason: z.string().trim().max(500, 'A reason has 500 characters at most.').default(''),
});
export type CountWish = z.infer<typeof countWish>;

export const countsQuery = pageQuery.extend({ after: z.uuid().optional() });
export type CountsQuery = z.infer<typeof countsQuery>;

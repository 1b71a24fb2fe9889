import { FOOD_GROUPS } from '@sheafbook/foods';
import { z } from 'zod';

/** The groups of a year's ration. A food outside them counts for energy alone, so nothing can be aimed at there. */
const rationGroup = z.enum(FOOD_GROUPS).exclude(['other']);

const hasNoRepeats = (values: readonly string[]) => new Set(values).size === values.length;

/** Version 0 stands for a household that goes by the defaults. */
export const planEdit = z.strictObject({
  version: z.int().nonnegative(),
  needBasis: z.enum(['guideline', 'energy']),
  targetDays: z.int().min(1).max(3650),
  targetGroups: z
    .array(rationGroup)
    .min(1, 'Name one group at least.')
    .refine(hasNoRepeats, 'Name each group once.'),
  addYear: z.boolean(),
  /** Grams of a group for one adult and year, where the household departs from the guideline. */
  guidelines: z
    .array(
      z.strictObject({ foodGroup: rationGroup, gramsPerAdultYear: z.int().nonnegative().max(2_000_000) }),
    )
    .refine((rows) => hasNoRepeats(rows.map((row) => row.foodGroup)), 'Name each group once.'),
});
export type PlanEdit = z.infer<typeof planEdit>;

import { z } from 'zod';

/** A helper's right always ends: in 400 days at most, a year and a month. */
const MOST_DAYS = 400;

export const helperWish = z.strictObject({
  personId: z.uuid(),
  days: z.int().min(1).max(MOST_DAYS, `A helper’s right ends after ${MOST_DAYS} days at most.`),
  reason: z.string().trim().max(200, 'A reason has 200 characters at most.').default(''),
});
export type HelperWish = z.infer<typeof helperWish>;

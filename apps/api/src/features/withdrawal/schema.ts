import { z } from 'zod';
import { reason } from '../buy/schema.ts';

export const withdrawalWish = z.strictObject({
  /** Whose: one's own household unless a coordinator names another. */
  householdId: z.uuid().optional(),
  reason,
  /** Once the buy is ordered: those who were asked to take the food over and said no. */
  declinedHouseholdIds: z.array(z.uuid()).max(1000).default([]),
});
export type WithdrawalWish = z.infer<typeof withdrawalWish>;

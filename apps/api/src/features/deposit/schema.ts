import { z } from 'zod';
import { reason } from '../buy/schema.ts';

/** The treasurer lets a household off its deposit; why is between the two of them. */
export const depositWaiver = z.strictObject({ householdId: z.uuid(), reason });
export type DepositWaiver = z.infer<typeof depositWaiver>;

import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { amountMinorUnits, currency, reason } from '../money/schema.ts';

export const writeOffWish = z.strictObject({
  householdId: z.uuid(),
  minorUnits: amountMinorUnits,
  currency,
  reason,
});
export type WriteOffWish = z.infer<typeof writeOffWish>;

export const writeOffQuery = pageQuery.extend({ after: z.uuid().optional() });

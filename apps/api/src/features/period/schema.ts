import { z } from 'zod';
import { bookDay } from '../money/schema.ts';

export const periodEnd = z.strictObject({ throughOn: bookDay });
export type PeriodEnd = z.infer<typeof periodEnd>;

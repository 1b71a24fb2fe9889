import { SPLIT_RULES } from '@sheafbook/sharing';
import { z } from 'zod';

/** Without a rule the line's own holds, else the one that the buy froze; a later round keeps the first round's. */
export const splitWish = z.strictObject({ rule: z.enum(SPLIT_RULES).optional() });
export type SplitWish = z.infer<typeof splitWish>;

/** A list of one buy is as long as the buy has foods and households, and comes whole. */
export const wholeList = z.strictObject({ format: z.enum(['json', 'csv']).default('json') });

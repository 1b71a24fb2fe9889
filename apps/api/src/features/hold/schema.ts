import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';

const words = (message: string) => z.string().trim().min(1, message).max(1000, 'At most 1000 characters.');

export const holdReason = z.strictObject({ reason: words('Say why the bag is put on hold.') });
export type HoldReason = z.infer<typeof holdReason>;

export const holdFinding = z.strictObject({
  finding: words('Write down what was found, so that a second person can agree to it.'),
});
export type HoldFinding = z.infer<typeof holdFinding>;

export const holdQuery = pageQuery.extend({
  after: z.uuid().optional(),
  open: z.stringbool().default(false),
  buyId: z.uuid().optional(),
});
export type HoldQuery = z.infer<typeof holdQuery>;

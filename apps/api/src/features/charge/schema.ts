import { z } from 'zod';
import { bookDay, currency, reason, till } from '../money/schema.ts';

export { wholeList } from '../split/schema.ts';

/** Above zero it comes back to those who bore the line, below zero a late bill is charged to them. */
export const lateCredit = z
  .strictObject({
    chargeLineId: z.uuid('Name the charge that the money comes back on.'),
    minorUnits: z.int().refine((amount) => amount !== 0, 'A credit of nothing needs no entry.'),
    till: till.optional(),
    supplierId: z.uuid().optional(),
    currency,
    onDay: bookDay.optional(),
    reason,
  })
  .refine((wish) => (wish.till !== undefined) !== (wish.supplierId !== undefined), {
    path: ['till'],
    message: 'Name the till that the money came into, or the supplier who credits it: one of the two.',
  });
export type LateCredit = z.infer<typeof lateCredit>;

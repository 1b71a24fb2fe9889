import { z } from 'zod';
import { bookDay } from '../money/schema.ts';

export const maintenanceWish = z.strictObject({
  doneOn: bookDay.optional(),
  what: z.string().trim().min(1, 'Say what was done.').max(500, 'This has 500 characters at most.'),
  /** A service starts the count of uses and days anew; a repair does not. */
  isService: z.boolean(),
  /** How the piece is now; left out, as it was. */
  condition: z.enum(['ready', 'dirty', 'broken']).optional(),
});
export type MaintenanceWish = z.infer<typeof maintenanceWish>;

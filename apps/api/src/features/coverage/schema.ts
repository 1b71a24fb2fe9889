import { z } from 'zod';

export const gapQuery = z.strictObject({
  /** The open buy to close the gap in. */
  buy: z.uuid(),
  budgetMinorUnits: z.coerce.number().int().nonnegative().max(1_000_000_000),
  targetDays: z.coerce.number().int().min(1).max(3650).optional(),
});
export type GapQuery = z.infer<typeof gapQuery>;

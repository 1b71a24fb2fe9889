import { z } from 'zod';
import { minorUnits, note, reason } from '../buy/schema.ts';

export const callingOff = z.strictObject({
  reason,
  /** What was agreed with the supplier; needed once the buy is ordered. */
  cancellationNote: note.default(''),
  /** What suppliers still bill; the store fund bears it (job map 4.7). */
  cancellationCosts: z
    .array(z.strictObject({ supplierId: z.uuid(), minorUnits }))
    .max(20)
    .default([]),
});
export type CallingOff = z.infer<typeof callingOff>;

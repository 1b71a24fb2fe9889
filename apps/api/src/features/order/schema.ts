import { z } from 'zod';
import { note, reason } from '../buy/schema.ts';

/** One of the two agreements that an order needs. Whoever agrees last sends it, with the note for the supplier. */
export const orderConsent = z.strictObject({
  /** For which duty; needed only from somebody who holds both. */
  duty: z.enum(['coordinator', 'treasurer']).optional(),
  note: note.default(''),
});
export type OrderConsent = z.infer<typeof orderConsent>;

export const reopening = z.strictObject({
  reason,
  /** The households that were told that their deposit stays held while the buy is open again. */
  toldHouseholdIds: z.array(z.uuid()).max(1000).default([]),
});
export type Reopening = z.infer<typeof reopening>;

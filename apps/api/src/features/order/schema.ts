import { z } from 'zod';
import { note, reason } from '../buy/schema.ts';
import { quoteReplacement } from '../quote/schema.ts';

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

const { version, validUntil, freightSteps, freightFreeFromMinorUnits, offers } = quoteReplacement.shape;

/**
 * What the supplier says now that the buy is fixed: prices, freight and how long they stand. The bags stay what they
 * are, because households were promised grams of them; other bags need the buy to be opened again.
 */
export const confirmedTerms = z.strictObject({
  version,
  validUntil,
  freightSteps,
  freightFreeFromMinorUnits,
  offers: z
    .array(z.strictObject({ bagOfferId: z.uuid(), breaks: offers.element.shape.breaks }))
    .max(100)
    .default([]),
});
export type ConfirmedTerms = z.infer<typeof confirmedTerms>;

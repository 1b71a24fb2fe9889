import { STARTER_WINDOW_HOURS } from '@sheafbook/giving';
import { z } from 'zod';
import { instant } from '../buy/schema.ts';
import { amountMinorUnits, note } from '../money/schema.ts';

const containerIds = z
  .array(z.uuid())
  .min(1, 'Choose a container.')
  .max(100, 'Offer 100 containers at a time at most.')
  .refine((ids) => new Set(ids).size === ids.length, { message: 'Name each container once.' });

export const offerWish = z.strictObject({
  of: z.enum(['household', 'store']),
  containerIds,
  price: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('gift') }),
    /** For each container alike. */
    z.strictObject({ kind: z.literal('named'), minorUnitsEach: amountMinorUnits }),
    z.strictObject({ kind: z.literal('cost') }),
  ]),
  closesAt: instant,
  windowHours: z
    .int()
    .min(1, 'A turn lasts an hour at least.')
    .max(336, 'A turn lasts two weeks at most.')
    .default(STARTER_WINDOW_HOURS),
  goesToPantry: z.boolean(),
  note,
});
export type OfferWish = z.infer<typeof offerWish>;

/** What to take, and the price in all that was shown for it. */
export const claimWish = z.strictObject({ containerIds, minorUnits: z.int().nonnegative() });
export type ClaimWish = z.infer<typeof claimWish>;

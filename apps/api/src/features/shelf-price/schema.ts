import { z } from 'zod';
import { amountMinorUnits, bookDay } from '../money/schema.ts';

/** A price as it stood on a shelf. `milligrams` is how much one gets for it, since a pound is no whole number of grams; where it was seen says "a shop", and no brand. */
export const shelfPriceWish = z.strictObject({
  foodId: z.uuid(),
  seenOn: bookDay,
  minorUnits: amountMinorUnits.max(1_000_000_000, 'No shop asks that much.'),
  milligrams: z
    .int()
    .positive('A price is for some mass.')
    .max(1_000_000_000_000, 'No shop sells that much at once.'),
  seenWhere: z.string().trim().max(60, 'Where it was seen has 60 characters at most.').default(''),
});
export type ShelfPriceWish = z.infer<typeof shelfPriceWish>;

/** The last day of the year that is asked about; today unless it is said. */
export const savingsQuery = z.strictObject({ through: bookDay.optional() });

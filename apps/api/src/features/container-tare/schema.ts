import { MOST_TARE_GRAMS, TARE_CONTAINERS } from '@sheafbook/packing';
import { z } from 'zod';
import { instant } from '../buy/schema.ts';

const WEIGH_TEN = `Weigh ${TARE_CONTAINERS} empty containers, one after the other.`;

/** What one empty container weighs. */
export const emptyGrams = z
  .int('Give whole grams.')
  .min(1, 'An empty container weighs something.')
  .max(MOST_TARE_GRAMS, 'No empty container weighs more than 100 kg.');

export const tareWish = z.strictObject({
  containerKindId: z.uuid(),
  /** Whole grams of each, as it will be weighed when it is full: with its lid or its liner, or without. */
  readings: z.array(emptyGrams).min(TARE_CONTAINERS, WEIGH_TEN).max(TARE_CONTAINERS, WEIGH_TEN),
  /** By the phone that stood at the scale, where there was no signal; now, unless it says so. */
  weighedAt: instant.optional(),
});
export type TareWish = z.infer<typeof tareWish>;

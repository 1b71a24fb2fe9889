import { z } from 'zod';
import { bookDay } from '../money/schema.ts';

/** The heaviest weight that anybody lays on. Source: common practice, no source. */
const MOST_GRAMS = 2_000_000;
const grams = z.int('Give whole grams.').max(MOST_GRAMS, 'That is more than two tonnes.');

export const scaleCheckWish = z.strictObject({
  /** What the weight is known to weigh. */
  laidGrams: grams.positive('Lay a weight on whose grams are known.'),
  shownGrams: grams.nonnegative('Write down what the scale shows, zero or more.'),
  /** By how much it may be off, as the group or the maker of the scale says. */
  limitGrams: grams.nonnegative('What it may be off by is zero or more.'),
  checkedOn: bookDay.optional(),
});
export type ScaleCheckWish = z.infer<typeof scaleCheckWish>;

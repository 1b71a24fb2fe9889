import { THERMOMETER_TENTHS } from '@sheafbook/packing';
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

/** Nobody goes by a thermometer that may be off by more than 20 °C; it guards against a slip. Source: common practice, no source. */
const MOST_OFF_TENTHS = 200;
const tenths = z.int('Give whole tenths of a degree Celsius.');
const temperature = tenths
  .min(
    THERMOMETER_TENTHS.least,
    'No thermometer of food or a room is that cold: −100 °C (−148 °F) at the least.',
  )
  .max(THERMOMETER_TENTHS.most, 'No thermometer of food or a room is that hot: 300 °C (572 °F) at the most.');

export const thermometerCheckWish = z.strictObject({
  /** What it should have shown: ice water at 0 °C, or boiling water at what it boils at where one is. */
  knownTenths: temperature,
  shownTenths: temperature,
  /** By how much it may be off, as the group or the maker of the thermometer says. */
  limitTenths: tenths
    .nonnegative('What it may be off by is zero or more.')
    .max(MOST_OFF_TENTHS, 'What it may be off by is 20 °C (36 °F) at the most.'),
  checkedOn: bookDay.optional(),
});
export type ThermometerCheckWish = z.infer<typeof thermometerCheckWish>;

import { ALLERGENS } from '@sheafbook/foods';
import { firstDayOf, isPartialDay } from '@sheafbook/units';
import { z } from 'zod';
import { thingName } from '../storehouse/schema.ts';

const EARLIEST_BIRTH = '1900-01-01';

const birthOn = z
  .string()
  .refine(isPartialDay, 'Write a birth date as a day, a month or a year: 2019-04-30, 2019-04 or 2019.')
  .refine(
    (text) => !isPartialDay(text) || firstDayOf(text) >= EARLIEST_BIRTH,
    'A birth date lies in 1900 or later.',
  );

const eachOnce = (values: readonly string[]) => new Set(values).size === values.length;

const facts = {
  name: thingName,
  birthOn,
  sex: z.enum(['female', 'male', 'unstated']),
  activity: z.enum(['sedentary', 'moderate', 'active']),
  presentPercent: z.int().min(0).max(100),
  heightCentimetres: z.int().min(30).max(250).nullable(),
  massKilograms: z.int().min(1).max(400).nullable(),
  typedKilocalories: z.int().min(0).max(10_000).nullable(),
  excludedAllergens: z.array(z.enum(ALLERGENS)).refine(eachOnce, 'Name each allergen once.'),
  excludedFoodCodes: z.array(z.string().max(100)).max(200).refine(eachOnce, 'Name each food once.'),
  avoidsGluten: z.boolean(),
};

export const newEater = z.strictObject({
  ...facts,
  sex: facts.sex.default('unstated'),
  activity: facts.activity.default('moderate'),
  presentPercent: facts.presentPercent.default(100),
  heightCentimetres: facts.heightCentimetres.default(null),
  massKilograms: facts.massKilograms.default(null),
  typedKilocalories: facts.typedKilocalories.default(null),
  excludedAllergens: facts.excludedAllergens.default([]),
  excludedFoodCodes: facts.excludedFoodCodes.default([]),
  avoidsGluten: facts.avoidsGluten.default(false),
});
export type NewEater = z.infer<typeof newEater>;

/** An edit repeats every field: one that is left out must not quietly forget an allergy. */
export const eaterEdit = z.strictObject({ ...facts, version: z.int().positive() });
export type EaterEdit = z.infer<typeof eaterEdit>;

export const eaterVersion = z.strictObject({ version: z.coerce.number().int().positive() });

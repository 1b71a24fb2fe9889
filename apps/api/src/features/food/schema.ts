import { ALLERGENS, FOOD_GROUPS, KEEPING_CLASSES } from '@sheafbook/foods';
import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';
import { thingName } from '../storehouse/schema.ts';

const milligrams = z.int().min(0).max(100_000).nullable();
const version = z.int().positive();

/** The shape of a code, as the database holds it too: it stands on labels and in exports, so it never changes. */
const foodCode = z
  .string()
  .max(80, 'A code has 80 characters at most.')
  .regex(
    /^[a-z0-9]+(-[a-z0-9]+)*$/,
    'A code is small letters and digits with single hyphens, such as red-lentils.',
  );

const figures = {
  foodGroup: z.enum(FOOD_GROUPS),
  /** Null says that nobody knows; then coverage by energy leaves the food out and says so. */
  kilocaloriesPer100Grams: z.int().min(0).max(950).nullable(),
  proteinMilligramsPer100Grams: milligrams.default(null),
  fatMilligramsPer100Grams: milligrams.default(null),
  carbohydrateMilligramsPer100Grams: milligrams.default(null),
  fibreMilligramsPer100Grams: milligrams.default(null),
  bulkMicrogramsPerMillilitre: z.int().min(1000).max(3_000_000).nullable().default(null),
  /** An answer is needed: an empty list states that the food has none of the nine (job map 2.2). */
  allergens: z
    .array(z.enum(ALLERGENS), 'State the allergens; an empty list says that there are none.')
    .refine((list) => new Set(list).size === list.length, 'Name each allergen once.'),
  gluten: z.enum(['yes', 'no', 'cross-contact']),
  needsMoistureTest: z.boolean().default(false),
  /** Where the figures come from, such as the label of a sack. */
  source: z.string().trim().min(1, 'Say where the figures come from.').max(300),
};

export const foodWish = z.strictObject({
  foodCode: foodCode.optional(),
  nameEn: thingName,
  nameEs: thingName.optional(),
  keepingClass: z.enum(KEEPING_CLASSES).nullable().default(null),
  ...figures,
});
export type FoodWish = z.infer<typeof foodWish>;

export const foodEdit = z.strictObject({ version, nameEn: thingName, nameEs: thingName, ...figures });
export type FoodEdit = z.infer<typeof foodEdit>;

export const foodRetirement = z.strictObject({ version, isRetired: z.boolean() });
export type FoodRetirement = z.infer<typeof foodRetirement>;

export const foodQuery = pageQuery.extend({
  /** Words of the name in either language, or of the code. */
  search: z.string().trim().max(100).optional(),
  retired: z.enum(['no', 'yes', 'all']).default('no'),
});
export type FoodQuery = z.infer<typeof foodQuery>;

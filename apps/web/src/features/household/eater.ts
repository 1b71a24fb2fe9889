import type { InferResponseType } from 'hono/client';
import type { api } from '../../api/client.ts';
import type { Catalogue } from '../../text/en/core.ts';

type Household = (typeof api.storehouses)[':storehouse']['households'][':household'];
export type KnownEater = InferResponseType<Household['eaters']['$post'], 201>;
export const ALLERGENS = [
  'milk',
  'egg',
  'fish',
  'crustacean-shellfish',
  'tree-nuts',
  'peanuts',
  'wheat',
  'soy',
  'sesame',
] as const;
export type Allergen = (typeof ALLERGENS)[number];

/** Age and diet in plain words: "8 years, no milk, no lentils, no gluten". */
export function describeEater(t: Catalogue, eater: KnownEater, nameOf: (foodCode: string) => string): string {
  const years = eater.ageYears;
  const avoided = eater.excludedAllergens.map((allergen) => t.without(t.allergens[allergen] ?? allergen));
  return [
    years === null ? t.notBornYet : t.years(years),
    ...avoided,
    ...eater.excludedFoodCodes.map((code) => t.without(nameOf(code))),
    ...(eater.avoidsGluten ? [t.withoutGluten] : []),
    ...(eater.presentPercent < 100 ? [t.presentShare(eater.presentPercent)] : []),
  ].join(', ');
}

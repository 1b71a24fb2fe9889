import type { Catalogue } from '../../text/en/core.ts';
import type { FoodWords } from '../../text/en/food.ts';
import type { Food } from './queries.ts';

/** Allergens and gluten in plain words; that a food has none is said, never left to be guessed. */
export function sayAllergens(t: Catalogue, words: FoodWords, food: Food): string {
  const named = food.allergens.map((allergen) => (t.allergens[allergen] ?? allergen).toLowerCase());
  const gluten = words.glutens[food.gluten] ?? food.gluten;
  return `${named.length === 0 ? words.noneOfNine : words.contains(named)}; ${gluten}`;
}

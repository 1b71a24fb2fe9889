import type { EaterFacts } from './eater.ts';
import type { StockLot } from './stock-lot.ts';

/**
 * Whether an eater may eat a food: none of its allergens and not the food itself is excluded, and someone who
 * avoids gluten gets neither gluten nor what may have touched it.
 * Units: codes, compared without regard to case. Errors: none.
 */
export function mayEat(
  eater: Pick<EaterFacts, 'excludedAllergens' | 'excludedFoodCodes' | 'avoidsGluten'>,
  food: Pick<StockLot, 'foodCode' | 'allergens' | 'gluten'>,
): boolean {
  if (eater.avoidsGluten && food.gluten !== 'no') return false;
  if (isListed(food.foodCode, eater.excludedFoodCodes)) return false;
  return !food.allergens.some((allergen) => isListed(allergen, eater.excludedAllergens));
}

/** A capital letter in an allergen's name must never be what lets it through. */
function isListed(code: string, excluded: readonly string[]): boolean {
  return excluded.some((other) => other.trim().toLowerCase() === code.trim().toLowerCase());
}

import type { EaterFacts } from './eater.ts';
import type { StockLot } from './stock-lot.ts';

/** What an eater does not eat. Units: codes. Errors: none by itself. */
export type Exclusions = Pick<EaterFacts, 'excludedAllergens' | 'excludedFoodCodes' | 'avoidsGluten'>;

/** Why an eater may not eat a food. Units: codes of allergens as the food has them. Errors: none by itself. */
export type WhyNot = {
  readonly allergens: readonly string[];
  readonly isFoodExcluded: boolean;
  readonly hasGluten: boolean;
};

/**
 * Why an eater may not eat a food: its allergens that are excluded, the food itself, and gluten, or what may have touched
 * it, for someone who avoids that.
 * Units: codes, compared without regard to case. Shape: null when nothing speaks against it. Errors: none.
 */
export function whyNotEat(
  eater: Exclusions,
  food: Pick<StockLot, 'foodCode' | 'allergens' | 'gluten'>,
): WhyNot | null {
  const allergens = food.allergens.filter((allergen) => isListed(allergen, eater.excludedAllergens));
  const isFoodExcluded = isListed(food.foodCode, eater.excludedFoodCodes);
  const hasGluten = eater.avoidsGluten && food.gluten !== 'no';
  return allergens.length > 0 || isFoodExcluded || hasGluten
    ? { allergens, isFoodExcluded, hasGluten }
    : null;
}

/**
 * Whether an eater may eat a food: none of its allergens and not the food itself is excluded, and someone who
 * avoids gluten gets neither gluten nor what may have touched it.
 * Units: codes, compared without regard to case. Errors: none.
 */
export const mayEat = (
  eater: Exclusions,
  food: Pick<StockLot, 'foodCode' | 'allergens' | 'gluten'>,
): boolean => whyNotEat(eater, food) === null;

/** A capital letter in an allergen's name must never be what lets it through. */
function isListed(code: string, excluded: readonly string[]): boolean {
  return excluded.some((other) => other.trim().toLowerCase() === code.trim().toLowerCase());
}

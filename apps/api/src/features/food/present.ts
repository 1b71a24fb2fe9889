import type { FoodRow } from '@sheafbook/db/tables';

export function presentFood(food: FoodRow) {
  return {
    id: food.foodId,
    foodCode: food.foodCode,
    nameEn: food.nameEn,
    nameEs: food.nameEs,
    foodGroup: food.foodGroup,
    isOwn: food.isOwn,
    kilocaloriesPer100Grams: food.kilocaloriesPer100Grams,
    proteinMilligramsPer100Grams: food.proteinMilligramsPer100Grams,
    fatMilligramsPer100Grams: food.fatMilligramsPer100Grams,
    carbohydrateMilligramsPer100Grams: food.carbohydrateMilligramsPer100Grams,
    fibreMilligramsPer100Grams: food.fibreMilligramsPer100Grams,
    bulkMicrogramsPerMillilitre: food.bulkMicrogramsPerMillilitre,
    allergens: food.allergens,
    gluten: food.gluten,
    keepingClass: food.keepingClass,
    needsMoistureTest: food.needsMoistureTest,
    source: food.source,
    sourceRelease: food.sourceRelease,
    sourceNumber: food.sourceNumber,
    isRetired: food.retiredAt !== null,
    version: food.version,
  };
}

export function presentFoods(page: { rows: readonly FoodRow[]; next: string | null }) {
  return { foods: page.rows.map(presentFood), next: page.next };
}

export function presentFoodCells(food: FoodRow) {
  const { allergens, ...cells } = presentFood(food);
  return { ...cells, allergens: allergens.join(' ') };
}

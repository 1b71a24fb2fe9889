import { assert } from '@sheafbook/units';
import { bulkDensityOf } from './bulk-density.ts';
import { COMPOSITION_SOURCE, COMPOSITION_TABLE, type CompositionRow } from './composition-table.ts';
import type { Composition, Food } from './food.ts';
import { FOOD_TRAITS, type FoodTraits } from './food-traits.ts';

/**
 * The foods of a storehouse as published, for a group to adopt; its own foods stand beside them in its books.
 * Units: as `Food`. Errors: none.
 * Source: USDA ARS, National Nutrient Database for Standard Reference, release 28; the database number is in each row.
 */
export const REFERENCE_FOODS: readonly Food[] = FOOD_TRAITS.map(toFood);

const FOOD_OF_CODE = new Map(REFERENCE_FOODS.map((food) => [food.foodCode, food]));

/** The reference food of a code, or undefined. Units: as `Food`. Errors: none. */
export function findReferenceFood(foodCode: string): Food | undefined {
  return FOOD_OF_CODE.get(foodCode);
}

function toFood({ en, es, remark, ...traits }: FoodTraits): Food {
  const row = COMPOSITION_TABLE[traits.foodCode];
  assert(row, `${traits.foodCode} has no row of composition`);
  const [databaseNumber, , , , , , , gramsPerCup] = row;
  return {
    ...traits,
    ...toComposition(row),
    ...bulkDensityOf(traits.foodCode, gramsPerCup),
    names: { en, es },
    gramsPerCup,
    // Anything that grew as a seed may come in too damp for an oxygen-free pack, and flour with it.
    needsMoistureTest: traits.group === 'grains' || traits.group === 'legumes',
    remark: remark ?? null,
    source: { ...COMPOSITION_SOURCE, databaseNumber },
  };
}

function toComposition([
  ,
  water,
  kilocalories,
  protein,
  fat,
  carbohydrate,
  fibre,
]: CompositionRow): Composition {
  return {
    kilocaloriesPer100Grams: kilocalories,
    proteinMilligramsPer100Grams: toMilligrams(protein),
    fatMilligramsPer100Grams: toMilligrams(fat),
    carbohydrateMilligramsPer100Grams: toMilligrams(carbohydrate),
    fibreMilligramsPer100Grams: fibre === null ? null : toMilligrams(fibre),
    waterMilligramsPer100Grams: toMilligrams(water),
  };
}

/** The table prints hundredths of a gram, so rounding only clears what the binary double adds. */
function toMilligrams(grams: number): number {
  return Math.round(grams * 1000);
}

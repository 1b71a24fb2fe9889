import type { FoodRow, ShelfPriceRow } from '@sheafbook/db/tables';
import type { readSavings, readShelfPrices } from './use-cases.ts';

export const presentShelfPrice = ({ price, food }: { price: ShelfPriceRow; food: FoodRow }) => ({
  id: price.shelfPriceId,
  food: { id: food.foodId, nameEn: food.nameEn, nameEs: food.nameEs },
  seenOn: price.seenOn,
  minorUnits: price.minorUnits,
  milligrams: price.milligrams,
  seenWhere: price.seenWhere,
});

export const presentShelfPrices = (rows: Awaited<ReturnType<typeof readShelfPrices>>) => ({
  prices: rows.map((row) => ({ ...presentShelfPrice(row), notedBy: row.notedByName })),
});

export const presentSavings = ({ period, foods, ...saved }: Awaited<ReturnType<typeof readSavings>>) => ({
  fromOn: period.fromOn,
  throughOn: period.throughOn,
  grams: saved.grams,
  pricedGrams: saved.pricedGrams,
  /** Null where no food has a price: then nobody knows. */
  savedMinorUnits: foods.some(({ savedMinorUnits }) => savedMinorUnits !== null)
    ? saved.savedMinorUnits
    : null,
  foods: foods.map((food) => ({
    food: { id: food.foodId, nameEn: food.nameEn, nameEs: food.nameEs },
    ...{ grams: food.grams, landedMinorUnits: food.landedMinorUnits },
    ...{ shelfMinorUnits: food.shelfMinorUnits, savedMinorUnits: food.savedMinorUnits },
  })),
});

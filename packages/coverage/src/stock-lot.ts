import type { FoodGroupCode } from './food-group.ts';

/**
 * A lot, or the part of one, that a household holds.
 * Units: whole grams; `daysLeft` in whole days that it may still be eaten, counted from tomorrow, null when no day
 * is known to end it. Errors: none by itself.
 */
export type StockLot = {
  readonly lotId: string;
  readonly foodCode: string;
  readonly group: FoodGroupCode;
  readonly grams: number;
  readonly daysLeft: number | null;
  readonly allergens: readonly string[];
  readonly gluten: 'yes' | 'no' | 'cross-contact';
  readonly kilocaloriesPer100Grams: number;
};

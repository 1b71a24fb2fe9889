import { addFractions, type Fraction, fraction, multiplyFractions } from '@sheafbook/units';
import type { EaterFacts } from './eater.ts';
import { groupBy } from './group-by.ts';
import { ratesOf } from './group-rates.ts';
import type { HouseholdCoverage } from './household-coverage.ts';
import { mayEat } from './may-eat.ts';
import type { StockLot } from './stock-lot.ts';

/** A food of a stock, as far as a pace of eating asks. Units: whole grams. Errors: none by itself. */
export type StockFood = Pick<StockLot, 'foodCode' | 'group' | 'grams' | 'allergens' | 'gluten'>;

/**
 * How much of each food of its stock a household eats in a day: what each eater needs of a group is taken from the foods of
 * it that they may eat, in the proportion in which these are there. A food that nobody may eat has a pace of 0.
 * Units: grams a day, exact. Shape: by code, in the order of the stock. Errors: none.
 * Source: common practice, no source; the needs are the coverage's own.
 */
export function eatingPace(
  coverage: Pick<HouseholdCoverage, 'eaters' | 'groups'>,
  { eaters, stock }: { readonly eaters: readonly EaterFacts[]; readonly stock: readonly StockFood[] },
): Map<string, Fraction> {
  const pace = new Map<string, Fraction>(stock.map(({ foodCode }) => [foodCode, fraction(0)]));
  for (const lots of groupBy(stock, ({ group }) => group)) {
    const [first] = lots;
    if (!first) continue;
    for (const { eaterId, perDay } of ratesOf(coverage, first.group)) {
      const eater = eaters.find((one) => one.eaterId === eaterId);
      const edible = lots.filter((lot) => lot.grams > 0 && eater !== undefined && mayEat(eater, lot));
      const all = edible.reduce((sum, { grams }) => sum + grams, 0);
      for (const { foodCode, grams } of edible) {
        const part = multiplyFractions(perDay, fraction(grams, all));
        pace.set(foodCode, addFractions(pace.get(foodCode) ?? fraction(0), part));
      }
    }
  }
  return pace;
}

/**
 * The foods that are all that somebody with a diet of their own can eat of a group.
 * Units: none. Shape: codes. Errors: none.
 */
export function onlyFoods(eaters: readonly EaterFacts[], stock: readonly StockFood[]): Set<string> {
  const only = new Set<string>();
  for (const lots of groupBy(stock, ({ group }) => group))
    for (const eater of eaters) {
      const edible = new Set(lots.filter((lot) => mayEat(eater, lot)).map(({ foodCode }) => foodCode));
      const all = new Set(lots.map(({ foodCode }) => foodCode));
      const [food] = edible;
      if (food !== undefined && edible.size === 1 && all.size > 1) only.add(food);
    }
  return only;
}

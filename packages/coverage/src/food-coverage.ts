import { type DaysCovered, daysCovered } from './days-covered.ts';
import type { EaterFacts } from './eater.ts';
import type { FoodGroupCode } from './food-group.ts';
import { groupBy } from './group-by.ts';
import { ratesOf } from './group-rates.ts';
import type { HouseholdCoverage } from './household-coverage.ts';
import { mayEat } from './may-eat.ts';
import type { StockLot } from './stock-lot.ts';

/**
 * How far one food alone goes.
 * Units: whole grams; `days` exact, 'no-end' when none of those who may eat it needs any of its group, `wholeDays` its
 * floor or null. Errors: none by itself.
 */
export type FoodCoverage = Pick<DaysCovered, 'days' | 'wholeDays'> & {
  readonly foodCode: string;
  readonly group: FoodGroupCode;
  readonly grams: number;
  readonly mayEatIds: readonly string[];
  readonly mayNotEatIds: readonly string[];
};

/**
 * How long each food of a stock would feed those who may eat it, were it all that they eat of its group.
 * Units: grams and days. Shape: one row a food, in the order of the stock; `grams` leaves out what is past its last
 * day. The days of several foods of a group do not add up to the group's when diets differ: that is daysCovered's work.
 * Errors: as daysCovered.
 */
export function coverByFood(
  coverage: Pick<HouseholdCoverage, 'eaters' | 'groups'>,
  { eaters, stock }: { readonly eaters: readonly EaterFacts[]; readonly stock: readonly StockLot[] },
): FoodCoverage[] {
  return groupBy(stock, ({ foodCode }) => foodCode).flatMap((lots) => {
    const [first] = lots;
    if (!first) return [];
    const eating = eaters.filter((eater) => mayEat(eater, first)).map(({ eaterId }) => eaterId);
    const { days, wholeDays } = daysCovered({
      rates: ratesOf(coverage, first.group).filter(({ eaterId }) => eating.includes(eaterId)),
      lots: lots.map(({ lotId, grams, daysLeft }) => {
        return { lotId, amount: BigInt(grams), daysLeft, eaterIds: eating };
      }),
    });
    return {
      foodCode: first.foodCode,
      group: first.group,
      grams: lots.reduce((sum, { grams, daysLeft }) => sum + ((daysLeft ?? 1) > 0 ? grams : 0), 0),
      days,
      wholeDays,
      mayEatIds: eating,
      mayNotEatIds: eaters.map(({ eaterId }) => eaterId).filter((id) => !eating.includes(id)),
    };
  });
}

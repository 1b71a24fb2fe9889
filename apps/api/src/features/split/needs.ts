import { type Activity, adultShare, type EaterFacts, GUIDELINE, mayEat, type Sex } from '@sheafbook/coverage';
import type { Tx } from '@sheafbook/db';
import type { EaterRow, FoodRow } from '@sheafbook/db/tables';
import { addFractions, divideFractions, type Fraction, fraction, multiplyFractions } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { todayOf } from '../../platform/today.ts';
import type { OwnerNeed } from './claims.ts';
import { listEatersOf, listOwnGuidelines, listYearAdders, sumStockOf } from './need-queries.ts';

const DAYS_A_YEAR = fraction(365);

/**
 * What need-first reads of each claimant: how much its eaters eat a day of the food's group, those only who may eat
 * this food, by the guideline; and what the household holds of that group. Each household is told that it was read.
 */
export async function readNeeds(
  tx: Tx,
  context: Context,
  wish: { food: FoodRow; ownerIds: readonly string[]; what?: string; purpose: string },
): Promise<Map<string, OwnerNeed>> {
  const { storehouseId } = context.actor;
  const { food, ownerIds: householdIds, what = 'days of stock, as need-first reads it', purpose } = wish;
  const { foodGroup } = food;
  await notePrivateRead(tx, context, { householdIds, what, purpose });
  const eaters = await listEatersOf(tx, storehouseId, householdIds);
  const yearAdders = await listYearAdders(tx, storehouseId, householdIds);
  const guidelines = await listOwnGuidelines(tx, storehouseId, { householdIds, foodGroup });
  const stocks = await sumStockOf(tx, storehouseId, { householdIds, foodGroup });
  const commonGuideline = GUIDELINE.find((row) => row.group === foodGroup)?.gramsPerAdultYear ?? fraction(0);
  return new Map(
    householdIds.map((householdId) => {
      const own = guidelines.get(householdId);
      const dailyGrams = dailyNeed({
        food,
        eaters: eaters.filter((eater) => eater.householdId === householdId),
        gramsPerAdultYear: own === undefined ? commonGuideline : fraction(own),
        today: todayOf(context),
        addYear: yearAdders.has(householdId),
      });
      return [householdId, { dailyGrams, stockGrams: stocks.get(householdId) ?? 0 }];
    }),
  );
}

function dailyNeed(wish: {
  food: FoodRow;
  eaters: readonly EaterRow[];
  gramsPerAdultYear: Fraction;
  today: string;
  addYear: boolean;
}): Fraction {
  const { food, eaters, gramsPerAdultYear, today, addYear } = wish;
  const gluten = food.gluten as 'yes' | 'no' | 'cross-contact';
  const shares = eaters
    .map(toFacts)
    .filter((eater) => mayEat(eater, { foodCode: food.foodCode, allergens: food.allergens, gluten }))
    .map((eater) => adultShare(eater, today, { addYear }));
  const adults = shares.reduce(addFractions, fraction(0));
  return multiplyFractions(adults, divideFractions(gramsPerAdultYear, DAYS_A_YEAR));
}

/** The checks of the table hold what these types say. */
const toFacts = (eater: EaterRow): EaterFacts => ({
  ...eater,
  sex: eater.sex as Sex,
  activity: eater.activity as Activity,
});

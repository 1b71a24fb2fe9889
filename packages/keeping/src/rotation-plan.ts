import { addDays, compareText, sumOf } from '@sheafbook/units';
import { eatInOrder, paceThatEatsAll } from './rotation.ts';

/**
 * One container as a plan of eating sees it.
 * Units: whole grams; `daysLeft` whole days to its eat-first. `placeKey` and `foodCode` name where it stands and what it is.
 * Errors: none by itself.
 */
export type PlannedLot = {
  readonly code: string;
  readonly foodCode: string;
  readonly placeKey: string;
  readonly grams: number;
  readonly daysLeft: number;
};

/** What becomes of it. Units: whole grams; `month` is `YYYY-MM` of its eat-first. Errors: none. */
export type PlannedOutcome = Omit<PlannedLot, 'daysLeft'> & {
  readonly month: string;
  readonly eatenGrams: number;
  readonly atRiskGrams: number;
};

/** How much of each food is eaten in a day. Units: grams a day; a food that is not named is not eaten. Errors: none. */
export type Pace = ReadonlyMap<string, number>;

/**
 * Eats each food in order at its own pace.
 * Units: as `PlannedLot`. Shape: food by food, within a food in the order of eating. Errors: as `eatInOrder`.
 */
export function planRotation(
  lots: readonly PlannedLot[],
  { pace, todayOn }: { readonly pace: Pace; readonly todayOn: string },
): PlannedOutcome[] {
  return [...byFood(lots)].flatMap(([foodCode, ofFood]) => {
    const lotOf = new Map(ofFood.map((lot) => [lot.code, lot]));
    return eatInOrder(ofFood, pace.get(foodCode) ?? 0).flatMap(({ code, eatenGrams, atRiskGrams }) => {
      const lot = lotOf.get(code);
      if (!lot) return [];
      const { placeKey, grams, daysLeft } = lot;
      const month = addDays(todayOn, daysLeft).slice(0, 7);
      return [{ code, foodCode, placeKey, grams, month, eatenGrams, atRiskGrams }];
    });
  });
}

/** Grams at risk under one key, and which foods they are. Units: whole grams. Errors: none. */
export type RiskSum = {
  readonly key: string;
  readonly atRiskGrams: number;
  readonly foods: readonly { readonly foodCode: string; readonly atRiskGrams: number }[];
};

/**
 * The grams at risk, summed by month, place or food.
 * Units: whole grams. Shape: keys that have some, in order; their foods too, most first. Errors: none.
 */
export function sumRisk(
  outcomes: readonly PlannedOutcome[],
  by: 'month' | 'placeKey' | 'foodCode',
): RiskSum[] {
  const sums = new Map<string, Map<string, number>>();
  for (const outcome of outcomes) {
    if (outcome.atRiskGrams === 0) continue;
    const foods = sums.get(outcome[by]) ?? new Map<string, number>();
    foods.set(outcome.foodCode, (foods.get(outcome.foodCode) ?? 0) + outcome.atRiskGrams);
    sums.set(outcome[by], foods);
  }
  return [...sums]
    .map(([key, foods]) => ({
      key,
      atRiskGrams: sumOf([...foods.values()]),
      foods: [...foods]
        .map(([foodCode, atRiskGrams]) => ({ foodCode, atRiskGrams }))
        .toSorted((a, b) => b.atRiskGrams - a.atRiskGrams || compareText(a.foodCode, b.foodCode)),
    }))
    .toSorted((a, b) => compareText(a.key, b.key));
}

/**
 * How a food is eaten and how it would have to be.
 * Units: whole grams and grams a day; `steadyGramsPerDay` is the least pace that eats in time all that still can be, 0 when
 * there is none; `pastGrams` is past its eat-first already; `daysToEatAll` whole days at the pace, null without one.
 * Errors: none.
 */
export type FoodPace = {
  readonly foodCode: string;
  readonly grams: number;
  readonly pastGrams: number;
  readonly gramsPerDay: number;
  readonly steadyGramsPerDay: number;
  readonly daysToEatAll: number | null;
};

/**
 * The steady pace of each food beside the one at which it is eaten.
 * Units: as `FoodPace`. Shape: a row a food, by its code. Errors: as `paceThatEatsAll`.
 */
export function foodPaces(lots: readonly PlannedLot[], pace: Pace): FoodPace[] {
  return [...byFood(lots)]
    .map(([foodCode, ofFood]) => {
      const grams = sumOf(ofFood.map((lot) => lot.grams));
      const past = ofFood.filter(({ daysLeft }) => daysLeft === 0);
      const gramsPerDay = pace.get(foodCode) ?? 0;
      return {
        ...{ foodCode, grams, gramsPerDay },
        pastGrams: sumOf(past.map((lot) => lot.grams)),
        steadyGramsPerDay: paceThatEatsAll(ofFood.filter(({ daysLeft }) => daysLeft > 0)) ?? 0,
        daysToEatAll: gramsPerDay > 0 ? Math.ceil(grams / gramsPerDay) : null,
      };
    })
    .toSorted((a, b) => compareText(a.foodCode, b.foodCode));
}

function byFood(lots: readonly PlannedLot[]): Map<string, PlannedLot[]> {
  const foods = new Map<string, PlannedLot[]>();
  for (const lot of lots) {
    const ofFood = foods.get(lot.foodCode) ?? [];
    foods.set(lot.foodCode, ofFood);
    ofFood.push(lot);
  }
  return foods;
}

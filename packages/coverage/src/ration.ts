import {
  asFraction,
  divideFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  sumFractions,
} from '@sheafbook/units';

/** A food as part of a year's ration. Units: exact grams a year; composition per 100 g as bought. Errors: none by itself. */
export type RationFood = {
  readonly gramsPerYear: Fraction;
  readonly kilocaloriesPer100Grams: number;
  readonly proteinGramsPer100Grams: number;
};

/**
 * What a year's ration gives on each of its 365 days, to stand beside the guideline mass it is made of: the guideline
 * counts mass, and never says whether the mass feeds anyone.
 * Units: kilocalories and grams of protein a day, exact. Errors: AssertionError when a composition is not finite.
 */
export function rationPerDay(foods: readonly RationFood[]): {
  readonly kilocalories: Fraction;
  readonly proteinGrams: Fraction;
} {
  const perDay = (of: (food: RationFood) => number): Fraction =>
    divideFractions(
      sumFractions(foods.map((food) => multiplyFractions(food.gramsPerYear, asFraction(of(food))))),
      fraction(365 * 100),
    );
  return {
    kilocalories: perDay((food) => food.kilocaloriesPer100Grams),
    proteinGrams: perDay((food) => food.proteinGramsPer100Grams),
  };
}

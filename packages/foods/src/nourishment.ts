import { asFraction, type Fraction, fraction, multiplyFractions } from '@sheafbook/units';
import type { Composition } from './food.ts';

/**
 * The energy in a mass of a food.
 * Units: grams in, kilocalories out, exact. Errors: AssertionError when the grams are not finite.
 */
export function kilocaloriesOf(
  food: Pick<Composition, 'kilocaloriesPer100Grams'>,
  grams: Fraction | number,
): Fraction {
  return multiplyFractions(asFraction(grams), fraction(food.kilocaloriesPer100Grams, 100));
}

/**
 * The protein in a mass of a food.
 * Units: grams in, grams of protein out, exact. Errors: AssertionError when the grams are not finite.
 */
export function proteinGramsOf(
  food: Pick<Composition, 'proteinMilligramsPer100Grams'>,
  grams: Fraction | number,
): Fraction {
  return multiplyFractions(asFraction(grams), fraction(food.proteinMilligramsPer100Grams, 100_000));
}

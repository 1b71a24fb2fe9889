import {
  assert,
  assertWhole,
  divideFractions,
  fraction,
  GRAMS_PER_UNIT,
  multiplyFractions,
  roundFraction,
} from '@sheafbook/units';

/**
 * The published factors by which a gift is told; both are estimates, and neither is a figure for taxes.
 * Units: grams a meal (1.2 lb), minor units of a US dollar a pound. Errors: none.
 * Source: 1.2 lb a meal, derived from USDA What We Eat in America; $1.97 a pound of donated food, FY2024 (not re-read).
 */
export const GIFT_FACTORS = { gramsPerMeal: 544, minorUnitsPerPound: 197 } as const;

/**
 * The meals in a gift, to be told with "about".
 * Units: whole grams in, whole meals out, rounded down. Errors: AssertionError when the mass is not whole and ≥ 0.
 * Source: as `GIFT_FACTORS`.
 */
export function mealsOf(grams: number, gramsPerMeal: number = GIFT_FACTORS.gramsPerMeal): number {
  assertWhole(grams, 'grams');
  assert(gramsPerMeal > 0, 'a meal weighs something');
  return Math.floor(grams / gramsPerMeal);
}

/**
 * What a gift is worth by the published factor: the lesser of it and what it cost, where that is known.
 * Units: whole grams, minor units, rounded half up. Errors: AssertionError when a figure is not whole and ≥ 0.
 * Source: as `GIFT_FACTORS`.
 */
export function giftValue(
  grams: number,
  costMinorUnits: number | null = null,
  minorUnitsPerPound: number = GIFT_FACTORS.minorUnitsPerPound,
): number {
  assertWhole(grams, 'grams');
  assertWhole(minorUnitsPerPound, 'minorUnitsPerPound');
  const pounds = divideFractions(fraction(grams), GRAMS_PER_UNIT.lb);
  const minorUnits = Number(roundFraction(multiplyFractions(pounds, fraction(minorUnitsPerPound))));
  if (costMinorUnits === null) return minorUnits;
  assertWhole(costMinorUnits, 'costMinorUnits');
  return Math.min(minorUnits, costMinorUnits);
}

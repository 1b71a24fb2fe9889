import {
  assert,
  assertWhole,
  divideFractions,
  exactGrams,
  type Fraction,
  fraction,
  multiplyFractions,
} from '@sheafbook/units';

/** What a mass of food cost landed. Units: minor units of the storehouse's currency; whole grams. Errors: none by itself. */
export type LandedCost = { readonly minorUnits: number; readonly grams: number };

/**
 * Wheat in one loaf: a 60 lb bushel bakes about ninety one-pound whole-wheat loaves.
 * Units: grams of wheat, exact. Errors: none. Source: state wheat groups, as cited on a page of no authority of its own.
 */
export const WHEAT_GRAMS_PER_LOAF: Fraction = divideFractions(exactGrams(60, 'lb'), fraction(90));

/** Units: grams of dry food in a serving. Errors: none. Source: common practice, no source. */
export const SERVING_GRAMS = 50;

/**
 * What a day's eating of a food costs.
 * Units: minor units a day, an exact fraction; `gramsPerDay` as eaten by all together.
 * Errors: AssertionError when the cost or the mass is not whole or the mass is zero.
 */
export function costPerDay(cost: LandedCost, gramsPerDay: Fraction): Fraction {
  return multiplyFractions(costPerGram(cost), gramsPerDay);
}

/**
 * What the wheat in one one-pound loaf costs.
 * Units: minor units, an exact fraction. Errors: as costPerDay. Source: see WHEAT_GRAMS_PER_LOAF.
 */
export function costPerLoaf(cost: LandedCost): Fraction {
  return multiplyFractions(costPerGram(cost), WHEAT_GRAMS_PER_LOAF);
}

/**
 * What a serving of a dry food costs.
 * Units: minor units, an exact fraction; a serving of whole grams, 50 g unless told.
 * Errors: as costPerDay. Source: see SERVING_GRAMS.
 */
export function costPerServing(cost: LandedCost, servingGrams: number = SERVING_GRAMS): Fraction {
  assertWhole(servingGrams, 'servingGrams');
  return multiplyFractions(costPerGram(cost), fraction(servingGrams));
}

/**
 * How many one-pound loaves a mass of wheat bakes.
 * Units: loaves, an exact fraction, of exact grams. Errors: none. Source: see WHEAT_GRAMS_PER_LOAF.
 */
export function loavesFromWheat(grams: Fraction): Fraction {
  return divideFractions(grams, WHEAT_GRAMS_PER_LOAF);
}

function costPerGram({ minorUnits, grams }: LandedCost): Fraction {
  assertWhole(minorUnits, 'minorUnits');
  assertWhole(grams, 'grams');
  assert(grams > 0, 'a cost per gram needs some grams');
  return fraction(minorUnits, grams);
}

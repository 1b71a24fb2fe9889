import { assert, assertWhole } from './assert.ts';
import { asFraction } from './decimal.ts';
import {
  compareFractions,
  divideFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  roundFraction,
} from './fraction.ts';

/** The units that people buy and weigh in. Units: gram, kilogram, avoirdupois ounce and pound. Errors: none. */
export type MassUnit = 'g' | 'kg' | 'oz' | 'lb';

/**
 * How many grams one of each unit is, exactly. Units: grams per unit. Errors: none.
 * Source: NIST Handbook 44, appendix C (from memory): 1 lb = 453.59237 g, 1 oz av = 28.349523125 g by definition.
 */
export const GRAMS_PER_UNIT: Readonly<Record<MassUnit, Fraction>> = {
  g: fraction(1),
  kg: fraction(1000),
  oz: fraction(28_349_523_125n, 1_000_000_000n),
  lb: fraction(45_359_237n, 100_000n),
};

/**
 * The mass of a count of units without any rounding; a number is taken as the decimal it is written as.
 * Units: grams. Errors: AssertionError when the count is not finite.
 */
export function exactGrams(count: Fraction | number, unit: MassUnit): Fraction {
  return multiplyFractions(asFraction(count), GRAMS_PER_UNIT[unit]);
}

/**
 * The whole grams that the books keep for one physical unit: one bag, one pour. A half gram goes up.
 * Convert each unit alone and add the grams afterwards: six 50 lb bags are 6 × 22,680 g, not 300 lb converted once.
 * Units: `count` in `unit`, the result in grams. Errors: AssertionError when the count is negative, or past 2^53 grams.
 */
export function gramsOfPhysicalUnit(count: Fraction | number, unit: MassUnit): number {
  const grams = exactGrams(count, unit);
  assert(compareFractions(grams, fraction(0)) >= 0, 'a physical unit weighs nothing or more');
  const wholeGrams = Number(roundFraction(grams));
  assertWhole(wholeGrams, 'grams');
  return wholeGrams;
}

/**
 * The whole count of a unit that these grams came from, so that 22,680 g shows as "50 lb" again; null when no whole
 * count gives exactly these grams.
 * Units: grams in, `unit` out. Errors: AssertionError when the grams are not whole and ≥ 0.
 */
export function countFromGrams(grams: number, unit: MassUnit): number | null {
  assertWhole(grams, 'grams');
  // No unit is lighter than a gram, so the nearest count is the only one that can round to these grams.
  const count = Number(roundFraction(divideFractions(fraction(grams), GRAMS_PER_UNIT[unit])));
  return gramsOfPhysicalUnit(count, unit) === grams ? count : null;
}

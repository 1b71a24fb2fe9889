import { assert, assertWhole, compareFractions, fraction, roundFraction } from '@sheafbook/units';

/**
 * A price per mass, kept as the two whole numbers it was made of: `minorUnits` for `grams`.
 * Units: minor units and grams. Errors: none.
 */
export type UnitPrice = { readonly minorUnits: number; readonly grams: number };

/**
 * Orders two prices per mass exactly, whatever masses they are written for: negative when a is the lower.
 * Units: minor units and grams. Errors: AssertionError when a price is not whole or for no gram.
 */
export function compareUnitPrices(a: UnitPrice, b: UnitPrice): number {
  assertUnitPrice(a);
  assertUnitPrice(b);
  return compareFractions(fraction(a.minorUnits, a.grams), fraction(b.minorUnits, b.grams));
}

/**
 * What some mass costs at a price per mass, for an estimate; charges are shared out, never multiplied.
 * Units: whole grams in, minor units out, a half rounded up. Errors: AssertionError when an amount is not
 * whole and ≥ 0, or the price is for no gram.
 */
export function priceOfGrams(price: UnitPrice, grams: number): number {
  assertUnitPrice(price);
  assertWhole(grams, 'grams');
  return Number(roundFraction(fraction(BigInt(price.minorUnits) * BigInt(grams), price.grams)));
}

/**
 * Checks that a price per mass makes sense.
 * Units: minor units and grams. Errors: AssertionError when a number is not whole and ≥ 0, or `grams` is 0.
 */
export function assertUnitPrice({ minorUnits, grams }: UnitPrice): void {
  assertWhole(minorUnits, 'minorUnits');
  assertWhole(grams, 'grams');
  assert(grams > 0, 'a price per mass is for at least one gram');
}

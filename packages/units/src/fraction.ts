import { assert } from './assert.ts';

/** An exact rational number in lowest terms, the denominator positive. Units: the caller's. Errors: none. */
export type Fraction = { readonly numerator: bigint; readonly denominator: bigint };

/**
 * Makes an exact fraction in lowest terms.
 * Units: whatever the caller divides. Shape: denominator > 0, the sign stands in the numerator.
 * Errors: AssertionError when the denominator is zero; RangeError when a number is not whole.
 */
export function fraction(numerator: bigint | number, denominator: bigint | number = 1n): Fraction {
  const top = BigInt(numerator);
  const bottom = BigInt(denominator);
  assert(bottom !== 0n, 'a fraction needs a denominator other than zero');
  const sign = bottom < 0n ? -1n : 1n;
  const shared = greatestCommonDivisor(top < 0n ? -top : top, bottom * sign) || 1n;
  return { numerator: (sign * top) / shared, denominator: (sign * bottom) / shared };
}

/** Adds two fractions exactly. Units: the same for both. Errors: none. */
export function addFractions(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.denominator + b.numerator * a.denominator, a.denominator * b.denominator);
}

/** Subtracts b from a exactly. Units: the same for both. Errors: none. */
export function subtractFractions(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.denominator - b.numerator * a.denominator, a.denominator * b.denominator);
}

/** Multiplies two fractions exactly. Units: the product of theirs. Errors: none. */
export function multiplyFractions(a: Fraction, b: Fraction): Fraction {
  return fraction(a.numerator * b.numerator, a.denominator * b.denominator);
}

/** Divides a by b exactly. Units: the quotient of theirs. Errors: AssertionError when b is zero. */
export function divideFractions(a: Fraction, b: Fraction): Fraction {
  assert(b.numerator !== 0n, 'nothing divides by zero');
  return fraction(a.numerator * b.denominator, a.denominator * b.numerator);
}

/** Orders two fractions: negative when a < b, 0 when equal, positive when a > b. Units: the same for both. Errors: none. */
export function compareFractions(a: Fraction, b: Fraction): number {
  const difference = a.numerator * b.denominator - b.numerator * a.denominator;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** The largest whole number not above a fraction. Units: the fraction's. Errors: none. */
export function floorFraction(value: Fraction): bigint {
  const quotient = value.numerator / value.denominator;
  const isExact = value.numerator % value.denominator === 0n;
  return value.numerator < 0n && !isExact ? quotient - 1n : quotient;
}

/** The smallest whole number not below a fraction. Units: the fraction's. Errors: none. */
export function ceilFraction(value: Fraction): bigint {
  return -floorFraction({ numerator: -value.numerator, denominator: value.denominator });
}

/** The nearest whole number, a half going up. Units: the fraction's. Errors: none. */
export function roundFraction(value: Fraction): bigint {
  return floorFraction(addFractions(value, fraction(1, 2)));
}

/** The nearest double, for display only, never for a further sum. Units: the fraction's. Errors: none. */
export function fractionToNumber(value: Fraction): number {
  return Number(value.numerator) / Number(value.denominator);
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [larger, smaller] = [a, b];
  while (smaller !== 0n) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}

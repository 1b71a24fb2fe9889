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
  if (bottom === 1n) return { numerator: top, denominator: 1n };
  const sign = bottom < 0n ? -1n : 1n;
  const shared = greatestCommonDivisor(top < 0n ? -top : top, bottom * sign) || 1n;
  return { numerator: (sign * top) / shared, denominator: (sign * bottom) / shared };
}

/** Adds two fractions exactly. Units: the same for both. Errors: none. */
export function addFractions(a: Fraction, b: Fraction): Fraction {
  if (a.denominator === b.denominator) return fraction(a.numerator + b.numerator, a.denominator);
  const numerator = a.numerator * b.denominator + b.numerator * a.denominator;
  // A whole number added to lowest terms leaves them lowest.
  if (b.denominator === 1n) return { numerator, denominator: a.denominator };
  if (a.denominator === 1n) return { numerator, denominator: b.denominator };
  return fraction(numerator, a.denominator * b.denominator);
}

/** Subtracts b from a exactly. Units: the same for both. Errors: none. */
export function subtractFractions(a: Fraction, b: Fraction): Fraction {
  return addFractions(a, { numerator: -b.numerator, denominator: b.denominator });
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
  const difference =
    a.denominator === b.denominator
      ? a.numerator - b.numerator
      : a.numerator * b.denominator - b.numerator * a.denominator;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/**
 * The positions of fractions from the smallest to the largest, equal ones in the order they came in. Doubles tell most of
 * them apart, and only what they cannot is compared exactly, so that long lists sort fast.
 * Units: the same for all of them. Shape: each position once. Errors: none.
 */
export function orderOfFractions(values: readonly Fraction[]): number[] {
  const rows = values.map((value, position) => ({ value, position, near: fractionToNumber(value) }));
  rows.sort((a, b) => {
    const apart = a.near - b.near;
    const isPlain = Math.abs(apart) > 1e-9 * Math.max(Math.abs(a.near), Math.abs(b.near)); // far above what doubles err by
    return (isPlain ? apart : compareFractions(a.value, b.value)) || a.position - b.position;
  });
  return rows.map(({ position }) => position);
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

/** Below this a double holds every whole number, and divides several times as fast as a bigint. */
const EXACT_DOUBLE = BigInt(Number.MAX_SAFE_INTEGER);

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [larger, smaller] = [a, b];
  while (smaller !== 0n) {
    if (larger <= EXACT_DOUBLE && smaller <= EXACT_DOUBLE)
      return BigInt(commonDivisorOfDoubles(Number(larger), Number(smaller)));
    [larger, smaller] = [smaller, larger % smaller];
  }
  return larger;
}

function commonDivisorOfDoubles(a: number, b: number): number {
  let [larger, smaller] = [a, b];
  while (smaller !== 0) [larger, smaller] = [smaller, larger % smaller];
  return larger;
}

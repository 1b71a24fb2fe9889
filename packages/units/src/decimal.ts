import { assert } from './assert.ts';
import { type Fraction, fraction } from './fraction.ts';

/**
 * Reads a number as the decimal that a person sees, so that 12.1 is 121/10 and not the nearest double.
 * Units: whatever the number counts. A fraction passes through unchanged.
 * Errors: AssertionError when the number is not finite.
 */
export function asFraction(value: Fraction | number): Fraction {
  if (typeof value !== 'number') return value;
  assert(Number.isFinite(value), `a finite number is needed, got ${value}`);
  const [digits = '0', exponent = '0'] = value.toString().split('e');
  const [whole = '0', decimals = ''] = digits.split('.');
  const power = Number(exponent) - decimals.length;
  const scaled = BigInt(whole + decimals);
  return power < 0 ? fraction(scaled, 10n ** BigInt(-power)) : fraction(scaled * 10n ** BigInt(power));
}

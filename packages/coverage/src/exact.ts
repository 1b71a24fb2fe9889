import { assert, type Fraction, fraction } from '@sheafbook/units';

/**
 * The fraction that a decimal number is written as: 175.9 becomes 1759/10, not the double nearest to it.
 * Units: the number's own. Errors: AssertionError when the number is not finite.
 */
export function exactDecimal(value: number): Fraction {
  assert(Number.isFinite(value), `a decimal must be finite, got ${value}`);
  const [digits = '0', exponent = '0'] = String(value).split('e');
  const [whole = '0', decimals = ''] = digits.split('.');
  const shift = decimals.length - Number(exponent);
  const scaled = BigInt(whole + decimals);
  return shift >= 0 ? fraction(scaled, 10n ** BigInt(shift)) : fraction(scaled * 10n ** BigInt(-shift));
}

/** Units: the same for all of them. Errors: none. */
export function sumFractions(values: readonly Fraction[]): Fraction {
  return values.reduce(
    (sum, value) =>
      fraction(
        sum.numerator * value.denominator + value.numerator * sum.denominator,
        sum.denominator * value.denominator,
      ),
    fraction(0),
  );
}

/** The smallest multiple that the denominators share, so that every value times it is whole. Units: none. Errors: none. */
export function sharedDenominator(values: readonly Fraction[]): bigint {
  return values.reduce(
    (shared, value) => shared * (value.denominator / common(shared, value.denominator)),
    1n,
  );
}

function common(a: bigint, b: bigint): bigint {
  return b === 0n ? a : common(b, a % b);
}

/** Math.min does not take bigints. Units: the same for both. Errors: none. */
export function smaller(a: bigint, b: bigint): bigint {
  return a < b ? a : b;
}

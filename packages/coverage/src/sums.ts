import type { Fraction } from '@sheafbook/units';

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

import { assertWhole } from './assert.ts';
import { asFraction } from './decimal.ts';
import { type Fraction, fraction, multiplyFractions, roundFraction } from './fraction.ts';

/** The units that containers and recipes are named in; gallons, quarts, cups are those of the US. Units: none. Errors: none. */
export type VolumeUnit =
  | 'millilitre'
  | 'litre'
  | 'us-gallon'
  | 'us-quart'
  | 'us-cup'
  | 'us-fluid-ounce'
  | 'cubic-inch'
  | 'us-bushel';

const CUBIC_INCH = fraction(16_387_064n, 1_000_000n);
const cubicInches = (count: Fraction) => multiplyFractions(count, CUBIC_INCH);

/**
 * How many millilitres one of each unit is, exactly. Units: millilitres per unit. Errors: none.
 * Source: NIST Handbook 44, appendix C (from memory): the inch is 25.4 mm, the gallon 231 in³, the bushel 2150.42 in³.
 */
export const MILLILITRES_PER_UNIT: Readonly<Record<VolumeUnit, Fraction>> = {
  millilitre: fraction(1),
  litre: fraction(1000),
  'us-gallon': cubicInches(fraction(231)),
  'us-quart': cubicInches(fraction(231, 4)),
  'us-cup': cubicInches(fraction(231, 16)),
  'us-fluid-ounce': cubicInches(fraction(231, 128)),
  'cubic-inch': CUBIC_INCH,
  'us-bushel': cubicInches(fraction(215_042, 100)),
};

/**
 * A volume in the whole microlitres that container kinds are kept in, a half going up.
 * Units: `count` in `unit`, the result in microlitres. Errors: AssertionError when negative or past 2^53.
 */
export function microlitresOf(count: Fraction | number, unit: VolumeUnit): number {
  const millilitres = multiplyFractions(asFraction(count), MILLILITRES_PER_UNIT[unit]);
  const microlitres = Number(roundFraction(multiplyFractions(millilitres, fraction(1000))));
  assertWhole(microlitres, 'microlitres');
  return microlitres;
}

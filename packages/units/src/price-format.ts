import { assert } from './assert.ts';
import { divideFractions, fraction, multiplyFractions } from './fraction.ts';
import { GRAMS_PER_UNIT } from './mass.ts';
import { formatDecimal, type Locale } from './number-text.ts';

/**
 * Writes a price per mass as the price of one pound or kilogram, to a tenth of the minor unit: 3600 for 22,680 g is
 * "72.0" a pound. For reading only: charges are shared out, never multiplied.
 * Units: minor units for grams in; tenths of a minor unit out, a half rounding away from zero.
 * Errors: AssertionError when the price is for no gram.
 */
export function formatPricePerMass(
  { minorUnits, grams }: { readonly minorUnits: number; readonly grams: number },
  { unit, locale }: { readonly unit: 'lb' | 'kg'; readonly locale: Locale },
): string {
  assert(grams > 0, 'a price per mass is for at least one gram');
  const exact = divideFractions(
    multiplyFractions(fraction(minorUnits), GRAMS_PER_UNIT[unit]),
    fraction(grams),
  );
  return formatDecimal(exact, 1, locale);
}

import { assert } from './assert.ts';
import { divideFractions, fraction, roundFraction } from './fraction.ts';
import { GRAMS_PER_UNIT } from './mass.ts';
import { formatDecimal, type Locale, MINUS_SIGN } from './number-text.ts';

/** The ways a household may choose to see mass. Units: none. Errors: none. */
export type MassDisplay = 'lb' | 'kg' | 'lb-oz';

/**
 * Writes a mass for people. Kilograms show three significant figures below 10 and one decimal from there on, but never
 * past the whole gram that the books keep; pounds show tenths; pounds with ounces show tenths of an ounce.
 * Units: `grams` whole, negative for a difference; the text carries its unit. Halves round away from zero.
 * Errors: AssertionError when the grams are not whole.
 */
export function formatMass(
  grams: number,
  { unit, locale }: { readonly unit: MassDisplay; readonly locale: Locale },
): string {
  assert(Number.isSafeInteger(grams), `grams must be whole, got ${grams}`);
  const sign = grams < 0 ? MINUS_SIGN : '';
  const mass = Math.abs(grams);
  if (unit === 'kg') return `${sign}${formatKilograms(mass, locale)} kg`;
  if (unit === 'lb-oz') return sign + formatPoundsAndOunces(mass, locale);
  return `${sign}${formatDecimal(divideFractions(fraction(mass), GRAMS_PER_UNIT.lb), 1, locale)} lb`;
}

function formatKilograms(grams: number, locale: Locale): string {
  // 9,995 g rounds to the three figures of 10.0 kg, so the border stands where the rounding does.
  if (grams === 0 || grams >= 9_995) return formatDecimal(fraction(grams, 1000), 1, locale);
  return formatDecimal(fraction(grams, 1000), grams >= 1_000 ? 2 : 3, locale);
}

function formatPoundsAndOunces(grams: number, locale: Locale): string {
  // Round to tenths of an ounce first: 15.96 oz must carry into the next pound, not show as 16.0 oz.
  const tenths = roundFraction(divideFractions(fraction(BigInt(grams) * 10n), GRAMS_PER_UNIT.oz));
  const pounds = formatDecimal(fraction(tenths / 160n), 0, locale);
  return `${pounds} lb ${formatDecimal(fraction(tenths % 160n, 10n), 1, locale)} oz`;
}

import { assert } from './assert.ts';
import { compareFractions, type Fraction, fraction, multiplyFractions, roundFraction } from './fraction.ts';

/** The languages that numbers are written in. Units: none. Errors: none. */
export type Locale = 'en' | 'es';

/** The sign of a negative number in print: longer than a hyphen, and no line breaks after it. Units: none. Errors: none. */
export const MINUS_SIGN = '−';

const NO_BREAK_SPACE = '\u00a0';

/**
 * Reads an unsigned number as people type it in either language.
 *
 * The rule for commas and points: a comma before every three digits, after one to three leading digits that do not
 * begin with 0, groups thousands ("1,000", "12,500.5"); any other single comma is a decimal comma ("12,5", "0,125",
 * "1234,567"). A single point is always a decimal point ("1.000" is one); points group only where a decimal comma
 * follows or where two or more stand ("1.000,5", "1.000.000"). A no-break space groups; an ordinary space does not.
 * Units: none. Errors: none; undefined when the text is no such number.
 */
export function readDecimal(text: string): Fraction | undefined {
  const plain = toPlainDecimal(text);
  const match = plain === undefined ? null : /^(\d*)(?:\.(\d+))?$/.exec(plain);
  if (!match) return undefined;
  const [, whole = '', decimals = ''] = match;
  if (whole + decimals === '') return undefined;
  return fraction(BigInt(whole + decimals), 10n ** BigInt(decimals.length));
}

function toPlainDecimal(text: string): string | undefined {
  if (/^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$/.test(text)) return text.replaceAll(',', '');
  if (/^[1-9]\d{0,2}((\.\d{3}){2,}|(\.\d{3})+,\d+)$/.test(text)) {
    return text.replaceAll('.', '').replace(',', '.');
  }
  if (/^[1-9]\d{0,2}([\u00a0\u202f]\d{3})+([.,]\d+)?$/.test(text)) {
    return text.replaceAll(/[\u00a0\u202f]/g, '').replace(',', '.');
  }
  if (/^\d*,\d+$/.test(text)) return text.replace(',', '.');
  return /^\d*\.?\d+$/.test(text) ? text : undefined;
}

/**
 * Writes a number with a fixed count of decimals, a half rounding away from zero, with a true minus.
 * English groups thousands by commas; Spanish takes a decimal comma and groups by no-break spaces from five digits on,
 * so that what is written is read back as the same number (Real Academia Española, Ortografía 2010, from memory).
 * Units: as given. Errors: AssertionError unless `decimals` is whole and from 0 to 9.
 */
export function formatDecimal(value: Fraction, decimals: number, locale: Locale): string {
  assert(Number.isInteger(decimals) && decimals >= 0 && decimals <= 9, `0 to 9 decimals, got ${decimals}`);
  const isNegative = compareFractions(value, fraction(0)) < 0;
  const magnitude = isNegative ? multiplyFractions(value, fraction(-1)) : value;
  const scaled = roundFraction(multiplyFractions(magnitude, fraction(10n ** BigInt(decimals))));
  const digits = scaled.toString().padStart(decimals + 1, '0');
  const whole = groupThousands(digits.slice(0, digits.length - decimals), locale);
  const sign = isNegative && scaled > 0n ? MINUS_SIGN : '';
  if (decimals === 0) return sign + whole;
  return `${sign}${whole}${locale === 'es' ? ',' : '.'}${digits.slice(-decimals)}`;
}

function groupThousands(digits: string, locale: Locale): string {
  if (locale === 'es' && digits.length < 5) return digits;
  return digits.replaceAll(/\B(?=(\d{3})+$)/g, locale === 'es' ? NO_BREAK_SPACE : ',');
}

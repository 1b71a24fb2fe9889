import { assert } from './assert.ts';
import { currencyExponent, isCurrencyCode } from './currency.ts';
import { fraction, multiplyFractions } from './fraction.ts';
import { formatDecimal, type Locale, readDecimal } from './number-text.ts';

/** Why a typed amount of money is refused. Units: none. Errors: none. */
export type MoneyProblem =
  | 'empty'
  | 'not-a-number'
  | 'negative'
  | 'too-fine'
  | 'too-large'
  | 'ambiguous'
  | 'other-currency';

// Nobody types an amount this long, and a bound keeps hostile text cheap.
const LONGEST_TEXT = 100;

const SIGN_OF_CURRENCY: Readonly<Record<string, string>> = {
  USD: '$',
  CAD: '$',
  MXN: '$',
  AUD: '$',
  NZD: '$',
  EUR: '€',
  GBP: '£',
  JPY: '¥',
};

/**
 * Writes money without a currency sign, with the currency's own count of decimals and a true minus.
 * Units: whole minor units of `currency`, negative allowed. Errors: AssertionError when not whole or the code unknown.
 */
export function formatMoney(minorUnits: number, currency: string, locale: Locale): string {
  assert(Number.isSafeInteger(minorUnits), `minor units must be whole, got ${minorUnits}`);
  const exponent = currencyExponent(currency);
  return formatDecimal(fraction(BigInt(minorUnits), 10n ** BigInt(exponent)), exponent, locale);
}

/**
 * Reads an amount of money as people type it: "12.50", "12,50", "$1,250", "12.50 USD"; commas and points by the rule
 * of `readDecimal`. Nothing is rounded: finer than the minor unit is refused. So is "1,250" in a currency of three
 * decimals or more, which may mean a thousand or a trifle. Zero is allowed; a sign is not, for screens say "you owe".
 * Units: whole minor units of `currency`. Errors: none for any text; AssertionError when the code is unknown.
 */
export function parseMoney(
  text: string,
  currency: string,
): { readonly minorUnits: number } | { readonly problem: MoneyProblem } {
  const exponent = currencyExponent(currency);
  if (text.trim() === '') return { problem: 'empty' };
  if (text.length > LONGEST_TEXT) return { problem: 'not-a-number' };
  const bare = text.trim().replace(/^([A-Za-z]{3}|[$€£¥])\s*|\s*([A-Za-z]{3}|[$€£¥])$/g, (mark) => {
    return isMarkOf(mark.trim(), currency) ? '' : mark;
  });
  if (/^[-−–]/.test(bare)) return { problem: 'negative' };
  if (/[$€£¥]/.test(bare) || isCurrencyCode(letters(bare))) return { problem: 'other-currency' };
  if (exponent > 2 && /^[1-9]\d{0,2},\d{3}$/.test(bare)) return { problem: 'ambiguous' };
  const amount = readDecimal(bare);
  if (!amount) return { problem: 'not-a-number' };
  const minor = multiplyFractions(amount, fraction(10n ** BigInt(exponent)));
  if (minor.denominator !== 1n) return { problem: 'too-fine' };
  const isTooLarge = minor.numerator > BigInt(Number.MAX_SAFE_INTEGER);
  return isTooLarge ? { problem: 'too-large' } : { minorUnits: Number(minor.numerator) };
}

function isMarkOf(mark: string, currency: string): boolean {
  return mark.toUpperCase() === currency || mark === SIGN_OF_CURRENCY[currency];
}

function letters(text: string): string {
  return text.replaceAll(/[^A-Za-z]/g, '').toUpperCase();
}

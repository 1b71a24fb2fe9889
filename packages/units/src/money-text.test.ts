import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { CURRENCY_CODES, currencyExponent } from './currency.ts';
import { formatMoney, parseMoney } from './money-text.ts';

describe('writing money', () => {
  test.for([
    { minorUnits: 123_456, currency: 'USD', en: '1,234.56', es: '1234,56' },
    { minorUnits: 5, currency: 'USD', en: '0.05', es: '0,05' },
    { minorUnits: 0, currency: 'USD', en: '0.00', es: '0,00' },
    { minorUnits: -123_456, currency: 'USD', en: '−1,234.56', es: '−1234,56' },
    { minorUnits: 1_234_567, currency: 'JPY', en: '1,234,567', es: '1\u00a0234\u00a0567' },
    { minorUnits: 1_234, currency: 'KWD', en: '1.234', es: '1,234' },
    { minorUnits: 12_345, currency: 'CLF', en: '1.2345', es: '1,2345' },
  ])('$minorUnits $currency is $en and $es', ({ minorUnits, currency, en, es }) => {
    expect(formatMoney(minorUnits, currency, 'en')).toBe(en);
    expect(formatMoney(minorUnits, currency, 'es')).toBe(es);
  });

  test('takes whole minor units of a known currency', () => {
    expect(() => formatMoney(0.5, 'USD', 'en')).toThrow(AssertionError);
    expect(() => formatMoney(100, 'ABC', 'en')).toThrow(AssertionError);
  });
});

describe('reading money', () => {
  test.for([
    { text: '12.50', currency: 'USD', minorUnits: 1250 },
    { text: '12,50', currency: 'USD', minorUnits: 1250 },
    { text: '12', currency: 'USD', minorUnits: 1200 },
    { text: '1,250', currency: 'USD', minorUnits: 125_000 },
    { text: '$1,250.5', currency: 'USD', minorUnits: 125_050 },
    { text: ' $ 12.50 usd ', currency: 'USD', minorUnits: 1250 },
    { text: 'EUR 12,50', currency: 'EUR', minorUnits: 1250 },
    { text: '0', currency: 'USD', minorUnits: 0 },
    { text: '12.500', currency: 'USD', minorUnits: 1250 },
    { text: '1,000', currency: 'JPY', minorUnits: 1000 },
    { text: '1.234', currency: 'KWD', minorUnits: 1234 },
    { text: '90071992547409.91', currency: 'USD', minorUnits: Number.MAX_SAFE_INTEGER },
  ])('"$text" in $currency is $minorUnits', ({ text, currency, minorUnits }) => {
    expect(parseMoney(text, currency)).toEqual({ minorUnits });
  });

  test.for([
    { text: ' ', currency: 'USD', problem: 'empty' },
    { text: 'free', currency: 'USD', problem: 'not-a-number' },
    { text: '$', currency: 'USD', problem: 'not-a-number' },
    { text: '1 250', currency: 'USD', problem: 'not-a-number' },
    { text: '(5)', currency: 'USD', problem: 'not-a-number' },
    { text: '9'.repeat(101), currency: 'USD', problem: 'not-a-number' },
    { text: '-5', currency: 'USD', problem: 'negative' },
    { text: '−$5', currency: 'USD', problem: 'negative' },
    { text: '$-5', currency: 'USD', problem: 'negative' },
    { text: '12.345', currency: 'USD', problem: 'too-fine' },
    { text: '12.5', currency: 'JPY', problem: 'too-fine' },
    { text: '90071992547409.92', currency: 'USD', problem: 'too-large' },
    { text: '1,250', currency: 'KWD', problem: 'ambiguous' },
    { text: '€12', currency: 'USD', problem: 'other-currency' },
    { text: '12 CAD', currency: 'USD', problem: 'other-currency' },
  ])('"$text" in $currency is $problem', ({ text, currency, problem }) => {
    expect(parseMoney(text, currency)).toEqual({ problem });
  });

  test('a currency that no books are kept in is the programmer’s mistake', () => {
    expect(() => parseMoney('5', 'ABC')).toThrow(AssertionError);
  });
});

test('what is written is read back to the minor unit, or called ambiguous, never misread', () => {
  const someCode = fc.constantFrom(...CURRENCY_CODES);
  fc.assert(
    fc.property(fc.nat(), someCode, fc.constantFrom('en', 'es'), (minorUnits, currency, locale) => {
      const typed = parseMoney(formatMoney(minorUnits, currency, locale), currency);
      const mayBeAmbiguous = locale === 'es' && currencyExponent(currency) === 3;
      if (mayBeAmbiguous && 'problem' in typed) expect(typed).toEqual({ problem: 'ambiguous' });
      else expect(typed).toEqual({ minorUnits });
    }),
  );
});

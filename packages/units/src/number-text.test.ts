import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { asFraction } from './decimal.ts';
import { fraction } from './fraction.ts';
import { formatDecimal, readDecimal } from './number-text.ts';

describe('reading a number', () => {
  test.for([
    { text: '1,000', value: 1000, because: 'a comma before three digits groups thousands' },
    { text: '12,500.5', value: 12_500.5, because: 'commas group and a point parts' },
    { text: '1,000,000', value: 1_000_000, because: 'commas group again and again' },
    { text: '12,5', value: 12.5, because: 'a comma before one digit is a decimal comma' },
    { text: '12,50', value: 12.5, because: 'a comma before two digits is a decimal comma' },
    { text: '0,125', value: 0.125, because: 'no group begins with 0' },
    { text: '1234,567', value: 1234.567, because: 'no group has four leading digits' },
    { text: '1.000', value: 1, because: 'a single point is a decimal point' },
    { text: '1.000,5', value: 1000.5, because: 'points group where a decimal comma follows' },
    { text: '1.000.000', value: 1_000_000, because: 'two points can only group' },
    { text: '12\u00a0345,6', value: 12_345.6, because: 'a no-break space groups' },
    { text: '.5', value: 0.5, because: 'the zero before a point may be left out' },
    { text: '007', value: 7, because: 'leading zeros say nothing' },
  ])('$text is $value: $because', ({ text, value }) => {
    expect(readDecimal(text)).toEqual(asFraction(value));
  });

  test.for([
    '',
    '.',
    ',',
    '1,',
    '1.',
    '1,2,3',
    '1,00,000',
    '1 000',
    '1.5.2',
    '-1',
    '1e3',
    '٣',
    'NaN',
    '1,000,5',
  ])('"%s" is no number', (text) => {
    expect(readDecimal(text)).toBeUndefined();
  });
});

describe('writing a number', () => {
  test.for([
    { value: 1234.5, decimals: 2, en: '1,234.50', es: '1234,50' },
    { value: 12_345.678, decimals: 1, en: '12,345.7', es: '12\u00a0345,7' },
    { value: 1_234_567, decimals: 0, en: '1,234,567', es: '1\u00a0234\u00a0567' },
    { value: 0.05, decimals: 1, en: '0.1', es: '0,1' },
    { value: -0.05, decimals: 1, en: '−0.1', es: '−0,1' },
    { value: -0.04, decimals: 1, en: '0.0', es: '0,0' },
    { value: 999.95, decimals: 1, en: '1,000.0', es: '1000,0' },
  ])('$value with $decimals decimals is $en and $es', ({ value, decimals, en, es }) => {
    expect(formatDecimal(asFraction(value), decimals, 'en')).toBe(en);
    expect(formatDecimal(asFraction(value), decimals, 'es')).toBe(es);
  });

  test('takes a whole count of decimals', () => {
    for (const decimals of [-1, 1.5, 10]) {
      expect(() => formatDecimal(fraction(1), decimals, 'en')).toThrow(AssertionError);
    }
  });

  test('agrees with the English of the runtime, which groups by itself', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }), (hundredths) => {
        const known = new Intl.NumberFormat('en-US', { minimumFractionDigits: 2 }).format(hundredths / 100);
        expect(formatDecimal(fraction(hundredths, 100), 2, 'en')).toBe(known.replace('-', '−'));
      }),
    );
  });

  test('with fewer than three decimals is read back as the same number in both languages', () => {
    const somePlaces = fc.integer({ min: 0, max: 2 });
    fc.assert(
      fc.property(fc.nat(), somePlaces, fc.constantFrom('en', 'es'), (units, places, locale) => {
        const value = fraction(units, 10n ** BigInt(places));
        expect(readDecimal(formatDecimal(value, places, locale))).toEqual(value);
      }),
    );
  });
});

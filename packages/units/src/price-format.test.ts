import { expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { formatPricePerMass } from './price-format.ts';

test.for([
  // 36.00 for a bag of 50 lb: 72 cents a pound; by the definition of the pound 158.7 cents a kilogram.
  { minorUnits: 3600, grams: 22_680, unit: 'lb', locale: 'en', reads: '72.0' },
  { minorUnits: 3600, grams: 22_680, unit: 'kg', locale: 'en', reads: '158.7' },
  { minorUnits: 3600, grams: 22_680, unit: 'kg', locale: 'es', reads: '158,7' },
  { minorUnits: 0, grams: 1, unit: 'kg', locale: 'en', reads: '0.0' },
] as const)('$minorUnits for $grams g reads $reads a $unit', ({ minorUnits, grams, unit, locale, reads }) => {
  expect(formatPricePerMass({ minorUnits, grams }, { unit, locale })).toBe(reads);
});

test('a price for no gram is none', () => {
  expect(() => formatPricePerMass({ minorUnits: 1, grams: 0 }, { unit: 'lb', locale: 'en' })).toThrow(
    AssertionError,
  );
});

import { expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { formatMass } from './mass-format.ts';

// Worked by hand: 22,680 / 453.59237 = 50.0008; 992 / 28.349523125 = 34.9918 oz; 453 / 28.349523125 = 15.979 oz.
test.for([
  { grams: 22_680, unit: 'lb', en: '50.0 lb', es: '50,0 lb' },
  { grams: 743_891, unit: 'lb', en: '1,640.0 lb', es: '1640,0 lb' },
  { grams: 0, unit: 'lb', en: '0.0 lb', es: '0,0 lb' },
  { grams: 25_000, unit: 'kg', en: '25.0 kg', es: '25,0 kg' },
  { grams: 9_995, unit: 'kg', en: '10.0 kg', es: '10,0 kg' },
  { grams: 9_994, unit: 'kg', en: '9.99 kg', es: '9,99 kg' },
  { grams: 1_000, unit: 'kg', en: '1.00 kg', es: '1,00 kg' },
  { grams: 950, unit: 'kg', en: '0.950 kg', es: '0,950 kg' },
  { grams: 5, unit: 'kg', en: '0.005 kg', es: '0,005 kg' },
  { grams: 0, unit: 'kg', en: '0.0 kg', es: '0,0 kg' },
  { grams: 12_345_678, unit: 'kg', en: '12,345.7 kg', es: '12\u00a0345,7 kg' },
  { grams: 992, unit: 'lb-oz', en: '2 lb 3.0 oz', es: '2 lb 3,0 oz' },
  { grams: 453, unit: 'lb-oz', en: '1 lb 0.0 oz', es: '1 lb 0,0 oz' },
  { grams: 28, unit: 'lb-oz', en: '0 lb 1.0 oz', es: '0 lb 1,0 oz' },
  { grams: -22_680, unit: 'lb', en: '−50.0 lb', es: '−50,0 lb' },
  { grams: -992, unit: 'lb-oz', en: '−2 lb 3.0 oz', es: '−2 lb 3,0 oz' },
] as const)('$grams g shows in $unit as $en and $es', ({ grams, unit, en, es }) => {
  expect(formatMass(grams, { unit, locale: 'en' })).toBe(en);
  expect(formatMass(grams, { unit, locale: 'es' })).toBe(es);
});

test('parts of a gram are refused', () => {
  expect(() => formatMass(0.5, { unit: 'kg', locale: 'en' })).toThrow(AssertionError);
});

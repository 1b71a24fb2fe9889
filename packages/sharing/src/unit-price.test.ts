import { expect, test } from 'vitest';
import { compareUnitPrices, priceOfGrams } from './unit-price.ts';

// 36.00 for 22,680 g is 1.5873 a kilogram; 18.10 for 11,340 g is 1.5961.
test('a bag of 50 lb at 36.00 is cheaper than one of 25 lb at 18.10', () => {
  const large = { minorUnits: 3600, grams: 22_680 };
  expect(compareUnitPrices(large, { minorUnits: 1810, grams: 11_340 })).toBeLessThan(0);
  expect(compareUnitPrices(large, { minorUnits: 1800, grams: 11_340 })).toBe(0);
});
// 3600 × 13,608 / 22,680 = 2160; 3600 × 1000 / 22,680 = 158.73; 1 × 1 / 2 = 0.5 goes up.
test.for([
  { price: { minorUnits: 3600, grams: 22_680 }, grams: 13_608, cost: 2160 },
  { price: { minorUnits: 3600, grams: 22_680 }, grams: 1000, cost: 159 },
  { price: { minorUnits: 1, grams: 2 }, grams: 1, cost: 1 },
  { price: { minorUnits: 3600, grams: 22_680 }, grams: 0, cost: 0 },
])('$grams g cost $cost', ({ price, grams, cost }) => {
  expect(priceOfGrams(price, grams)).toBe(cost);
});
test('a price for nothing is stopped', () => {
  expect(() => priceOfGrams({ minorUnits: 1, grams: 0 }, 1)).toThrow(/at least one gram/);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { fraction } from './fraction.ts';
import { countFromGrams, exactGrams, gramsOfPhysicalUnit, type MassUnit } from './mass.ts';

const UNITS: readonly MassUnit[] = ['g', 'kg', 'oz', 'lb'];

describe('one bag or pour in whole grams', () => {
  // Worked by hand: 50 × 453.59237 = 22,679.6185; 25 × 453.59237 = 11,339.80925; 45 × 453.59237 = 20,411.65665.
  test.for([
    { count: 50, unit: 'lb', grams: 22_680 },
    { count: 25, unit: 'lb', grams: 11_340 },
    { count: 45, unit: 'lb', grams: 20_412 },
    { count: 25, unit: 'kg', grams: 25_000 },
    { count: 12.5, unit: 'kg', grams: 12_500 },
    { count: 0.5, unit: 'g', grams: 1 },
    { count: 0.4, unit: 'g', grams: 0 },
    { count: 0.0005, unit: 'kg', grams: 1 },
  ] as const)('$count $unit is $grams g', ({ count, unit, grams }) => {
    expect(gramsOfPhysicalUnit(count, unit)).toBe(grams);
  });

  test('takes parts of a unit exactly', () => {
    expect(gramsOfPhysicalUnit(fraction(1, 3), 'kg')).toBe(333);
  });

  test('rounds each bag alone: six 50 lb bags weigh more than 300 lb converted once', () => {
    expect(6 * gramsOfPhysicalUnit(50, 'lb')).toBe(136_080);
    expect(gramsOfPhysicalUnit(300, 'lb')).toBe(136_078);
  });

  test.for([-1, Number.NaN, Number.POSITIVE_INFINITY, 1e300])('a count of %d is refused', (count) => {
    expect(() => gramsOfPhysicalUnit(count, 'lb')).toThrow(AssertionError);
  });
});

describe('the count that grams came from', () => {
  test.for([
    { grams: 22_680, unit: 'lb', count: 50 },
    { grams: 22_681, unit: 'lb', count: null },
    { grams: 22_680, unit: 'kg', count: null },
    { grams: 25_000, unit: 'kg', count: 25 },
    { grams: 28, unit: 'oz', count: 1 },
    { grams: 0, unit: 'lb', count: 0 },
    { grams: 1, unit: 'lb', count: null },
  ] as const)('$grams g in $unit is $count', ({ grams, unit, count }) => {
    expect(countFromGrams(grams, unit)).toBe(count);
  });

  test('is found for every whole count of every unit', () => {
    fc.assert(
      fc.property(fc.nat(10_000_000), fc.constantFrom(...UNITS), (count, unit) => {
        expect(countFromGrams(gramsOfPhysicalUnit(count, unit), unit)).toBe(count);
      }),
    );
  });

  test('is refused for parts of a gram', () => {
    expect(() => countFromGrams(0.5, 'lb')).toThrow(AssertionError);
  });
});

test('exact grams keep every digit of the definition', () => {
  expect(exactGrams(50, 'lb')).toEqual(fraction(226_796_185n, 10_000n));
  expect(exactGrams(16, 'oz')).toEqual(exactGrams(1, 'lb'));
});

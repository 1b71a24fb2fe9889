import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fraction } from './fraction.ts';
import { sumFractions, sumOf } from './sum.ts';

test('numbers add up, and nothing adds up to 0', () => {
  expect(sumOf([7200, 6300, 5300, 2300])).toBe(21_100);
  expect(sumOf([])).toBe(0);
});

test('fractions add up exactly, and nothing adds up to 0', () => {
  expect(sumFractions([fraction(1, 2), fraction(1, 3), fraction(1, 6)])).toEqual(fraction(1));
  expect(sumFractions([])).toEqual(fraction(0));
});

test('whole fractions add up as their numbers do', () => {
  fc.assert(
    fc.property(fc.array(fc.integer()), (numbers) => {
      expect(sumFractions(numbers.map((number) => fraction(number)))).toEqual(fraction(sumOf(numbers)));
    }),
  );
});

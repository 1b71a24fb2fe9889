import fc from 'fast-check';
import { expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { asFraction } from './decimal.ts';
import { fraction, fractionToNumber } from './fraction.ts';

test.for([
  { value: 12.1, top: 121, bottom: 10 },
  { value: -0.5, top: -1, bottom: 2 },
  { value: 1e-7, top: 1, bottom: 10_000_000 },
  { value: 2.5e-8, top: 1, bottom: 40_000_000 },
  { value: 0, top: 0, bottom: 1 },
])('$value is the decimal that it is written as', ({ value, top, bottom }) => {
  expect(asFraction(value)).toEqual(fraction(top, bottom));
});

test('a number past the whole doubles keeps its written digits', () => {
  expect(asFraction(1e21)).toEqual(fraction(10n ** 21n));
});

test('a fraction passes through as it is', () => {
  expect(asFraction(fraction(1, 3))).toEqual(fraction(1, 3));
});

test('what is not finite is no number', () => {
  for (const value of [Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(() => asFraction(value)).toThrow(AssertionError);
  }
});

test('every decimal of a scale comes back as the number that was written', () => {
  const someReading = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 });
  fc.assert(
    fc.property(someReading, (value) => {
      const written = Math.round(value * 1000) / 1000 + 0; // + 0 turns −0 into 0
      expect(fractionToNumber(asFraction(written))).toBe(written);
    }),
  );
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import {
  addFractions,
  ceilFraction,
  compareFractions,
  divideFractions,
  floorFraction,
  fraction,
  fractionToNumber,
  multiplyFractions,
  orderOfFractions,
  roundFraction,
  subtractFractions,
} from './fraction.ts';

const someFraction = fc
  .tuple(fc.bigInt({ min: -(10n ** 20n), max: 10n ** 20n }), fc.bigInt({ min: 1n, max: 10n ** 12n }))
  .map(([top, bottom]) => fraction(top, bottom));

describe('the form of a fraction', () => {
  test('is in lowest terms with the sign on top', () => {
    expect(fraction(6, -4)).toEqual({ numerator: -3n, denominator: 2n });
    expect(fraction(0, -7)).toEqual({ numerator: 0n, denominator: 1n });
  });

  test('has no zero below and no part of a whole above', () => {
    expect(() => fraction(1, 0)).toThrow(AssertionError);
    expect(() => fraction(0.5)).toThrow(RangeError);
    expect(() => divideFractions(fraction(1), fraction(0))).toThrow(AssertionError);
  });
});

describe('rounding', () => {
  test.for([
    { top: 7, bottom: 2, floor: 3n, round: 4n, ceil: 4n },
    { top: -7, bottom: 2, floor: -4n, round: -3n, ceil: -3n },
    { top: 10, bottom: 3, floor: 3n, round: 3n, ceil: 4n },
    { top: -10, bottom: 3, floor: -4n, round: -3n, ceil: -3n },
    { top: -6, bottom: 3, floor: -2n, round: -2n, ceil: -2n },
  ])('of $top/$bottom goes down, to the nearest with halves up, and up', ({ top, bottom, ...expected }) => {
    const value = fraction(top, bottom);
    const rounded = { floor: floorFraction(value), round: roundFraction(value), ceil: ceilFraction(value) };
    expect(rounded).toEqual(expected);
  });

  test('never moves a value by a whole unit', () => {
    fc.assert(
      fc.property(someFraction, (value) => {
        const below = fraction(floorFraction(value));
        const above = fraction(ceilFraction(value));
        expect(compareFractions(below, value)).toBeLessThanOrEqual(0);
        expect(compareFractions(value, above)).toBeLessThanOrEqual(0);
        expect(ceilFraction(value) - floorFraction(value)).toBe(value.denominator === 1n ? 0n : 1n);
      }),
    );
  });
});

describe('the laws of arithmetic', () => {
  test('addition and subtraction undo each other', () => {
    fc.assert(
      fc.property(someFraction, someFraction, (a, b) => {
        expect(subtractFractions(addFractions(a, b), b)).toEqual(a);
      }),
    );
  });

  test('multiplication and division undo each other', () => {
    fc.assert(
      fc.property(someFraction, someFraction, (a, b) => {
        fc.pre(b.numerator !== 0n);
        expect(divideFractions(multiplyFractions(a, b), b)).toEqual(a);
      }),
    );
  });

  test('multiplication spreads over addition', () => {
    fc.assert(
      fc.property(someFraction, someFraction, someFraction, (a, b, c) => {
        const together = multiplyFractions(a, addFractions(b, c));
        expect(together).toEqual(addFractions(multiplyFractions(a, b), multiplyFractions(a, c)));
      }),
    );
  });

  test('the order agrees with the sign of the difference', () => {
    fc.assert(
      fc.property(someFraction, someFraction, (a, b) => {
        const { numerator } = subtractFractions(a, b);
        expect(compareFractions(a, b)).toBe(numerator < 0n ? -1 : numerator > 0n ? 1 : 0);
      }),
    );
  });
});

test('a fraction shows as the nearest double', () => {
  expect(fractionToNumber(fraction(1, 3))).toBe(1 / 3);
});

test('many fractions are put in order exactly, also those that doubles cannot tell apart', () => {
  const close = fc.bigInt({ min: 1n, max: 40n }).map((step) => fraction(10n ** 30n + step, 3n * 10n ** 29n));
  const plain = fc
    .tuple(fc.bigInt({ min: -1_000_000n, max: 1_000_000n }), fc.bigInt({ min: 1n, max: 500n }))
    .map(([top, bottom]) => fraction(top, bottom));
  fc.assert(
    fc.property(fc.array(fc.oneof(close, plain)), (values) => {
      const exactly = values
        .map((value, position) => ({ value, position }))
        .sort((a, b) => compareFractions(a.value, b.value) || a.position - b.position);
      expect(orderOfFractions(values)).toEqual(exactly.map(({ position }) => position));
    }),
  );
});

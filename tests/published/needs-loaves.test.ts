import { costPerDay, costPerLoaf, costPerServing, loavesFromWheat, SERVING_GRAMS } from '@sheafbook/coverage';
import { fraction, fractionToNumber, GRAMS_PER_UNIT, multiplyFractions } from '@sheafbook/units';
import { expect, test } from 'vitest';

// State wheat groups, as cited on a page of no authority of its own: a 60 lb bushel of wheat bakes about ninety
// one-pound whole-wheat loaves.
test('1,640 lb of wheat are 27.33 bushels and 2,460 loaves', () => {
  const grams = multiplyFractions(fraction(1640), GRAMS_PER_UNIT.lb);
  expect(loavesFromWheat(grams)).toEqual(fraction(2460));
  expect(1640 / 60).toBeCloseTo(27.33, 2);
});

// A 50 lb bag of 22,680 g landed at 24.30. A loaf takes 2/3 lb: 302.394913… g of wheat.
test('a loaf from a bag that landed at 24.30 costs 32.4 cents', () => {
  const cost = { minorUnits: 2430, grams: 22_680 };
  expect(costPerLoaf(cost)).toEqual(
    multiplyFractions(fraction(2430, 22_680), multiplyFractions(fraction(2, 3), GRAMS_PER_UNIT.lb)),
  );
  expect(fractionToNumber(costPerLoaf(cost))).toBeCloseTo(32.4, 1);
});

// 2430 / 22,680 = 3/28 cents a gram.
test('a day of 1,150 g and a serving of that bag cost exact fractions of a cent', () => {
  const cost = { minorUnits: 2430, grams: 22_680 };
  expect(costPerDay(cost, fraction(1150))).toEqual(fraction(3 * 1150, 28));
  expect(costPerServing(cost)).toEqual(fraction(3 * SERVING_GRAMS, 28));
  expect(costPerServing(cost, 56)).toEqual(fraction(6));
});

test('a cost without grams or of broken cents is refused', () => {
  expect(() => costPerLoaf({ minorUnits: 1, grams: 0 })).toThrow('some grams');
  expect(() => costPerLoaf({ minorUnits: 1.5, grams: 1 })).toThrow('minorUnits');
});

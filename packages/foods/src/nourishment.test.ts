import { addFractions, fraction } from '@sheafbook/units';
import { expect, test } from 'vitest';
import { kilocaloriesOf, proteinGramsOf } from './nourishment.ts';

const wheat = { kilocaloriesPer100Grams: 327, proteinMilligramsPer100Grams: 12_610 };

test('a kilogram of wheat holds 3,270 kcal and 126.1 g of protein', () => {
  expect(kilocaloriesOf(wheat, 1000)).toEqual(fraction(3270));
  expect(proteinGramsOf(wheat, 1000)).toEqual(fraction(1261, 10));
});

test('nothing holds nothing', () => {
  expect(kilocaloriesOf(wheat, 0)).toEqual(fraction(0));
});

test('the energy of three bags together is the sum of their energies', () => {
  const bags = [22_680, 20_412, 11_340];
  const apart = bags.map((grams) => kilocaloriesOf(wheat, grams)).reduce(addFractions);
  expect(apart).toEqual(kilocaloriesOf(wheat, 54_432));
});

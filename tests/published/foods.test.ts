import {
  type Food,
  findReferenceFood,
  kilocaloriesOf,
  proteinGramsOf,
  REFERENCE_FOODS,
} from '@sheafbook/foods';
import {
  addFractions,
  exactGrams,
  type Fraction,
  fraction,
  multiplyFractions,
  roundFraction,
} from '@sheafbook/units';
import { expect, test } from 'vitest';

// USDA ARS, National Nutrient Database for Standard Reference, release 28, abbreviated file: database number, our code,
// then water, kcal, protein, fat, carbohydrate and fibre per 100 g. The last column is grams per US cup, from the weight
// file of the preceding release. "-" where the table gives none.
const PRINTED = `
20072 wheat-hard-red-winter 13.1 327 12.61 1.54 71.18 12.2 192
20071 wheat-hard-red-spring 12.76 329 15.40 1.92 68.03 12.2 192
20073 wheat-soft-red-winter 12.17 331 10.35 1.56 74.24 12.5 -
20074 wheat-hard-white 9.57 342 11.31 1.71 75.90 12.2 192
20075 wheat-soft-white 10.42 340 10.69 1.99 75.36 12.7 -
20076 wheat-durum 10.94 339 13.68 2.47 71.13 - -
20138 khorasan-wheat 11.07 337 14.54 2.13 70.58 11.1 186
20140 spelt 11.02 338 14.57 2.43 70.19 10.7 174
20080 flour-whole-wheat 10.74 340 13.21 2.50 71.97 10.7 120
20081 flour-white 11.92 364 10.33 0.98 76.31 2.7 125
20012 bulgur 9 342 12.29 1.33 75.87 12.5 -
20120 pasta 9.9 371 13.04 1.51 74.67 3.2 -
20062 rye 10.6 338 10.34 1.63 75.86 15.1 169
20004 barley-hulled 9.44 354 12.48 2.30 73.48 17.3 184
20005 barley-pearled 10.09 352 9.91 1.16 77.72 15.6 200
08120 oats-rolled 10.84 379 13.15 6.52 67.70 10.1 81
20038 oats-whole 8.22 389 16.89 6.90 66.27 10.6 156
20044 rice-white-long 11.62 365 7.13 0.66 79.95 1.3 185
20036 rice-brown-long 11.8 367 7.54 3.20 76.25 3.6 185
20014 corn-yellow 10.37 365 9.42 4.74 74.26 7.3 166
20020 cornmeal-whole 10.26 362 8.12 3.59 76.89 7.3 122
20031 millet 8.67 378 11.02 4.22 72.85 8.5 200
20035 quinoa 13.28 368 14.12 6.07 64.16 7 170
20008 buckwheat 9.75 343 13.25 3.40 71.50 10 170
20067 sorghum 12.4 329 10.62 3.46 72.09 6.7 -
16042 beans-pinto 11.33 347 21.42 1.23 62.55 15.5 193
16014 beans-black 11.02 341 21.60 1.42 62.36 15.5 194
16037 beans-navy 12.1 337 22.33 1.50 60.75 15.3 208
16049 beans-white 11.32 333 23.36 0.85 60.27 15.2 202
16027 beans-kidney 11.75 333 23.58 0.83 60.01 24.9 184
16056 chickpeas 7.68 378 20.47 6.04 62.95 12.2 200
16080 mung-beans 9.05 347 23.86 1.15 62.62 16.3 207
16069 lentils 8.26 352 24.63 1.06 63.35 10.7 192
16085 peas-split-green 8.62 352 23.82 1.16 63.74 25.5 197
16108 soybeans 8.54 446 36.49 19.94 30.16 9.3 186
19335 sugar-granulated 0.02 387 0.00 0.00 99.98 0 200
19296 honey 17.1 304 0.30 0.00 82.40 0.2 339
02047 salt 0.2 0 0.00 0.00 0.00 0 292
01091 milk-dry-nonfat 3.16 362 36.16 0.77 51.98 0 120
04044 oil-soybean 0 884 0.00 100.00 0.00 0 218
04582 oil-canola 0 884 0.00 100.00 0.00 0 -
`;

const LINES = PRINTED.trim()
  .split('\n')
  .map((line) => line.split(' '));

/** A printed figure of grams as whole milligrams, read digit by digit so that no binary double stands between. */
function milligrams(printed = ''): number | null {
  if (printed === '-') return null;
  const [whole = '', decimals = ''] = printed.split('.');
  return Number(whole + decimals.padEnd(3, '0'));
}

function toPrintedRow(line: readonly string[]) {
  const [databaseNumber, , water, kilocalories, protein, fat, carbohydrate, fibre, gramsPerCup] = line;
  return {
    source: { table: 'USDA SR', release: 'SR28', databaseNumber },
    waterMilligramsPer100Grams: milligrams(water),
    kilocaloriesPer100Grams: Number(kilocalories),
    proteinMilligramsPer100Grams: milligrams(protein),
    fatMilligramsPer100Grams: milligrams(fat),
    carbohydrateMilligramsPer100Grams: milligrams(carbohydrate),
    fibreMilligramsPer100Grams: milligrams(fibre),
    gramsPerCup: gramsPerCup === '-' ? null : Number(gramsPerCup),
  };
}

test('the printed table and the reference foods are the same foods', () => {
  expect(LINES.map(([, foodCode]) => foodCode)).toEqual(REFERENCE_FOODS.map((food) => food.foodCode));
});

test.for(LINES)('row %s holds the figures of %s as printed', (line) => {
  expect(findReferenceFood(line[1] ?? '')).toMatchObject(toPrintedRow(line));
});

function load(foodCode: string): Food {
  const food = findReferenceFood(foodCode);
  if (!food) throw new Error(`${foodCode} is no reference food`);
  return food;
}

const rounded = (value: Fraction, decimals: number) => {
  const scale = 10 ** decimals;
  return Number(roundFraction(multiplyFractions(value, fraction(scale)))) / scale;
};

// Arithmetic over the SR28 figures: 50 × 453.59237 g × 3.27 kcal/g = 74,162.35; × 0.1261 = 2,859.90 g of protein.
test('a 50 lb sack of hard red winter wheat holds 74,162 kcal and 2,859.90 g of protein', () => {
  const sack = exactGrams(50, 'lb');
  expect(rounded(kilocaloriesOf(load('wheat-hard-red-winter'), sack), 2)).toBe(74_162.35);
  expect(rounded(kilocaloriesOf(load('wheat-hard-red-winter'), sack), 0)).toBe(74_162);
  expect(rounded(proteinGramsOf(load('wheat-hard-red-winter'), sack), 2)).toBe(2859.9);
});

// 620 lb of wheat, 120 lb of pinto beans and 80 lb of white rice: 281,227.27 × 3.27 + 54,431.08 × 3.47 +
// 36,287.39 × 3.65 = 1,240,938 kcal by the SR28 figures.
test('a household’s 620 lb of wheat, 120 lb of pinto beans and 80 lb of rice hold 1,240,938 kcal', () => {
  const held = [
    kilocaloriesOf(load('wheat-hard-red-winter'), exactGrams(620, 'lb')),
    kilocaloriesOf(load('beans-pinto'), exactGrams(120, 'lb')),
    kilocaloriesOf(load('rice-white-long'), exactGrams(80, 'lb')),
  ];
  expect(rounded(held.reduce(addFractions), 0)).toBe(1_240_938);
});

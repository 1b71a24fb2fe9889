import {
  type ContainerKind,
  cartonsOf,
  containersFor,
  containersHolding,
  type Food,
  findContainerKind,
  findReferenceFood,
  levelGrams,
  shakenGrams,
} from '@sheafbook/foods';
import { gramsOfPhysicalUnit } from '@sheafbook/units';
import { describe, expect, test } from 'vitest';

const GRAMS_PER_POUND = 453.59237;

function loadFood(foodCode: string): Food {
  const food = findReferenceFood(foodCode);
  if (!food) throw new Error(`${foodCode} is no reference food`);
  return food;
}

function loadKind(kindCode: string): ContainerKind {
  const kind = findContainerKind(kindCode);
  if (!kind) throw new Error(`${kindCode} is no container kind`);
  return kind;
}

// Size lists of the can trade for the two cans; the definitions of gallon and quart (NIST Handbook 44, from memory) for
// the rest; the bottle's name for the bottle (common practice, no source). In millilitres, as printed.
describe('what a container holds', () => {
  test.for([
    { kindCode: 'can-no-10', printed: '3108.18' },
    { kindCode: 'can-no-2-5', printed: '881.00' }, // 29.79 fl oz; lists that cut the digits off print 880.99
    { kindCode: 'pail-5-gallon-lined', printed: '18927.06' },
    { kindCode: 'pail-5-gallon-bare', printed: '18927.06' },
    { kindCode: 'pail-6-gallon-lined', printed: '22712.47' },
    { kindCode: 'pail-6-gallon-bare', printed: '22712.47' },
    { kindCode: 'pouch-1-gallon', printed: '3785.41' },
    { kindCode: 'bottle-pet-2-litre', printed: '2000.00' },
    { kindCode: 'jar-quart', printed: '946.35' },
    { kindCode: 'jar-half-gallon', printed: '1892.71' },
    { kindCode: 'drum-55-gallon', printed: '208197.65' },
  ])('$kindCode holds $printed mL', ({ kindCode, printed }) => {
    const hundredths = Math.round(loadKind(kindCode).capacityMicrolitres / 10);
    expect((hundredths / 100).toFixed(2)).toBe(printed);
  });
});

// Pounds that each container holds level, from grams per US cup (USDA SR weight file) and the capacities above.
const NET_WEIGHTS = [
  { foodCode: 'wheat-hard-red-winter', density: 0.8115, pounds: [5.56, 6.77, 33.86, 3.58, 1.69] },
  { foodCode: 'rice-white-long', density: 0.7819, pounds: [5.36, 6.53, 32.63, 3.45, 1.63] },
  { foodCode: 'oats-rolled', density: 0.3424, pounds: [2.35, 2.86, 14.29, 1.51, 0.71] },
  { foodCode: 'corn-yellow', density: 0.7016, pounds: [4.81, 5.86, 29.28, 3.09, 1.46] },
  { foodCode: 'rye', density: 0.7143, pounds: [4.89, 5.96, 29.81, 3.15, 1.49] },
  { foodCode: 'barley-hulled', density: 0.7777, pounds: [5.33, 6.49, 32.45, 3.43, 1.62] },
  { foodCode: 'spelt', density: 0.7355, pounds: [5.04, 6.14, 30.69, 3.24, 1.53] },
  { foodCode: 'millet', density: 0.8454, pounds: [5.79, 7.05, 35.27, 3.73, 1.76] },
  { foodCode: 'beans-pinto', density: 0.8158, pounds: [5.59, 6.81, 34.04, 3.6, 1.7] },
  { foodCode: 'beans-black', density: 0.82, pounds: [5.62, 6.84, 34.22, 3.62, 1.71] },
  { foodCode: 'beans-navy', density: 0.8792, pounds: [6.02, 7.34, 36.68, 3.88, 1.83] },
  { foodCode: 'lentils', density: 0.8115, pounds: [5.56, 6.77, 33.86, 3.58, 1.69] },
  { foodCode: 'peas-split-green', density: 0.8327, pounds: [5.71, 6.95, 34.74, 3.67, 1.74] },
  { foodCode: 'sugar-granulated', density: 0.8454, pounds: [5.79, 7.05, 35.27, 3.73, 1.76] },
  { foodCode: 'milk-dry-nonfat', density: 0.5072, pounds: [3.48, 4.23, 21.16, 2.24, 1.06] },
  { foodCode: 'flour-white', density: 0.5283, pounds: [3.62, 4.41, 22.05, 2.33, 1.1] },
  { foodCode: 'salt', density: 1.2342, pounds: [8.46, 10.3, 51.5, 5.44, 2.57] },
];
const KINDS = ['can-no-10', 'pouch-1-gallon', 'pail-5-gallon-lined', 'bottle-pet-2-litre', 'jar-quart'];

describe('net weights by true capacity', () => {
  test.for(NET_WEIGHTS)('of $foodCode agree to the last printed digit', ({ foodCode, density, pounds }) => {
    const food = loadFood(foodCode);
    const densityError = Math.abs((food.bulkMilligramsPerMillilitre ?? Number.NaN) - density * 1000);
    expect(densityError).toBeLessThanOrEqual(0.05);
    // Half of the last digit for the print's own rounding, and one gram because a fill is rounded down to fit.
    const slack = 0.005 + 1 / GRAMS_PER_POUND;
    const errors = KINDS.map((kindCode, position) => {
      const grams = levelGrams(food, loadKind(kindCode).capacityMicrolitres / 1000) ?? Number.NaN;
      return Math.abs(grams / GRAMS_PER_POUND - (pounds[position] ?? Number.NaN));
    });
    expect(Math.max(...errors)).toBeLessThanOrEqual(slack);
  });
});

// 1,640 lb of wheat, a household's guideline year, by the rounded pounds of the table above and by true capacity.
describe('1,640 lb of wheat', () => {
  const shareGrams = gramsOfPhysicalUnit(1640, 'lb');

  test('at 5.56 lb a can need 295 No. 10 cans: 49 cartons and one can', () => {
    const { containersForAll } = containersHolding(shareGrams, gramsOfPhysicalUnit(5.56, 'lb'));
    expect(containersForAll).toBe(295);
    expect(cartonsOf(containersForAll, loadKind('can-no-10').perCarton ?? 0)).toEqual({
      cartons: 49,
      loose: 1,
    });
  });

  test('at 33.86 lb a pail need 49 five-gallon pails', () => {
    expect(containersHolding(shareGrams, gramsOfPhysicalUnit(33.86, 'lb')).containersForAll).toBe(49);
  });

  test('by true capacity and bulk density need as many', () => {
    const wheat = loadFood('wheat-hard-red-winter');
    expect(containersFor(shareGrams, loadKind('can-no-10'), wheat)).toEqual({
      containers: 294,
      perContainerGrams: 2522,
      remainderGrams: 743_891 - 294 * 2522,
      containersForAll: 295,
    });
    expect(containersFor(shareGrams, loadKind('pail-5-gallon-lined'), wheat)?.containersForAll).toBe(49);
  });
});

// A handout of what people put into a 5-gallon pail, in pounds (a reprint without authority: common practice, no source).
const HANDOUT = [
  { foodCode: 'wheat-hard-red-winter', from: 34, to: 36 },
  { foodCode: 'rice-white-long', from: 34, to: 36 },
  { foodCode: 'beans-navy', from: 35, to: 38 },
  { foodCode: 'peas-split-green', from: 33, to: 35 },
  { foodCode: 'beans-black', from: 33, to: 35 },
  { foodCode: 'lentils', from: 30, to: 33 },
  { foodCode: 'corn-yellow', from: 32, to: 36 },
  { foodCode: 'oats-rolled', from: 15, to: 19 },
  { foodCode: 'flour-white', from: 23, to: 25 },
  { foodCode: 'milk-dry-nonfat', from: 22, to: 25 },
  { foodCode: 'sugar-granulated', from: 29, to: 34 },
  { foodCode: 'salt', from: 36, to: 38 },
];
// Lentils and sugar lie a pound or so heavier in the cup than the handout fills them, corn a pound lighter; its salt
// cannot be a full pail, for a level cup of salt makes 51.5 lb. Weigh your own.
const OUTSIDE_HANDOUT = ['lentils', 'corn-yellow', 'sugar-granulated', 'salt'];

test('a pail filled between level and shaken meets the handout, but for the foods listed with their reason', () => {
  const millilitres = loadKind('pail-5-gallon-lined').capacityMicrolitres / 1000;
  const outside = HANDOUT.filter(({ foodCode, from, to }) => {
    const level = (levelGrams(loadFood(foodCode), millilitres) ?? Number.NaN) / GRAMS_PER_POUND;
    const shaken = (shakenGrams(loadFood(foodCode), millilitres) ?? Number.NaN) / GRAMS_PER_POUND;
    return !(level <= to && shaken >= from);
  });
  expect(outside.map((row) => row.foodCode)).toEqual(OUTSIDE_HANDOUT);
});

import {
  adultEquivalents,
  daysCovered,
  type FoodGroupCode,
  GUIDELINE,
  guidelineRow,
  rationPerDay,
} from '@sheafbook/coverage';
import {
  divideFractions,
  type Fraction,
  fraction,
  fractionToNumber,
  GRAMS_PER_UNIT,
  multiplyFractions,
} from '@sheafbook/units';
import { describe, expect, test } from 'vitest';

const TODAY = '2026-07-01';
const aged = (...ages: number[]): { birthOn: string; presentPercent: number }[] =>
  ages.map((age) => ({ birthOn: `${2026 - age}-03-01`, presentPercent: 100 }));
const pounds = (count: number): Fraction => multiplyFractions(fraction(count), GRAMS_PER_UNIT.lb);
const poundsOf = (group: FoodGroupCode): Fraction =>
  GUIDELINE.find((row) => row.group === group)?.poundsPerAdultYear ?? fraction(0);

// The age fractions and the yearly figures are a reprinted home-storage guideline of 2006, a planning convention.
describe('the worked family of two adults and children of 8, 5 and 2', () => {
  const family = aged(38, 36, 8, 5, 2);

  test('is 4.10 adult-equivalents: 2 × 1.00 + 0.90 + 0.70 + 0.50', () => {
    expect(adultEquivalents(family, TODAY)).toEqual(fraction(41, 10));
  });

  test.for([
    { group: 'grains', expected: fraction(1640) },
    { group: 'legumes', expected: fraction(246) },
    { group: 'dried-milk', expected: fraction(656, 10) },
    { group: 'sugars', expected: fraction(246) },
    { group: 'salt', expected: fraction(328, 10) },
  ] as const)(
    'needs exactly $expected.numerator / $expected.denominator lb of $group in a year',
    ({ group, expected }) => {
      expect(multiplyFractions(adultEquivalents(family, TODAY), poundsOf(group))).toEqual(expected);
    },
  );

  test('needs 41 quarts of oil, as the mass of 164 cups of 218 g', () => {
    const fats = GUIDELINE.find((row) => row.group === 'fats');
    expect(multiplyFractions(fraction(41, 10), fats?.gramsPerAdultYear ?? fraction(0))).toEqual(
      fraction(164 * 218),
    );
    expect(fractionToNumber(poundsOf('fats'))).toBeCloseTo(19.22, 2);
  });

  test('stays at 4.10 with a year added to each age', () => {
    expect(adultEquivalents(family, TODAY, { addYear: true })).toEqual(fraction(41, 10));
  });

  test('becomes 4.60 with a year added when the children are 10, 6 and 3', () => {
    expect(adultEquivalents(aged(38, 36, 10, 6, 3), TODAY, { addYear: true })).toEqual(fraction(46, 10));
  });

  test('has 138 days of grain, 37.8 %, with 620 lb of the 1,640 lb', () => {
    const perDay = divideFractions(pounds(1640), fraction(365));
    const { days } = daysCovered({
      rates: [{ eaterId: 'family', perDay }],
      lots: [{ lotId: 'grain', amount: pounds(620), daysLeft: null, eaterIds: ['family'] }],
    });
    expect(days).toEqual(fraction(620 * 365, 1640));
    expect(days === 'no-end' ? 0 : fractionToNumber(days)).toBeCloseTo(137.99, 2);
    expect((620 / 1640) * 100).toBeCloseTo(37.8, 1);
  });
});

describe('adult-equivalents', () => {
  test.for([
    { age: 0, share: fraction(5, 10) },
    { age: 3, share: fraction(5, 10) },
    { age: 4, share: fraction(7, 10) },
    { age: 6, share: fraction(7, 10) },
    { age: 7, share: fraction(9, 10) },
    { age: 10, share: fraction(9, 10) },
    { age: 11, share: fraction(1) },
    { age: 90, share: fraction(1) },
  ])('at $age are $share.numerator / $share.denominator', ({ age, share }) => {
    expect(adultEquivalents(aged(age), TODAY)).toEqual(share);
  });

  test('are weighed by the part of the year present, and are 0 for nobody and for someone not yet born', () => {
    expect(adultEquivalents([{ birthOn: '1990', presentPercent: 25 }], TODAY)).toEqual(fraction(1, 4));
    expect(adultEquivalents([], TODAY)).toEqual(fraction(0));
    expect(adultEquivalents([{ birthOn: '2026-07-02', presentPercent: 100 }], TODAY)).toEqual(fraction(0));
  });

  test.for([-1, 101, 33.3])('are refused for a presence of %d percent', (presentPercent) => {
    expect(() => adultEquivalents([{ birthOn: '1990', presentPercent }], TODAY)).toThrow('presentPercent');
  });
});

// Starter figures of the job's own description, to a tenth of a gram: pounds × 453.59237 / 365.
test.for([
  { group: 'grains', count: 300, gramsPerDay: 372.8 },
  { group: 'legumes', count: 60, gramsPerDay: 74.6 },
  { group: 'dried-milk', count: 16, gramsPerDay: 19.9 },
  { group: 'fats', count: 20, gramsPerDay: 24.9 },
  { group: 'sugars', count: 60, gramsPerDay: 74.6 },
  { group: 'salt', count: 8, gramsPerDay: 9.9 },
] as const)(
  'a typed guideline of $count lb of $group a year is $gramsPerDay g a day',
  ({ group, count, gramsPerDay }) => {
    const row = guidelineRow({ group, pounds: count, source: 'typed in by the household' });
    expect(fractionToNumber(row.gramsPerAdultYear) / 365).toBeCloseTo(gramsPerDay, 1);
  },
);

// Composition: USDA National Nutrient Database for Standard Reference, release 28, by NDB number.
const WHEAT = { kilocaloriesPer100Grams: 327, proteinGramsPer100Grams: 12.61 }; // 20072 hard red winter
const PINTO = { kilocaloriesPer100Grams: 347, proteinGramsPer100Grams: 21.42 }; // 16042
const MILK = { kilocaloriesPer100Grams: 362, proteinGramsPer100Grams: 36.16 }; // 01091 nonfat, regular
const SUGAR = { kilocaloriesPer100Grams: 387, proteinGramsPer100Grams: 0 }; // 19335
const OIL = { kilocaloriesPer100Grams: 884, proteinGramsPer100Grams: 0 }; // 04044 soybean
const RICE = { kilocaloriesPer100Grams: 365, proteinGramsPer100Grams: 7.13 }; // 20044 white, long grain
const OATS = { kilocaloriesPer100Grams: 379, proteinGramsPer100Grams: 13.15 }; // 08120 rolled

describe("what an adult's guideline ration supplies a day", () => {
  const rest = [
    { ...PINTO, gramsPerYear: pounds(60) },
    { ...MILK, gramsPerYear: pounds(16) },
    { ...SUGAR, gramsPerYear: pounds(60) },
    { ...OIL, gramsPerYear: fraction(40 * 218) },
  ];

  test.for([
    { food: 'wheat', ration: [{ ...WHEAT, gramsPerYear: pounds(400) }], expected: 1625.5 },
    { food: 'beans', ration: rest.slice(0, 1), expected: 258.7 },
    { food: 'dry milk', ration: rest.slice(1, 2), expected: 72.0 },
    { food: 'sugar', ration: rest.slice(2, 3), expected: 288.6 },
    { food: 'oil', ration: rest.slice(3, 4), expected: 211.2 },
  ])('is $expected kcal from $food', ({ ration, expected }) => {
    expect(fractionToNumber(rationPerDay(ration).kilocalories)).toBeCloseTo(expected, 1);
  });

  test('is 2,455.9 kcal and 85.84 g of protein with 400 lb of wheat', () => {
    const { kilocalories, proteinGrams } = rationPerDay([{ ...WHEAT, gramsPerYear: pounds(400) }, ...rest]);
    expect(fractionToNumber(kilocalories)).toBeCloseTo(2455.9, 1);
    expect(fractionToNumber(proteinGrams)).toBeCloseTo(85.84, 2);
  });

  test('is 2,049.6 kcal with the lower variant of 300 lb', () => {
    const { kilocalories } = rationPerDay([{ ...WHEAT, gramsPerYear: pounds(300) }, ...rest]);
    expect(fractionToNumber(kilocalories)).toBeCloseTo(2049.6, 1);
  });

  test('is 2,591.4 kcal with 150 lb of wheat, 150 lb of white rice and 100 lb of rolled oats', () => {
    const grain = [
      { ...WHEAT, gramsPerYear: pounds(150) },
      { ...RICE, gramsPerYear: pounds(150) },
      { ...OATS, gramsPerYear: pounds(100) },
    ];
    expect(fractionToNumber(rationPerDay([...grain, ...rest]).kilocalories)).toBeCloseTo(2591.4, 1);
  });
});

test('620 lb of wheat, 120 lb of beans and 80 lb of rice are 1,240,938 kcal, 139.43 days of 8,900 kcal', () => {
  const energy = (count: number, per100: number): Fraction =>
    multiplyFractions(pounds(count), fraction(per100, 100));
  const lots = [energy(620, 327), energy(120, 347), energy(80, 365)].map((amount, place) => ({
    lotId: `lot ${place}`,
    amount,
    daysLeft: null,
    eaterIds: ['household'],
  }));
  const total = lots.reduce((sum, { amount }) => sum + fractionToNumber(amount), 0);
  expect(Math.round(total)).toBe(1_240_938);
  const { days } = daysCovered({ rates: [{ eaterId: 'household', perDay: fraction(8900) }], lots });
  expect(days === 'no-end' ? 0 : fractionToNumber(days)).toBeCloseTo(139.43, 2);
});

test('every guideline row carries its source', () => {
  expect(GUIDELINE.map(({ group }) => group)).toEqual([
    'grains',
    'legumes',
    'dried-milk',
    'fats',
    'sugars',
    'salt',
  ]);
  for (const { source } of GUIDELINE) expect(source).toContain('guideline');
});

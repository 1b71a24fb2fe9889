import { dailyKilocalories, type EaterFacts, energyRequirement } from '@sheafbook/coverage';
import { fraction, fractionToNumber } from '@sheafbook/units';
import { describe, expect, test } from 'vitest';

// Dietary Reference Intakes for Energy (National Academies, 2023), summary table S-1. The coefficients are from memory
// and agree with three other texts; the growth of children agrees with one. Each figure below is the equation worked by
// hand, so these tests hold the arithmetic and the choice of equation, not the coefficients against the print.
const CATEGORIES = ['inactive', 'low-active', 'active', 'very-active'] as const;

test.for([
  // 753.07 − 10.83 × 50.3 + 6.50 × 175.9 + 14.10 × 83.1 = 2523.381, and so on with each category's own coefficients.
  {
    who: 'a man of 50.3 years, 175.9 cm, 83.1 kg',
    person: { sex: 'male', ageYears: fraction(503, 10), heightCentimetres: 175.9, massKilograms: 83.1 },
    expected: [2523.381, 2738.205, 2929.06, 3271.211],
  },
  // 584.90 − 7.01 × 35 + 5.72 × 165 + 11.71 × 65 = 2044.5.
  {
    who: 'a woman of 35 years, 165 cm, 65 kg',
    person: { sex: 'female', ageYears: fraction(35), heightCentimetres: 165, massKilograms: 65 },
    expected: [2044.5, 2208.52, 2346.1, 2579.43],
  },
  // −447.51 + 3.68 × 8 + 13.01 × 128 + 13.15 × 26 + 15 = 1604.11.
  {
    who: 'a boy of 8 years, 128 cm, 26 kg',
    person: { sex: 'male', ageYears: fraction(8), heightCentimetres: 128, massKilograms: 26 },
    expected: [1604.11, 1694.2, 1808.69, 1945.83],
  },
  // 55.59 − 22.25 × 5 + 8.43 × 109 + 17.07 × 18 + 15 = 1185.47.
  {
    who: 'a girl of 5 years, 109 cm, 18 kg',
    person: { sex: 'female', ageYears: fraction(5), heightCentimetres: 109, massKilograms: 18 },
    expected: [1185.47, 1263.28, 1323.98, 1436.64],
  },
] as const)('$who needs what the four equations give', ({ person, expected }) => {
  const needs = CATEGORIES.map((category) => fractionToNumber(energyRequirement({ ...person, category })));
  needs.forEach((need, category) => {
    expect(need).toBeCloseTo(expected[category] ?? 0, 2);
  });
});

test('the result is exact: the low active man needs 2738.205 and not the double beside it', () => {
  const person = {
    sex: 'male',
    ageYears: fraction(503, 10),
    heightCentimetres: 175.9,
    massKilograms: 83.1,
  } as const;
  expect(energyRequirement({ ...person, category: 'low-active' })).toEqual(fraction(2_738_205, 1000));
});

// Growth, kilocalories a day; at the ages where it changes. Each pair is one height and mass a year apart.
test.for([
  { sex: 'male', before: 3, growth: [20, 15], age: 3.68 },
  { sex: 'male', before: 8, growth: [15, 25], age: 3.68 },
  { sex: 'male', before: 13, growth: [25, 20], age: 3.68 },
  { sex: 'female', before: 8, growth: [15, 30], age: -22.25 },
  { sex: 'female', before: 13, growth: [30, 20], age: -22.25 },
] as const)(
  'a child ($sex) of $before grows at $growth.0 and a year later at $growth.1',
  ({ sex, before, growth, age }) => {
    const at = (years: number): number =>
      fractionToNumber(
        energyRequirement({
          sex,
          ageYears: fraction(years),
          heightCentimetres: 120,
          massKilograms: 25,
          category: 'active',
        }),
      );
    expect(at(before + 1) - at(before)).toBeCloseTo(age + growth[1] - growth[0], 8);
  },
);

describe('an eater with height and mass', () => {
  const woman: EaterFacts = {
    eaterId: 'eater',
    birthOn: '1991-07-01',
    sex: 'female',
    activity: 'sedentary',
    presentPercent: 100,
    heightCentimetres: 165,
    massKilograms: 65,
    typedKilocalories: null,
    excludedAllergens: [],
    excludedFoodCodes: [],
    avoidsGluten: false,
  };

  test.for([
    { activity: 'sedentary', expected: 2044.5, because: 'sedentary is read as inactive' },
    { activity: 'moderate', expected: 2208.52, because: 'moderate is read as low active' },
    { activity: 'active', expected: 2346.1, because: 'active is active' },
  ] as const)('needs $expected: $because', ({ activity, expected }) => {
    const answer = dailyKilocalories({ ...woman, activity }, '2026-07-01');
    expect(fractionToNumber(answer.kilocalories)).toBeCloseTo(expected, 8);
    expect(answer.basis).toBe('equation');
    expect(answer.source).toContain('from memory');
  });

  test('grows older by the month: half a year takes 7.01 / 2 kcal off', () => {
    const answer = dailyKilocalories(woman, '2027-01-01');
    expect(fractionToNumber(answer.kilocalories)).toBeCloseTo(2044.5 - 7.01 / 2, 8);
  });

  test('is taken at the typed figure when there is one', () => {
    const answer = dailyKilocalories({ ...woman, typedKilocalories: 2450 }, '2026-07-01');
    expect(answer).toMatchObject({ kilocalories: fraction(2450), basis: 'typed' });
  });

  test('is read from the table when one of the two is missing, below 3 years, or when they fit no person', () => {
    expect(dailyKilocalories({ ...woman, massKilograms: null }, '2026-07-01').basis).toBe('table');
    expect(dailyKilocalories({ ...woman, birthOn: '2024-01' }, '2026-07-01').basis).toBe('table');
    const noGirl = {
      ...woman,
      birthOn: '2021-07',
      activity: 'active',
      heightCentimetres: 1,
      massKilograms: 1,
    } as const;
    expect(dailyKilocalories(noGirl, '2026-07-01').basis).toBe('table');
  });

  test('is refused when a height, mass or typed figure is not above 0', () => {
    expect(() => dailyKilocalories({ ...woman, heightCentimetres: 0 }, '2026-07-01')).toThrow('height');
    expect(() => dailyKilocalories({ ...woman, massKilograms: -1 }, '2026-07-01')).toThrow('mass');
    expect(() => dailyKilocalories({ ...woman, typedKilocalories: 0 }, '2026-07-01')).toThrow('typed');
  });
});

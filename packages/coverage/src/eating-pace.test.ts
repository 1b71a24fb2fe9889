import { fraction, fractionToNumber } from '@sheafbook/units';
import { expect, test } from 'vitest';
import type { EaterFacts } from './eater.ts';
import { eatingPace, onlyFoods, type StockFood } from './eating-pace.ts';
import { householdCoverage } from './household-coverage.ts';

/** Men of 40: one adult-equivalent each. */
const anEater = (eaterId: string, facts: Partial<EaterFacts> = {}): EaterFacts => ({
  ...{ eaterId, birthOn: '1986-01-01', sex: 'male', activity: 'sedentary', presentPercent: 100 },
  ...{ heightCentimetres: null, massKilograms: null, typedKilocalories: null },
  ...{ excludedAllergens: [], excludedFoodCodes: [], avoidsGluten: false },
  ...facts,
});
const food = (foodCode: string, grams: number, facts: Partial<StockFood> = {}): StockFood => ({
  ...{ foodCode, group: 'grains', grams, allergens: [], gluten: 'no' },
  ...facts,
});
const wheat = food('wheat', 30_000, { allergens: ['wheat'], gluten: 'yes' });

/** 500 g of grain a day for an adult, so that a pace is reckoned by hand. */
function paces(eaters: EaterFacts[], stock: StockFood[]) {
  const guideline = [{ group: 'grains', gramsPerAdultYear: fraction(500 * 365) }] as const;
  const coverage = householdCoverage({ eaters, stock: [], guideline, today: '2026-07-01', targetDays: 365 });
  return Object.fromEntries(
    [...eatingPace(coverage, { eaters, stock })].map(([code, pace]) => [code, fractionToNumber(pace)]),
  );
}

test('the need of a group is eaten from its foods as they are there', () => {
  const eaters = [anEater('Ana'), anEater('Bo')];
  expect(paces(eaters, [wheat, food('rice', 8_000), food('rice', 2_000)])).toEqual({ wheat: 750, rice: 250 });
});

test('by those who may eat them: who eats no wheat eats rice alone', () => {
  const eaters = [anEater('Ana'), anEater('Cy', { excludedAllergens: ['wheat'] })];
  expect(paces(eaters, [wheat, food('rice', 10_000)])).toEqual({ wheat: 375, rice: 625 });
  expect(onlyFoods(eaters, [wheat, food('rice', 10_000)])).toEqual(new Set(['rice']));
  expect(onlyFoods(eaters, [wheat])).toEqual(new Set());
  expect(onlyFoods([anEater('Ana')], [wheat, food('rice', 1)])).toEqual(new Set());
});

test('what nobody may eat, and a group without a need, is not eaten; no need is eaten twice', () => {
  const eaters = [anEater('Cy', { excludedAllergens: ['wheat'] })];
  const stock = [wheat, food('salt', 500, { group: 'salt' })];
  expect(paces(eaters, stock)).toEqual({ wheat: 0, salt: 0 });
  const all = Object.values(
    paces([anEater('Ana'), anEater('Bo')], [wheat, food('rice', 7), food('oats', 13)]),
  );
  expect(all.reduce((sum, pace) => sum + pace, 0)).toBeCloseTo(1000, 9);
});

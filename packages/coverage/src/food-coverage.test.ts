import { fraction } from '@sheafbook/units';
import { expect, test } from 'vitest';
import type { EaterFacts } from './eater.ts';
import { coverByFood } from './food-coverage.ts';
import { householdCoverage } from './household-coverage.ts';
import type { StockLot } from './stock-lot.ts';

/** Men of 40: one adult-equivalent each. */
const anEater = (eaterId: string, facts: Partial<EaterFacts> = {}): EaterFacts => ({
  eaterId,
  birthOn: '1986-01-01',
  sex: 'male',
  activity: 'sedentary',
  presentPercent: 100,
  heightCentimetres: null,
  massKilograms: null,
  typedKilocalories: null,
  excludedAllergens: [],
  excludedFoodCodes: [],
  avoidsGluten: false,
  ...facts,
});
const aLot = (lotId: string, grams: number, facts: Partial<StockLot> = {}): StockLot => ({
  lotId,
  foodCode: 'rice',
  group: 'grains',
  grams,
  daysLeft: null,
  allergens: [],
  gluten: 'no',
  kilocaloriesPer100Grams: 365,
  ...facts,
});
const wheat = { foodCode: 'wheat', allergens: ['wheat'], gluten: 'yes' } as const;

/** 500 g of grain a day for an adult, so that the days are reckoned by hand. */
function cover(eaters: EaterFacts[], stock: StockLot[]) {
  const guideline = [{ group: 'grains', gramsPerAdultYear: fraction(500 * 365) }] as const;
  const coverage = householdCoverage({ eaters, stock, guideline, today: '2026-07-01', targetDays: 365 });
  return coverByFood(coverage, { eaters, stock });
}

test('a food alone feeds those who may eat it, and names those who may not', () => {
  const eaters = [anEater('Ana'), anEater('Cy', { excludedAllergens: ['wheat'] })];
  const stock = [aLot('a', 30_000, wheat), aLot('b', 20_000), aLot('c', 20_000)];
  expect(cover(eaters, stock)).toMatchObject([
    { foodCode: 'wheat', grams: 30_000, wholeDays: 60, mayEatIds: ['Ana'], mayNotEatIds: ['Cy'] }, // 30 kg at 500 g
    { foodCode: 'rice', grams: 40_000, wholeDays: 40, mayEatIds: ['Ana', 'Cy'], mayNotEatIds: [] }, // 40 kg at 1 kg
  ]);
});

test('a food that one person leaves out by its code is not theirs', () => {
  const eaters = [anEater('Ana'), anEater('Cy', { excludedFoodCodes: ['rice'] })];
  expect(cover(eaters, [aLot('a', 1000)])).toMatchObject([{ wholeDays: 2, mayNotEatIds: ['Cy'] }]);
});

test('a lot ends what it feeds on its last day, and counts for nothing after it', () => {
  const rice = cover([anEater('Ana')], [aLot('a', 10_000, { daysLeft: 3 }), aLot('b', 500, { daysLeft: 0 })]);
  expect(rice).toMatchObject([{ grams: 10_000, wholeDays: 3 }]);
});

test('nobody who may eat it, or nobody at all: no day is named', () => {
  const nobody = cover([anEater('Cy', { avoidsGluten: true })], [aLot('a', 1000, wheat)]);
  expect(nobody).toMatchObject([{ wholeDays: null, mayEatIds: [], mayNotEatIds: ['Cy'] }]);
  expect(cover([], [aLot('a', 1000)])).toMatchObject([{ wholeDays: null, mayEatIds: [] }]);
});

import { expect, test } from 'vitest';
import { mayEat, whyNotEat } from './may-eat.ts';

const anyone = { excludedAllergens: [], excludedFoodCodes: [], avoidsGluten: false };
const wheat = { foodCode: 'wheat-hard-red', allergens: ['wheat'], gluten: 'yes' } as const;
const rye = { foodCode: 'rye', allergens: [], gluten: 'yes' } as const;
const oats = { foodCode: 'oats-rolled', allergens: [], gluten: 'cross-contact' } as const;
const rice = { foodCode: 'rice-white', allergens: [], gluten: 'no' } as const;

test.for([
  { who: anyone, food: wheat, may: true, because: 'nothing is excluded' },
  {
    who: { ...anyone, excludedAllergens: ['wheat'] },
    food: wheat,
    may: false,
    because: 'its allergen is excluded',
  },
  {
    who: { ...anyone, excludedAllergens: ['Wheat '] },
    food: wheat,
    may: false,
    because: 'a capital letter lets nothing through',
  },
  {
    who: { ...anyone, excludedAllergens: ['wheat'] },
    food: rye,
    may: true,
    because: 'rye carries gluten but no wheat',
  },
  {
    who: { ...anyone, avoidsGluten: true },
    food: rye,
    may: false,
    because: 'gluten is not an allergen of the nine',
  },
  { who: { ...anyone, avoidsGluten: true }, food: oats, may: false, because: 'cross-contact is enough' },
  { who: { ...anyone, avoidsGluten: true }, food: rice, may: true, because: 'rice has none' },
  {
    who: { ...anyone, excludedFoodCodes: ['rice-white'] },
    food: rice,
    may: false,
    because: 'the food itself is excluded',
  },
])('$food.foodCode: $may, because $because', ({ who, food, may }) => {
  expect(mayEat(who, food)).toBe(may);
});

test('why not: the allergens as the food has them, the food itself, and gluten', () => {
  const who = {
    excludedAllergens: [' WHEAT', 'soy'],
    excludedFoodCodes: ['Wheat-Hard-Red'],
    avoidsGluten: true,
  };
  expect(whyNotEat(who, wheat)).toEqual({ allergens: ['wheat'], isFoodExcluded: true, hasGluten: true });
  expect(whyNotEat(who, oats)).toEqual({ allergens: [], isFoodExcluded: false, hasGluten: true });
  expect(whyNotEat(who, rice)).toBeNull();
});

import { AssertionError } from '@sheafbook/units';
import { describe, expect, test } from 'vitest';
import { bulkDensityOf, bulkFromCup, bulkFromTestWeight } from './bulk-density.ts';
import { REFERENCE_FOODS } from './reference-foods.ts';

describe('bulk density', () => {
  test('of wheat is 192 g in a US cup of 236.588 mL: 811.537 mg/mL', () => {
    expect(bulkFromCup(192)).toBe(811.537);
  });

  test('of wheat by its trade weight is 60 lb in a US bushel: 772.312 mg/mL', () => {
    expect(bulkFromTestWeight(60)).toBe(772.312);
  });

  test('comes from the cup, else from the bushel, else says why it is unknown', () => {
    const others = REFERENCE_FOODS.filter((food) => food.bulkBasis !== 'cup');
    expect(others.map((food) => [food.foodCode, food.bulkMilligramsPerMillilitre])).toEqual([
      ['wheat-soft-red-winter', 772.312],
      ['wheat-soft-white', 772.312],
      ['wheat-durum', 772.312],
      ['bulgur', null],
      ['pasta', null],
      ['sorghum', 720.824],
      ['oil-canola', null],
    ]);
    const unknown = others.filter((food) => food.bulkMilligramsPerMillilitre === null);
    expect(unknown.filter((food) => !food.bulkSource.startsWith('unknown: '))).toEqual([]);
  });

  test('of a food with neither figure nor reason is the programmer’s mistake', () => {
    expect(() => bulkDensityOf('moon-dust', null)).toThrow(AssertionError);
  });
});

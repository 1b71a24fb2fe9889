import { expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { BUSHEL_WEIGHTS, bushelsPerTonne, kilogramsPerBushel, kilogramsPerCubicMetre } from './bushel.ts';
import { fraction, multiplyFractions } from './fraction.ts';

test('every trade weight carries its source', () => {
  expect(BUSHEL_WEIGHTS.filter((row) => row.source.trim() === '')).toEqual([]);
  expect(new Set(BUSHEL_WEIGHTS.map((row) => row.grain)).size).toBe(BUSHEL_WEIGHTS.length);
});

test('a pound a bushel is what the definitions of both units make it', () => {
  // 453.59237 g in 35,239.07016688 mL is 12.8718596… kg/m³; the exact fraction is written out here.
  expect(kilogramsPerCubicMetre(1)).toEqual(fraction(45_359_237n * 10n ** 6n, 3_523_907_016_688n));
});

test('a tonne of bushels weighs a tonne', () => {
  for (const { poundsPerBushel } of BUSHEL_WEIGHTS) {
    const bushels = bushelsPerTonne(poundsPerBushel);
    expect(multiplyFractions(bushels, kilogramsPerBushel(poundsPerBushel))).toEqual(fraction(1000));
  }
});

test('a bushel that weighs nothing makes no tonne', () => {
  expect(() => bushelsPerTonne(0)).toThrow(AssertionError);
});

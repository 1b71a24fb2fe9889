import { GUIDELINE } from '@sheafbook/coverage';
import { CONTAINER_KINDS, REFERENCE_FOODS } from '@sheafbook/foods';
import { BUSHEL_WEIGHTS } from '@sheafbook/units';
import { describe, expect, test } from 'vitest';

/** A source says where a figure stands, or plainly that it stands nowhere. */
function isSource(source: string): boolean {
  return source.trim().length >= 5 && !/^(unknown|n\/?a|none|various|tbd)$/i.test(source.trim());
}

describe('each reference row carries its source', () => {
  test('foods, with the release that their figures come from', () => {
    expect(REFERENCE_FOODS.length).toBeGreaterThanOrEqual(30);
    const bare = REFERENCE_FOODS.filter(
      ({ source, bulkSource }) =>
        !isSource(source.table) ||
        source.release !== 'SR28' ||
        !/^\d{5}$/.test(source.databaseNumber) ||
        !isSource(bulkSource),
    );
    expect(bare.map(({ foodCode }) => foodCode)).toEqual([]);
    const numbers = REFERENCE_FOODS.map(({ source }) => source.databaseNumber);
    expect(new Set(numbers).size).toBe(numbers.length);
  });

  test('container kinds, bushel weights and the yearly guideline', () => {
    expect(CONTAINER_KINDS.filter(({ source }) => !isSource(source))).toEqual([]);
    expect(BUSHEL_WEIGHTS.filter(({ source }) => !isSource(source))).toEqual([]);
    expect(GUIDELINE.filter(({ source }) => !isSource(source))).toEqual([]);
  });

  test('an empty word is no source', () => {
    expect(['', 'n/a', 'unknown'].map(isSource)).toEqual([false, false, false]);
  });
});

import { AssertionError } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeFill, levelGrams, shakenGrams } from './level-fill.ts';

const wheat = { bulkMilligramsPerMillilitre: 811.537 };
const unweighed = { bulkMilligramsPerMillilitre: null };
const canNo10 = { capacityMicrolitres: 3_108_180 };

describe('filling a container', () => {
  // 0.811537 g/mL × 3,108.18 mL = 2,522.40…, rounded down; × 1.08 = 2,724.19….
  test('a No. 10 can holds 2,522 g of wheat level and 2,724 g shaken down', () => {
    expect(levelGrams(wheat, 3108.18)).toBe(2522);
    expect(shakenGrams(wheat, 3108.18)).toBe(2724);
  });

  test.for([
    { grams: 0, judgement: 'level' },
    { grams: 2522, judgement: 'level' },
    { grams: 2523, judgement: 'shaken' },
    { grams: 2724, judgement: 'shaken' },
    { grams: 2725, judgement: 'too-full' },
  ])('$grams g of wheat in a No. 10 can is $judgement', ({ grams, judgement }) => {
    expect(judgeFill(grams, canNo10, wheat)).toBe(judgement);
  });

  test('nothing is promised of a food whose bulk density is unknown', () => {
    expect(levelGrams(unweighed, 3108.18)).toBeNull();
    expect(shakenGrams(unweighed, 3108.18)).toBeNull();
    expect(judgeFill(2500, canNo10, unweighed)).toBe('unknown');
  });

  test('a larger container never holds less', () => {
    const someVolume = fc.integer({ min: 1, max: 1_000_000 });
    fc.assert(
      fc.property(someVolume, someVolume, (a, b) => {
        const smaller = levelGrams(wheat, Math.min(a, b)) ?? -1;
        expect(levelGrams(wheat, Math.max(a, b))).toBeGreaterThanOrEqual(smaller);
        expect(shakenGrams(wheat, a)).toBeGreaterThanOrEqual(levelGrams(wheat, a) ?? Number.NaN);
      }),
    );
  });

  test('a container or a food of nothing is the programmer’s mistake', () => {
    expect(() => levelGrams(wheat, 0)).toThrow(AssertionError);
    expect(() => levelGrams({ bulkMilligramsPerMillilitre: 0 }, 1000)).toThrow(AssertionError);
    expect(() => judgeFill(-1, canNo10, wheat)).toThrow(AssertionError);
    expect(() => judgeFill(0.5, canNo10, wheat)).toThrow(AssertionError);
  });
});

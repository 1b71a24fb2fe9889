import { AssertionError } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cartonsOf, containersFor, containersHolding } from './containers-for.ts';

const wheat = { bulkMilligramsPerMillilitre: 811.537 };
const canNo10 = { capacityMicrolitres: 3_108_180 };

describe('a share in containers', () => {
  // A level No. 10 can holds 2,522 g of wheat; 120 lb are 54,431 g = 21 × 2,522 + 1,469.
  test('120 lb of wheat fill 21 No. 10 cans and leave 1,469 g for one more', () => {
    expect(containersFor(54_431, canNo10, wheat)).toEqual({
      containers: 21,
      perContainerGrams: 2522,
      remainderGrams: 1469,
      containersForAll: 22,
    });
  });

  test('that comes out even leaves nothing and needs no part-filled container', () => {
    expect(containersFor(2522 * 6, canNo10, wheat)).toMatchObject({ remainderGrams: 0, containersForAll: 6 });
  });

  test('of nothing needs no container', () => {
    expect(containersFor(0, canNo10, wheat)).toMatchObject({
      containers: 0,
      remainderGrams: 0,
      containersForAll: 0,
    });
  });

  test('of a food whose bulk density is unknown has no count', () => {
    expect(containersFor(54_431, canNo10, { bulkMilligramsPerMillilitre: null })).toBeNull();
  });

  test('loses no gram, and the remainder never fills a whole container', () => {
    const someGrams = fc.integer({ min: 0, max: 1_000_000_000 });
    fc.assert(
      fc.property(someGrams, fc.integer({ min: 1, max: 100_000 }), (shareGrams, perContainer) => {
        const count = containersHolding(shareGrams, perContainer);
        expect(count.containers * perContainer + count.remainderGrams).toBe(shareGrams);
        expect(count.remainderGrams).toBeLessThan(perContainer);
        expect(count.containersForAll * perContainer).toBeGreaterThanOrEqual(shareGrams);
        expect((count.containersForAll - 1) * perContainer).toBeLessThan(Math.max(shareGrams, 1));
      }),
    );
  });

  test('is refused in parts of a gram, below nothing, or in containers that hold nothing', () => {
    expect(() => containersHolding(0.5, 2522)).toThrow(AssertionError);
    expect(() => containersHolding(-1, 2522)).toThrow(AssertionError);
    expect(() => containersHolding(1000, 0)).toThrow(AssertionError);
    expect(() => containersFor(1000, { capacityMicrolitres: 1000 }, wheat)).toThrow(AssertionError);
  });
});

test('cans go into whole cartons and a few stay loose', () => {
  expect(cartonsOf(20, 6)).toEqual({ cartons: 3, loose: 2 });
  expect(() => cartonsOf(20, 0)).toThrow(AssertionError);
});

import { CONTAINER_KINDS, judgeFill, KEEPING_CLASSES } from '@sheafbook/foods';
import { findContainerTraits, judgeTreatment, TREATMENT_CODES } from '@sheafbook/keeping';
import { airInPack, judgeAbsorbers, nearestWay } from '@sheafbook/packing';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const KINDS = CONTAINER_KINDS.map(({ kindCode, capacityMicrolitres }) => ({
  kindId: kindCode,
  capacityMicrolitres,
  barrier: findContainerTraits(kindCode)?.barrier ?? null,
}));
const WHEAT = {
  keepingClass: 'whole-grain-hard',
  needsMoistureTest: true,
  moisturePercent: 9.5,
  bulkMilligramsPerMillilitre: 811.537,
} as const;
const FLOUR = { ...WHEAT, keepingClass: 'white-flour', bulkMilligramsPerMillilitre: 528.344 } as const;
const SUGAR = { ...WHEAT, keepingClass: 'sugar', bulkMilligramsPerMillilitre: 845.351 } as const;
const HONEY = { ...SUGAR, keepingClass: 'honey', needsMoistureTest: false, moisturePercent: null } as const;
const NO_10 = { kindId: 'can-no-10', gramsEach: 2500 };

describe('the nearest way to one that does not fit', () => {
  test.for([
    // Dry ice bursts a can; an absorber does not.
    ['dry ice in a can', { ...NO_10, treatment: 'dry-ice' }, WHEAT, { treatment: 'oxygen-absorber' }],
    // A bare pail leaks, so an absorber does nothing; dry ice treats it.
    [
      'an absorber in a bare pail',
      { kindId: 'pail-5-gallon-bare', gramsEach: 14_000, treatment: 'oxygen-absorber' },
      WHEAT,
      { treatment: 'dry-ice' },
    ],
    // Flour is not packed without oxygen; freezing is what it takes, up to 15 lb.
    [
      'flour with an absorber',
      { kindId: 'can-no-10', gramsEach: 1600, treatment: 'oxygen-absorber' },
      FLOUR,
      { treatment: 'freeze-thaw-freeze' },
    ],
    ['sugar with an absorber', { ...NO_10, treatment: 'oxygen-absorber' }, SUGAR, { treatment: 'none' }],
    ['honey with an absorber', { ...NO_10, treatment: 'oxygen-absorber' }, HONEY, { treatment: 'none' }],
    // A No. 2.5 can is too small for 2,500 g (it holds some 700); a half-gallon jar is too (1,536), a No. 10 can is not.
    [
      'too much for a small can',
      { kindId: 'can-no-2-5', gramsEach: 2500, treatment: 'oxygen-absorber' },
      WHEAT,
      { kindId: 'can-no-10' },
    ],
  ] as const)('%s', ([, wished, food, changed]) => {
    expect(nearestWay(wished, food, KINDS)).toEqual({ ...wished, ...changed });
  });

  test('more than any container holds becomes what this one holds level', () => {
    const wished = { kindId: 'can-no-10', treatment: 'oxygen-absorber', gramsEach: 900_000 } as const;
    // 3,108.18 mL × 0.811537 g/mL = 2,522.4 g
    expect(nearestWay(wished, WHEAT, KINDS)).toEqual({ ...wished, gramsEach: 2522 });
  });

  test('whatever is told fits without a warning and holds the food', () => {
    const anyFood = fc.record({
      keepingClass: fc.constantFrom(...KEEPING_CLASSES),
      needsMoistureTest: fc.boolean(),
      moisturePercent: fc.option(fc.double({ min: 0, max: 30, noNaN: true })),
      bulkMilligramsPerMillilitre: fc.option(fc.constantFrom(300, 528.344, 811.537)),
    });
    const anyWish = fc.record({
      kindId: fc.constantFrom(...KINDS.map(({ kindId }) => kindId)),
      treatment: fc.constantFrom(...TREATMENT_CODES),
      gramsEach: fc.integer({ min: 1, max: 300_000 }),
    });
    fc.assert(
      fc.property(anyWish, anyFood, (wished, food) => {
        const near = nearestWay(wished, food, KINDS);
        const kind = KINDS.find(({ kindId }) => kindId === near?.kindId);
        if (!near || !kind) return;
        const { verdict } = judgeTreatment(near.treatment, {
          ...food,
          barrier: kind.barrier,
          grams: near.gramsEach,
        });
        expect(verdict).toBe('fits');
        expect(judgeFill(near.gramsEach, kind, food)).not.toBe('too-full');
      }),
    );
  });
});

// 40 % of a level No. 10 can is 1,243.3 mL of air, which needs 250.5 mL: 300 is enough, 200 is not (5.8 % are left). In a can
// with 1,000 g the kernels fill 1,232.2 mL: 0.4 × 1,232.2 + 1,876.0 = 2,368.8 mL of air need 477.4.
test('the air in a can that is full and in one that is not', () => {
  const can = { capacityMicrolitres: 3_108_180 };
  const full = airInPack(2523, can, WHEAT) ?? 0;
  expect(full).toBeCloseTo(1243.3, 1);
  expect(judgeAbsorbers(full, 300).isEnough).toBe(true);
  expect(judgeAbsorbers(full, 200)).toMatchObject({ isEnough: false });
  expect(judgeAbsorbers(full, 200).residualFraction).toBeCloseTo(0.058, 3);
  expect(judgeAbsorbers(airInPack(1000, can, WHEAT) ?? 0, 300).needMillilitres).toBeCloseTo(477.4, 1);
  expect(airInPack(1000, can, { ...WHEAT, bulkMilligramsPerMillilitre: null })).toBe(null);
});

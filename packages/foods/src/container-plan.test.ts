import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planContainers } from './container-plan.ts';

const WHEAT = { bulkMilligramsPerMillilitre: 811.537 };
const CAN = { kindId: 'can', capacityMicrolitres: 3_108_180, priceMinorUnits: 133 };
const PAIL = { kindId: 'pail', capacityMicrolitres: 22_712_471, priceMinorUnits: null };

// 120 lb is 54,431 g. A No. 10 can holds 3,108.18 mL × 0.811537 = 2,522 g level: 21 cans take 52,962 g and 1,469 g go
// on. 200 lb is 90,718 g, so 90,718 − 52,962 = 37,756 g are left for pails of 22,712.471 mL × 0.811537 = 18,432 g: two
// take 36,864 g, and 892 g fill none.
test('puts 120 lb of 200 lb of wheat in cans and the rest in pails', () => {
  const plan = planContainers(
    90_718,
    [
      { ...CAN, grams: 54_431 },
      { ...PAIL, grams: null },
    ],
    WHEAT,
  );
  expect(plan).toEqual({
    planned: [
      { kindId: 'can', containers: 21, perContainerGrams: 2_522, grams: 52_962, costMinorUnits: 2_793 },
      { kindId: 'pail', containers: 2, perContainerGrams: 18_432, grams: 36_864, costMinorUnits: null },
    ],
    remainderGrams: 892,
  });
});

test('a wish for more than the share gets the share', () => {
  const plan = planContainers(5_044, [{ ...CAN, grams: 100_000 }], WHEAT);
  expect(plan?.planned[0]?.containers).toBe(2);
  expect(plan?.remainderGrams).toBe(0);
});

test('a food whose density nobody knows gets no plan', () => {
  expect(planContainers(1_000, [{ ...CAN, grams: null }], { bulkMilligramsPerMillilitre: null })).toBeNull();
});

test('every gram of a share is in a container or in the remainder', () => {
  const wish = fc.record({
    kindId: fc.constant('any'),
    capacityMicrolitres: fc.integer({ min: 500_000, max: 25_000_000 }),
    priceMinorUnits: fc.option(fc.nat(5_000)),
    grams: fc.option(fc.nat(200_000)),
  });
  fc.assert(
    fc.property(fc.nat(500_000), fc.array(wish, { maxLength: 4 }), (shareGrams, wishes) => {
      const plan = planContainers(shareGrams, wishes, WHEAT);
      const inContainers = plan?.planned.reduce((sum, { grams }) => sum + grams, 0) ?? -1;
      expect(inContainers + (plan?.remainderGrams ?? 0)).toBe(shareGrams);
      expect(plan?.remainderGrams).toBeGreaterThanOrEqual(0);
    }),
  );
});

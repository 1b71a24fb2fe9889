import { addFractions, compareFractions, fraction } from '@sheafbook/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { closeGapDivisible, costToReach, type PricedGap } from './close-gap-divisible.ts';

const someGaps: fc.Arbitrary<PricedGap[]> = fc.tuple(
  ...(['grains', 'legumes', 'salt'] as const).map((group) =>
    fc
      .record({
        need: fc.integer({ min: 0, max: 90 }),
        stockGrams: fc.integer({ min: 0, max: 4000 }),
        price: fc.option(fc.integer({ min: 0, max: 900 }), { freq: 5 }),
      })
      .map(({ need, stockGrams, price }) => ({
        group,
        needGramsPerDay: fraction(need),
        stockGrams,
        minorUnitsPerKilogram: price === null ? null : fraction(price),
      })),
  ),
);

test('a budget buys the longest that it pays for, and a moment longer costs more or can not be bought', () => {
  fc.assert(
    fc.property(
      someGaps,
      fc.integer({ min: 0, max: 3000 }),
      fc.integer({ min: 0, max: 100 }),
      (groups, budgetMinorUnits, targetDays) => {
        const answer = closeGapDivisible({ groups, budgetMinorUnits, targetDays });
        expect(costToReach(groups, answer.days)).toEqual(answer.minorUnits);
        expect(compareFractions(answer.minorUnits, fraction(budgetMinorUnits))).toBeLessThanOrEqual(0);
        if (compareFractions(answer.days, fraction(targetDays)) === 0) return;
        const longer = costToReach(groups, addFractions(answer.days, fraction(1, 1_000_000)));
        expect(longer === null ? 1 : compareFractions(longer, fraction(budgetMinorUnits))).toBeGreaterThan(0);
      },
    ),
  );
});

test('a group that can not be bought ends with its stock, whatever the budget', () => {
  const answer = closeGapDivisible({
    groups: [
      {
        group: 'grains',
        needGramsPerDay: fraction(100),
        stockGrams: 1000,
        minorUnitsPerKilogram: fraction(100),
      },
      { group: 'salt', needGramsPerDay: fraction(8), stockGrams: 160, minorUnitsPerKilogram: null },
    ],
    budgetMinorUnits: 100_000,
    targetDays: 365,
  });
  expect(answer).toMatchObject({ days: fraction(20), limitingGroup: 'grains', minorUnits: fraction(100) });
});

test('the money goes first to the eater whose diet limits, then to all', () => {
  // 250 g a day lack from day 230 on, 1,150 g from day 3025/9 on; 100 cents a kilogram, so 250 g cost 25 cents.
  const gapPieces = [
    { gramsPerDay: fraction(250), coveredGrams: fraction(57_500) },
    { gramsPerDay: fraction(1150), coveredGrams: fraction(360_000) },
  ];
  const groups: PricedGap[] = [
    {
      group: 'grains',
      needGramsPerDay: fraction(1150),
      stockGrams: 360_000,
      minorUnitsPerKilogram: fraction(100),
      gapPieces,
    },
  ];
  expect(closeGapDivisible({ groups, budgetMinorUnits: 1000, targetDays: 365 }).days).toEqual(fraction(270));
  // 5,975 cents buy 59,750 g: (360,000 + 59,750) / 1150 = 365 days.
  expect(closeGapDivisible({ groups, budgetMinorUnits: 5975, targetDays: 365 }).days).toEqual(fraction(365));
});

test('a negative price is refused', () => {
  const gap = {
    group: 'salt',
    needGramsPerDay: fraction(1),
    stockGrams: 0,
    minorUnitsPerKilogram: fraction(-1),
  } as const;
  expect(() => costToReach([gap], fraction(1))).toThrow('costs less than nothing');
});

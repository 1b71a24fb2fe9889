import { closeGapDivisible, closeGapWhole, costToReach, type FoodGroupCode } from '@sheafbook/coverage';
import { compareFractions, fraction } from '@sheafbook/units';
import { describe, expect, test } from 'vitest';

// The worked household of the job's own description: need in grams a day, stock in grams, price in cents a kilogram.
const HOUSEHOLD = [
  { group: 'grains', need: 1150, stockGrams: 230_000, days: 200, cents: 120 },
  { group: 'legumes', need: 180, stockGrams: 27_000, days: 150, cents: 260 },
  { group: 'dried-milk', need: 60, stockGrams: 9000, days: 150, cents: 900 },
  { group: 'fats', need: 90, stockGrams: 10_800, days: 120, cents: 480 },
  { group: 'sugars', need: 80, stockGrams: 20_000, days: 250, cents: 150 },
  { group: 'salt', need: 8, stockGrams: 4000, days: 500, cents: 90 },
] as const;

const GROUPS = HOUSEHOLD.map(({ group, need, stockGrams, cents }) => ({
  group,
  needGramsPerDay: fraction(need),
  stockGrams,
  minorUnitsPerKilogram: fraction(cents),
}));

test.for(HOUSEHOLD)('$group last $days days', ({ need, stockGrams, days }) => {
  expect(fraction(stockGrams, need)).toEqual(fraction(days));
});

describe('food bought to the gram', () => {
  test.for([
    { days: 120, cents: 0 },
    { days: 180, cents: 5616 },
    { days: 200, cents: 8496 },
    { days: 365, cents: 56_406 },
  ])('costs $cents cents to reach day $days', ({ days, cents }) => {
    expect(costToReach(GROUPS, fraction(days))).toEqual(fraction(cents));
  });

  test('reaches 616/3 days with 100.00, buying of four groups', () => {
    const answer = closeGapDivisible({ groups: GROUPS, budgetMinorUnits: 10_000, targetDays: 365 });
    expect(answer.days).toEqual(fraction(616, 3));
    expect(answer.wholeDays).toBe(205);
    expect(answer.minorUnits).toEqual(fraction(10_000));
    expect(answer.groups.map(({ group, grams }) => [group, grams])).toEqual([
      ['grains', fraction(18_400, 3)],
      ['legumes', fraction(9960)],
      ['dried-milk', fraction(3320)],
      ['fats', fraction(7680)],
      ['sugars', fraction(0)],
      ['salt', fraction(0)],
    ]);
  });

  test('stops at the target when the budget goes further', () => {
    const answer = closeGapDivisible({ groups: GROUPS, budgetMinorUnits: 10_000, targetDays: 180 });
    expect(answer.days).toEqual(fraction(180));
    expect(answer.minorUnits).toEqual(fraction(5616));
  });
});

describe('food bought in whole packs', () => {
  const PACKS = [
    { packId: 'legumes 5 kg', group: 'legumes', grams: 5000, minorUnits: 1390, mostPacks: null },
    { packId: 'milk 1 kg', group: 'dried-milk', grams: 1000, minorUnits: 920, mostPacks: null },
    { packId: 'fats 1 kg', group: 'fats', grams: 1000, minorUnits: 495, mostPacks: null },
    { packId: 'grains 10 kg', group: 'grains', grams: 10_000, minorUnits: 1250, mostPacks: null },
  ] as const;
  const question = { groups: GROUPS, packs: PACKS, budgetMinorUnits: 10_000, targetDays: 365 };

  test('reaches day 200 with 2 of legumes, 3 of milk and 8 of fats for 95.00, and then grains limit', () => {
    expect(closeGapWhole(question)).toEqual({
      packs: [
        { packId: 'legumes 5 kg', count: 2 },
        { packId: 'milk 1 kg', count: 3 },
        { packId: 'fats 1 kg', count: 8 },
      ],
      minorUnits: 9500,
      days: fraction(200),
      wholeDays: 200,
      limitingGroup: 'grains',
      reachesTarget: false,
    });
  });

  test('is the best of all ways that 100.00 pays for', () => {
    const bought = (group: FoodGroupCode, counts: readonly number[]): number =>
      PACKS.reduce(
        (sum, pack, place) => sum + (pack.group === group ? pack.grams * (counts[place] ?? 0) : 0),
        0,
      );
    const ways: { counts: number[]; cents: number; days: ReturnType<typeof fraction> }[] = [];
    for (let legumes = 0; legumes <= 7; legumes += 1)
      for (let milk = 0; milk <= 10; milk += 1)
        for (let fats = 0; fats <= 20; fats += 1)
          for (let grains = 0; grains <= 8; grains += 1) {
            const counts = [legumes, milk, fats, grains];
            const cents = counts.reduce(
              (sum, count, place) => sum + count * (PACKS[place]?.minorUnits ?? 0),
              0,
            );
            if (cents > 10_000) continue;
            const ends = HOUSEHOLD.map(({ group, need, stockGrams }) =>
              fraction(stockGrams + bought(group, counts), need),
            );
            ways.push({ counts, cents, days: ends.reduce((a, b) => (compareFractions(a, b) <= 0 ? a : b)) });
          }
    const packs = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count);
    ways.sort(
      (a, b) => compareFractions(b.days, a.days) || a.cents - b.cents || packs(a.counts) - packs(b.counts),
    );
    expect(ways[0]).toEqual({ counts: [2, 3, 8, 0], cents: 9500, days: fraction(200) });
  });
});

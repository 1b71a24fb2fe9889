import { sumOf } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { KeptContainer } from './keeping-life.ts';
import { keepingLifeOf } from './keeping-life.ts';
import { eatInOrder } from './rotation.ts';
import { foodPaces, type PlannedLot, planRotation, sumRisk } from './rotation-plan.ts';
import { eatFaster, giveUnbegun, type KeptLot, moveWhereItHelps, repackWhereItHelps } from './what-if.ts';

const todayOn = '2026-11-28';
const lot = (code: string, grams: number, daysLeft: number, foodCode = 'wheat'): PlannedLot => ({
  ...{ code, foodCode, placeKey: code < 'M' ? 'cellar' : 'garage', grams, daysLeft },
});
const riskOf = (lots: readonly PlannedLot[], pace: ReadonlyMap<string, number>) =>
  sumOf(planRotation(lots, { pace, todayOn }).map(({ atRiskGrams }) => atRiskGrams));

// Job map 10.4: wheat at 300 g a day, oats at 120, beans at 80.
const lots = [
  lot('W1', 40_000, 51),
  lot('W2', 20_000, 120),
  lot('W3', 50_000, 400),
  lot('A1', 18_000, 56, 'oats'),
  lot('B1', 10_000, 96, 'beans'),
];
const pace = new Map([
  ['wheat', 300],
  ['oats', 120],
  ['beans', 80],
]);

describe('the plan of a household’s rotation', () => {
  test('eats each food at its own pace, and sums what is left by month, place and food', () => {
    const outcomes = planRotation(lots, { pace, todayOn });
    expect(sumRisk(outcomes, 'foodCode').map(({ key, atRiskGrams }) => [key, atRiskGrams])).toEqual([
      ['beans', 2_320],
      ['oats', 11_280],
      ['wheat', 24_700],
    ]);
    expect(sumRisk(outcomes, 'month')).toEqual([
      {
        key: '2027-01', // 51 and 56 days after 28 November
        atRiskGrams: 35_980,
        foods: [
          { foodCode: 'wheat', atRiskGrams: 24_700 },
          { foodCode: 'oats', atRiskGrams: 11_280 },
        ],
      },
      { key: '2027-03', atRiskGrams: 2_320, foods: [{ foodCode: 'beans', atRiskGrams: 2_320 }] },
    ]);
    expect(sumRisk(outcomes, 'placeKey').map(({ key, atRiskGrams }) => [key, atRiskGrams])).toEqual([
      ['cellar', 13_600],
      ['garage', 24_700],
    ]);
  });

  test('sets the pace that eats all in time beside the one at which a food is eaten', () => {
    const past = lot('W0', 700, 0);
    expect(foodPaces([...lots, past], pace)).toMatchObject([
      { foodCode: 'beans', steadyGramsPerDay: 105, gramsPerDay: 80, daysToEatAll: 125 }, // 10,000 / 96
      { foodCode: 'oats', steadyGramsPerDay: 322, gramsPerDay: 120, daysToEatAll: 150 },
      { foodCode: 'wheat', steadyGramsPerDay: 785, pastGrams: 700, grams: 110_700, daysToEatAll: 369 },
    ]);
    expect(foodPaces(lots, new Map())[0]).toMatchObject({ gramsPerDay: 0, daysToEatAll: null });
  });

  const someLots = fc
    .array(
      fc.record({
        grams: fc.integer({ min: 0, max: 60_000 }),
        daysLeft: fc.nat(2_000),
        foodCode: fc.constantFrom('wheat', 'oats', 'beans'),
        placeKey: fc.constantFrom('cellar', 'garage', ''),
      }),
      { maxLength: 12 },
    )
    .map((rows) => rows.map((row, at) => ({ ...row, code: `C${at}` })));
  const somePace = fc
    .tuple(fc.nat(400), fc.nat(400))
    .map(([wheat, oats]) => new Map([['wheat', wheat] as const, ['oats', oats] as const]));

  test('no gram is lost: eaten and at risk are all there is, and each sum by month, place and food is the whole risk', () => {
    fc.assert(
      fc.property(someLots, somePace, (some, at) => {
        const outcomes = planRotation(some, { pace: at, todayOn });
        expect(outcomes).toHaveLength(some.length);
        for (const { grams, eatenGrams, atRiskGrams } of outcomes)
          expect(eatenGrams + atRiskGrams).toBe(grams);
        const risk = sumOf(outcomes.map(({ atRiskGrams }) => atRiskGrams));
        for (const by of ['month', 'placeKey', 'foodCode'] as const) {
          const sums = sumRisk(outcomes, by);
          expect(sumOf(sums.map(({ atRiskGrams }) => atRiskGrams))).toBe(risk);
          for (const { atRiskGrams, foods } of sums)
            expect(sumOf(foods.map((food) => food.atRiskGrams))).toBe(atRiskGrams);
        }
        const wheat = some.filter(({ foodCode }) => foodCode === 'wheat');
        const alone = eatInOrder(wheat, at.get('wheat') ?? 0);
        expect(sumRisk(outcomes, 'foodCode').find(({ key }) => key === 'wheat')?.atRiskGrams ?? 0).toBe(
          sumOf(alone.map(({ atRiskGrams }) => atRiskGrams)),
        );
      }),
    );
  });

  test('who eats faster never wastes more, but for a gram a container that rounding down may cost', () => {
    fc.assert(
      fc.property(someLots, somePace, fc.integer({ min: 100, max: 400 }), (some, at, percent) => {
        expect(riskOf(some, eatFaster(at, percent))).toBeLessThanOrEqual(riskOf(some, at) + some.length);
      }),
    );
    expect(() => eatFaster(pace, -1)).toThrow('below zero');
  });

  test('giving away what would not be begun takes exactly its grams off the risk, and never what is past its day', () => {
    fc.assert(
      fc.property(someLots, somePace, (some, at) => {
        const { kept, given } = giveUnbegun(some, planRotation(some, { pace: at, todayOn }));
        expect(kept.length + given.length).toBe(some.length);
        expect(given.filter(({ daysLeft }) => daysLeft === 0)).toEqual([]);
        expect(riskOf(kept, at)).toBe(riskOf(some, at) - sumOf(given.map(({ grams }) => grams)));
      }),
    );
  });
});

describe('what keeps longer elsewhere', () => {
  const inGarage: KeptContainer = {
    keepingClass: 'whole-grain-hard',
    barrier: 'bare-plastic',
    isDark: true,
    treatment: 'none',
    moisturePercent: 9,
    standsInLight: false,
    openedDaysAgo: null,
    lastLook: null,
    history: [{ days: 60, tenthsCelsius: 270, known: 'read' }],
    nowTenthsCelsius: 270,
  };
  const keptLot = (code: string, kept: KeptContainer, grams = 20_000): KeptLot => ({
    ...lot(code, grams, keepingLifeOf(kept).likelyDays),
    ...{ placeKey: 'garage', kept, needsMoistureTest: true },
  });

  test('is moved to the cool place, and what would keep no longer there stays', () => {
    const cold = keptLot('B', { ...inGarage, nowTenthsCelsius: 80 });
    const [moved, stayed] = moveWhereItHelps([keptLot('A', inGarage), cold], {
      ...{ placeKey: 'cellar', tenthsCelsius: 120, isLit: false },
    });
    expect(moved?.placeKey).toBe('cellar');
    expect(moved?.daysLeft).toBe(keepingLifeOf({ ...inGarage, nowTenthsCelsius: 120 }).likelyDays);
    expect(stayed).toBe(cold);
  });

  test('is packed anew where that is allowed, keeping the age it has; a damp, untested or past one never', () => {
    const again = (kept: Partial<KeptContainer>) =>
      repackWhereItHelps([keptLot('A', { ...inGarage, ...kept })])[0];
    const [before] = [keptLot('A', inGarage)];
    expect(again({})?.daysLeft).toBeGreaterThan(before?.daysLeft ?? 0);
    const fresh = again({ history: [] })?.daysLeft ?? 0;
    expect(again({})?.daysLeft).toBeLessThan(fresh);
    for (const kept of [
      { moisturePercent: 11 },
      { moisturePercent: null },
      { keepingClass: 'brown-rice' },
    ] as const)
      expect(again(kept)?.kept.treatment).toBe('none');
    const past = { ...keptLot('A', inGarage), daysLeft: 0 };
    expect(repackWhereItHelps([past])).toEqual([past]);
  });

  test('at whatever warmth, neither ever puts more at risk', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(40_000), fc.integer({ min: 0, max: 350 }), fc.nat(4_000)), { maxLength: 8 }),
        fc.integer({ min: 0, max: 350 }),
        fc.nat(300),
        (rows, tenthsCelsius, gramsPerDay) => {
          const stock = rows.map(([grams, warmth, days], at) =>
            keptLot(
              `C${at}`,
              {
                ...inGarage,
                history: [{ days, tenthsCelsius: warmth, known: 'read' }],
                nowTenthsCelsius: warmth,
              },
              grams,
            ),
          );
          const at = new Map([['wheat', gramsPerDay]]);
          const before = riskOf(stock, at) + stock.length;
          const to = { placeKey: 'cellar', tenthsCelsius, isLit: false };
          expect(riskOf(moveWhereItHelps(stock, to), at)).toBeLessThanOrEqual(before);
          expect(riskOf(repackWhereItHelps(stock), at)).toBeLessThanOrEqual(before);
        },
      ),
    );
  });
});

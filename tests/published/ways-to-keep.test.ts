import { CONTAINER_KINDS, KEEPING_CLASSES } from '@sheafbook/foods';
import { findContainerTraits, judgeTreatment, TREATMENT_CODES, treatmentOf } from '@sheafbook/keeping';
import { type KindToUse, listWaysToKeep } from '@sheafbook/packing';
import fc from 'fast-check';
import { expect, test } from 'vitest';

const PRICES: Record<string, number> = {
  'can-no-10': 133,
  'pail-6-gallon-lined': 745,
  'pail-6-gallon-bare': 500,
};
const kindNamed = (kindCode: string): KindToUse => {
  const kind = CONTAINER_KINDS.find((row) => row.kindCode === kindCode);
  const traits = findContainerTraits(kindCode);
  if (!kind || !traits) throw new Error(`no such kind: ${kindCode}`);
  const priceMinorUnits = PRICES[kindCode] ?? null;
  return { ...kind, kindId: kindCode, barrier: traits.barrier, isDark: traits.isDark, priceMinorUnits };
};
const KINDS = Object.keys(PRICES).map(kindNamed);
const ALL = CONTAINER_KINDS.map(({ kindCode }) => kindNamed(kindCode));
const WHEAT = {
  keepingClass: 'whole-grain-hard',
  needsMoistureTest: true,
  moisturePercent: 9.5,
  bulkMilligramsPerMillilitre: 811.537,
} as const;
const USE = {
  absorbers: new Map([
    [300, 25],
    [2000, 150],
  ]),
  dryIceKilogram: 300,
};

const wayOf = (
  grams: number,
  kindId: string,
  treatment: string,
  food: Parameters<typeof listWaysToKeep>[1] = WHEAT,
) =>
  listWaysToKeep(grams, food, KINDS, USE).ways?.find(
    (way) => way.kindId === kindId && way.treatment === treatment,
  );

// A can holds 3,108.18 mL × 0.811537 = 2,522 g. 20,000 = 7 × 2,522 + 2,346. Air in a full one 40 % of it, 1,243.3 mL, needs
// 250.5 mL: one packet of 300. In the last, 2,346 g fill 2,891.3 mL: 1,156.5 + 216.9 = 1,373.4 mL need 276.8: one of 300.
// 8 cans at 1.33 and 8 packets at 0.25 are 12.64; over 30 years 0.42 a year.
test('20 kg of wheat in cans with absorbers: 8 cans, 8 packets, 12.64, and 0.42 for each of 30 years', () => {
  const way = wayOf(20_000, 'can-no-10', 'oxygen-absorber');
  expect(way).toMatchObject({
    containers: 8,
    gramsEach: 2522,
    lastGrams: 2346,
    packets: [{ sizeMillilitres: 300, count: 8 }],
    costMinorUnits: 1264,
    warnings: [],
  });
  expect(way?.life).toMatchObject({
    lowDays: 10_957,
    likelyDays: 10_957,
    highDays: 10_957,
    isEstimate: false,
  });
  expect(way?.costPerYearMinorUnits).toBeCloseTo(1264 / 30, 1);
});

// A pail of 22,712.47 mL holds 18,432 g; 40 % of it, 9,085 mL, need 1,830.8: one packet of 2,000. The last 1,568 g fill
// 1,932.1 mL: 772.9 + 20,780.3 = 21,553.2 mL need 4,343.3: three of 2,000. Two pails and four packets: 20.90, over 22 years.
test('a nearly empty pail takes three packets, since its empty part is air too', () => {
  const way = wayOf(20_000, 'pail-6-gallon-lined', 'oxygen-absorber');
  expect(way).toMatchObject({
    containers: 2,
    lastGrams: 1568,
    packets: [{ sizeMillilitres: 2000, count: 4 }],
  });
  expect(way?.costMinorUnits).toBe(2090);
  expect(way?.costPerYearMinorUnits).toBeCloseTo(2090 / 22, 1);
  expect(way?.life?.isEstimate).toBe(true);
});

// An ounce a gallon: 6 × 28.3495 g, 171 g in each of two pails, 342 g at 3.00 a kilogram are 1.026, so 11.03 in all.
test('dry ice is paid by its mass, and the sum is rounded up to a whole cent', () => {
  const way = wayOf(20_000, 'pail-6-gallon-bare', 'dry-ice');
  expect(way).toMatchObject({ dryIceGrams: 342, costMinorUnits: 1103 });
});

test('the cheapest per year kept stands first, and what is not safe is told with what is', () => {
  const { ways, refused } = listWaysToKeep(20_000, WHEAT, KINDS, USE);
  const fitting = ways
    ?.filter(({ warnings }) => warnings.length === 0)
    .map(({ kindId, treatment }) => `${kindId} ${treatment}`);
  expect(fitting?.[0]).toBe('can-no-10 oxygen-absorber');
  expect(fitting?.indexOf('can-no-10 none')).toBeGreaterThan(0);
  expect(refused.find(({ kindId, treatment }) => kindId === 'can-no-10' && treatment === 'dry-ice')).toEqual({
    kindId: 'can-no-10',
    treatment: 'dry-ice',
    misfits: ['dry-ice-in-metal'],
    nearest: 'oxygen-absorber',
  });
});

test('moist wheat goes into no pack without oxygen; a price that nobody knows ranks last and blocks nothing', () => {
  const moist = { ...WHEAT, moisturePercent: 13 };
  const { ways } = listWaysToKeep(20_000, moist, KINDS, USE);
  expect(ways?.filter(({ treatment }) => treatmentOf(treatment).isOxygenFree)).toEqual([]);
  expect(ways?.filter(({ treatment }) => treatment === 'none').length).toBe(KINDS.length);
  const unpriced =
    listWaysToKeep(20_000, WHEAT, ALL, USE).ways?.filter(({ warnings }) => warnings.length === 0) ?? [];
  const firstUnknown = unpriced.findIndex(({ costMinorUnits }) => costMinorUnits === null);
  expect(firstUnknown).toBeGreaterThan(0);
  expect(unpriced.slice(firstUnknown).filter(({ costMinorUnits }) => costMinorUnits !== null)).toEqual([]);
});

test('without a bulk density nobody counts containers, yet what is unsafe is told', () => {
  const unknown = { ...WHEAT, bulkMilligramsPerMillilitre: null };
  const { ways, refused } = listWaysToKeep(20_000, unknown, KINDS, USE);
  expect(ways).toBeNull();
  expect(refused.length).toBeGreaterThan(0);
});

test('whatever the food, no treatment is always a way, all grams are in it, and nothing that is refused is a way', () => {
  const anyFood = fc.record({
    keepingClass: fc.option(fc.constantFrom(...KEEPING_CLASSES)),
    needsMoistureTest: fc.boolean(),
    moisturePercent: fc.option(fc.double({ min: 0, max: 30, noNaN: true })),
    bulkMilligramsPerMillilitre: fc.integer({ min: 200, max: 1300 }),
  });
  fc.assert(
    fc.property(anyFood, fc.integer({ min: 1, max: 300_000 }), (food, grams) => {
      const { ways, refused } = listWaysToKeep(grams, food, ALL, USE);
      expect((ways?.length ?? 0) + refused.length).toBe(ALL.length * TREATMENT_CODES.length);
      expect(ways?.filter(({ treatment }) => treatment === 'none').length).toBe(ALL.length);
      for (const way of ways ?? []) {
        const { barrier } = ALL.find(({ kindId }) => kindId === way.kindId) ?? { barrier: null };
        expect((way.containers - 1) * way.gramsEach + way.lastGrams).toBe(grams);
        expect(judgeTreatment(way.treatment, { ...food, barrier, grams: 1 }).verdict).not.toBe('refused');
      }
    }),
    { numRuns: 50 },
  );
});

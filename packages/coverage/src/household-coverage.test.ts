import { compareFractions, type Fraction, fraction } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closeGapWhole } from './close-gap-whole.ts';
import type { EaterFacts } from './eater.ts';
import { guidelineRow } from './guideline.ts';
import { type HouseholdCoverage, householdCoverage } from './household-coverage.ts';
import type { StockLot } from './stock-lot.ts';

const TODAY = '2026-07-01';

/** A man of 40, sedentary: one adult-equivalent and 2,400 kcal a day by the guideline table. */
function anEater(facts: Partial<EaterFacts>): EaterFacts {
  return {
    eaterId: 'Ana',
    birthOn: '1986-01-01',
    sex: 'male',
    activity: 'sedentary',
    presentPercent: 100,
    heightCentimetres: null,
    massKilograms: null,
    typedKilocalories: null,
    excludedAllergens: [],
    excludedFoodCodes: [],
    avoidsGluten: false,
    ...facts,
  };
}

function aLot(facts: Partial<StockLot>): StockLot {
  return {
    lotId: 'lot',
    foodCode: 'rice-white',
    group: 'grains',
    grams: 10_000,
    daysLeft: null,
    allergens: [],
    gluten: 'no',
    kilocaloriesPer100Grams: 365,
    ...facts,
  };
}

const wheat = {
  foodCode: 'wheat',
  allergens: ['wheat'],
  gluten: 'yes',
  kilocaloriesPer100Grams: 327,
} as const;

/** A guideline of exactly 500 g of grain and 10 g of salt a day for an adult, so that sums can be done by hand. */
const HAND = [
  { group: 'grains', gramsPerAdultYear: fraction(500 * 365) },
  { group: 'salt', gramsPerAdultYear: fraction(10 * 365) },
] as const;

function coverageOf(input: Partial<Parameters<typeof householdCoverage>[0]>): HouseholdCoverage {
  return householdCoverage({
    eaters: [anEater({})],
    stock: [],
    today: TODAY,
    targetDays: 100,
    guideline: HAND,
    ...input,
  });
}

function groupOf(coverage: HouseholdCoverage, group: string): HouseholdCoverage['groups'][number] {
  const found = coverage.groups.find((each) => each.group === group);
  if (!found) throw new Error(`no group ${group}`);
  return found;
}

describe('a household of one', () => {
  test('has 20 days of grain in 10 kg, none of salt, and salt runs out first', () => {
    const coverage = coverageOf({ stock: [aLot({})] });
    expect(groupOf(coverage, 'grains')).toMatchObject({
      days: fraction(20),
      wholeDays: 20,
      gapGrams: 40_000,
    });
    expect(groupOf(coverage, 'salt')).toMatchObject({ days: fraction(0), gapGrams: 1000 });
    expect(coverage.byMass).toMatchObject({ wholeDays: 0, limitingGroup: 'salt', secondGroup: 'grains' });
    expect(coverage.runsOutFirst).toBe('salt');
  });

  test('lasts 20 days by mass when it does not count salt', () => {
    const coverage = coverageOf({ stock: [aLot({})], targetGroups: ['grains'] });
    expect(coverage.byMass).toMatchObject({ wholeDays: 20, limitingGroup: 'grains', secondGroup: null });
    expect(groupOf(coverage, 'salt').isTargeted).toBe(false);
  });

  test('lasts 36,500 / 2,400 = 15 whole days by energy, and the shorter measure counts unless one is picked', () => {
    const stock = [aLot({})];
    const coverage = coverageOf({ stock, targetGroups: ['grains'] });
    expect(coverage.byEnergy).toMatchObject({
      days: fraction(36_500, 2400),
      wholeDays: 15,
      kilocalories: fraction(36_500),
      kilocaloriesPerDay: fraction(2400),
    });
    expect(coverage).toMatchObject({ wholeDays: 15, shorterMeasure: 'energy', runsOutFirst: 'grains' });
    expect(coverageOf({ stock, targetGroups: ['grains'], basis: 'mass' }).wholeDays).toBe(20);
    expect(coverageOf({ stock, targetGroups: [], basis: 'energy' }).wholeDays).toBe(15);
  });

  test('away half of the year needs half by both measures', () => {
    const coverage = coverageOf({ eaters: [anEater({ presentPercent: 50 })], stock: [aLot({})] });
    expect(groupOf(coverage, 'grains').days).toEqual(fraction(40));
    expect(coverage.byEnergy.kilocaloriesPerDay).toEqual(fraction(1200));
    expect(coverage.adultEquivalents).toEqual(fraction(1, 2));
  });

  test('counts what is outside the guideline for energy only', () => {
    const stock = [
      aLot({}),
      aLot({ lotId: 'raisins', group: 'other', grams: 2400, kilocaloriesPer100Grams: 300 }),
    ];
    const coverage = coverageOf({ stock, targetGroups: ['grains', 'other'] });
    expect(groupOf(coverage, 'other')).toMatchObject({
      isTargeted: false,
      days: 'no-end',
      wholeDays: null,
      gapGrams: 0,
    });
    expect(coverage.byMass.limitingGroup).toBe('grains');
    expect(coverage.byEnergy.kilocalories).toEqual(fraction(36_500 + 7200));
  });

  test('needs what the published guideline says when none is given: 400 lb of grain a year', () => {
    const coverage = householdCoverage({ eaters: [anEater({})], stock: [], today: TODAY, targetDays: 365 });
    // 400 × 453.59237 = 181,436.948 g, and the gap is rounded up to whole grams.
    expect(groupOf(coverage, 'grains').gapGrams).toBe(181_437);
    expect(coverage.groups.map(({ group }) => group)).toEqual([
      'grains',
      'legumes',
      'dried-milk',
      'fats',
      'sugars',
      'salt',
    ]);
  });

  test('edits the guideline: 300 lb of grain alone', () => {
    const guideline = [guidelineRow({ group: 'grains', pounds: 300, source: 'typed in by the household' })];
    const coverage = householdCoverage({
      eaters: [anEater({})],
      stock: [],
      today: TODAY,
      targetDays: 365,
      guideline,
    });
    expect(groupOf(coverage, 'grains').gapGrams).toBe(136_078); // 136,077.711 g
  });
});

describe('a household with an eater who may not have wheat', () => {
  const eaters = [anEater({}), anEater({ eaterId: 'Cy', excludedAllergens: ['wheat'] })];
  const stock = [aLot({ ...wheat, lotId: 'wheat', grams: 60_000 }), aLot({ lotId: 'rice', grams: 10_000 })];
  const coverage = coverageOf({ eaters, stock, targetGroups: ['grains'] });

  test('lasts as long as the rice that only that eater gets: 10,000 / 500 = 20 days, not 70', () => {
    expect(groupOf(coverage, 'grains')).toMatchObject({
      days: fraction(20),
      naiveDays: fraction(70),
      limitingEaterIds: ['Cy'],
      endsByEater: [
        { eaterId: 'Ana', days: fraction(120) },
        { eaterId: 'Cy', days: fraction(20) },
      ],
    });
  });

  test('lacks what that eater lacks: 80 days of 500 g to day 100', () => {
    expect(groupOf(coverage, 'grains')).toMatchObject({
      gapGrams: 40_000,
      stockGrams: 70_000,
      nobodyMayEatGrams: 0,
    });
  });

  test('keeps the diet in energy too', () => {
    expect(coverage.byEnergy).toMatchObject({ days: fraction(36_500, 2400), limitingEaterIds: ['Cy'] });
  });

  test('alone can eat none of the wheat, and is told so', () => {
    const alone = coverageOf({ eaters: eaters.slice(1), stock, targetGroups: ['grains'] });
    expect(groupOf(alone, 'grains')).toMatchObject({
      days: fraction(20),
      nobodyMayEatGrams: 60_000,
      stockGrams: 70_000,
    });
    expect(alone.byEnergy.kilocalories).toEqual(fraction(36_500));
  });
});

describe('stock that ends', () => {
  test('counts only while it may be eaten: 100 days of oats that end in 30 feed for 30', () => {
    const coverage = coverageOf({ stock: [aLot({ lotId: 'oats', grams: 50_000, daysLeft: 30 })] });
    expect(groupOf(coverage, 'grains')).toMatchObject({
      days: fraction(30),
      atRisk: [{ lotId: 'oats', amount: fraction(35_000) }],
    });
  });

  test('counts for nothing past its last day', () => {
    const coverage = coverageOf({ stock: [aLot({ daysLeft: 0 }), aLot({ lotId: 'older', daysLeft: -5 })] });
    expect(groupOf(coverage, 'grains')).toMatchObject({ days: fraction(0), stockGrams: 0 });
    expect(coverage.byEnergy).toMatchObject({ wholeDays: 0, kilocalories: fraction(0) });
  });
});

describe('a household without eaters', () => {
  test('needs nothing, says that it has no eaters, and has no days', () => {
    expect(coverageOf({ eaters: [], stock: [aLot({})] })).toMatchObject({
      state: 'no-eaters',
      adultEquivalents: fraction(0),
      byMass: { days: 'no-end', wholeDays: null, limitingGroup: null, secondGroup: null },
      byEnergy: { days: 'no-end', wholeDays: null, kilocaloriesPerDay: fraction(0) },
      wholeDays: null,
      shorterMeasure: null,
      runsOutFirst: null,
    });
  });
});

test('an infant whose need is not known is counted by mass and not by energy, and the note says so', () => {
  const coverage = coverageOf({ eaters: [anEater({ birthOn: '2026-03-01' })], stock: [aLot({})] });
  expect(coverage.eaters[0]).toMatchObject({ adultEquivalents: fraction(1, 2), basis: 'unknown-under-2' });
  expect(coverage.eaters[0]?.note).toContain('counted as 0');
  expect(coverage.byEnergy.days).toBe('no-end');
});

describe('whatever is in the house', () => {
  const someEaters = fc
    .array(
      fc.record({
        birthOn: fc.integer({ min: 1930, max: 2026 }).map(String),
        excludedAllergens: fc.subarray(['wheat', 'milk']),
        avoidsGluten: fc.boolean(),
        presentPercent: fc.integer({ min: 0, max: 100 }),
      }),
      { minLength: 1, maxLength: 5 },
    )
    .map((eaters) => eaters.map((facts, place) => anEater({ ...facts, eaterId: `eater ${place}` })));
  const someStock = fc
    .array(
      fc.record({
        group: fc.constantFrom('grains', 'salt', 'other'),
        grams: fc.integer({ min: 0, max: 50_000 }),
        daysLeft: fc.option(fc.integer({ min: -3, max: 500 })),
        allergens: fc.subarray(['wheat', 'milk']),
        gluten: fc.constantFrom('yes', 'no', 'cross-contact'),
      }),
      { maxLength: 8 },
    )
    .map((lots) =>
      lots.map((facts, place) => aLot({ ...(facts as Partial<StockLot>), lotId: `lot ${place}` })),
    );
  const endOf = (days: Fraction | 'no-end'): Fraction => (days === 'no-end' ? fraction(1_000_000_000) : days);

  test('lifting every exclusion shortens neither measure, and one more eater lengthens neither', () => {
    fc.assert(
      fc.property(someEaters, someStock, (eaters, stock) => {
        const now = coverageOf({ eaters, stock });
        const free = coverageOf({
          eaters: eaters.map((eater) => ({ ...eater, excludedAllergens: [], avoidsGluten: false })),
          stock,
        });
        const more = coverageOf({ eaters: [...eaters, anEater({ eaterId: 'guest' })], stock });
        for (const measure of ['byMass', 'byEnergy'] as const) {
          expect(compareFractions(endOf(now[measure].days), endOf(free[measure].days))).toBeLessThanOrEqual(
            0,
          );
          expect(compareFractions(endOf(more[measure].days), endOf(now[measure].days))).toBeLessThanOrEqual(
            0,
          );
        }
      }),
      { numRuns: 50 },
    );
  });

  test('the packs that close a gap, put into the house, give exactly the days they promise', () => {
    const packs = (['grains', 'salt'] as const).map((group) => {
      return { packId: group, group, grams: 700, minorUnits: group === 'salt' ? 90 : 250, mostPacks: null };
    });
    const budget = fc.integer({ min: 0, max: 60_000 });
    fc.assert(
      fc.property(someEaters, someStock, budget, (eaters, stock, budgetMinorUnits) => {
        const groups = coverageOf({ eaters, stock }).groups.filter(({ isTargeted }) => isTargeted);
        const offered = packs.filter(({ group }) => groups.some((each) => each.group === group));
        const closing = closeGapWhole({ groups, packs: offered, budgetMinorUnits, targetDays: 100 });
        const bought = closing.packs.map(({ packId, count }) => {
          return aLot({
            lotId: `bought ${packId}`,
            group: packId === 'salt' ? 'salt' : 'grains',
            grams: 700 * count,
          });
        });
        const { days } = coverageOf({ eaters, stock: [...stock, ...bought] }).byMass;
        const target = fraction(100);
        const upToTarget = compareFractions(endOf(days), target) < 0 ? endOf(days) : target;
        expect(closing.days).toEqual(upToTarget);
      }),
      { numRuns: 60 },
    );
  });

  test('the days of the household are the shortest of its groups', () => {
    fc.assert(
      fc.property(someEaters, someStock, (eaters, stock) => {
        const coverage = coverageOf({ eaters, stock });
        for (const { isTargeted, days } of coverage.groups) {
          if (isTargeted)
            expect(compareFractions(endOf(coverage.byMass.days), endOf(days))).toBeLessThanOrEqual(0);
        }
        const { limitingGroup } = coverage.byMass;
        if (limitingGroup) expect(groupOf(coverage, limitingGroup).days).toEqual(coverage.byMass.days);
      }),
      { numRuns: 50 },
    );
  });
});

test('twelve eaters of mixed diets and two hundred lots have every group and the energy answered', () => {
  const groups = ['grains', 'legumes', 'dried-milk', 'fats', 'sugars', 'salt'] as const;
  const eaters = Array.from({ length: 12 }, (_, place) =>
    anEater({
      eaterId: `eater ${place}`,
      birthOn: String(1950 + place * 6),
      excludedAllergens: place % 4 === 1 ? ['wheat'] : place % 4 === 2 ? ['milk'] : [],
      avoidsGluten: place % 5 === 4,
    }),
  );
  const stock = Array.from({ length: 200 }, (_, place) =>
    aLot({
      lotId: `lot ${place}`,
      group: groups[place % 6] ?? 'grains',
      grams: 4000 + ((place * 7919) % 20_000),
      daysLeft: 30 + ((place * 37) % 700),
      allergens: place % 3 === 0 ? ['wheat'] : place % 3 === 1 ? ['milk'] : [],
      gluten: place % 3 === 0 ? 'yes' : 'no',
    }),
  );
  const { groups: covered, byEnergy } = coverageOf({ eaters, stock, targetDays: 365 });
  const counted = covered.reduce((grams, group) => grams + group.stockGrams, 0);
  expect(counted).toBe(stock.reduce((grams, lot) => grams + lot.grams, 0));
  expect(byEnergy.wholeDays).toBeGreaterThan(0);
});

test('a lot of broken grams or a target of half a day is refused', () => {
  expect(() => coverageOf({ stock: [aLot({ grams: 1.5 })] })).toThrow('grams');
  expect(() => coverageOf({ targetDays: 0.5 })).toThrow('targetDays');
});

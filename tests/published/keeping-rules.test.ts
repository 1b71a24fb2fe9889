import { CONTAINER_KINDS, KEEPING_CLASSES, REFERENCE_FOODS } from '@sheafbook/foods';
import {
  CAUTION_CODES,
  CONTAINER_TRAITS,
  cautionOf,
  eatInOrder,
  FINDINGS,
  findContainerTraits,
  historyOf,
  isInsectDamaged,
  judgeFromBags,
  judgeInspection,
  judgeTreatment,
  lifeBandOf,
  NOT_TO_DO,
  type PackPlan,
  paceThatEatsAll,
  planRotation,
  rotationQueue,
  sampleOf,
  sumRisk,
  TREATMENT_CODES,
  TREATMENTS,
  treatmentOf,
} from '@sheafbook/keeping';
import { sumOf } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const wheatInCans: PackPlan = {
  keepingClass: 'whole-grain-hard',
  needsMoistureTest: true,
  moisturePercent: 9.5,
  barrier: 'metal',
  grams: 2_500,
};

describe('which treatment suits', () => {
  test.for([
    { code: 'oxygen-absorber', plan: {}, verdict: 'fits', misfits: [], nearest: null },
    // A published pail leaflet: never dry ice in a metal container of any size.
    {
      code: 'dry-ice',
      plan: {},
      verdict: 'refused',
      misfits: ['dry-ice-in-metal'],
      nearest: 'oxygen-absorber',
    },
    // Absorbers do not help in plastic that leaks: in pails only with a sealed foil liner.
    {
      code: 'oxygen-absorber',
      plan: { barrier: 'bare-plastic' },
      verdict: 'refused',
      misfits: ['barrier-leaks'],
      nearest: 'dry-ice',
    },
    {
      code: 'oxygen-absorber',
      plan: { keepingClass: 'sugar', needsMoistureTest: false },
      verdict: 'refused',
      misfits: ['sets-hard'],
      nearest: 'none',
    },
    // Whatever else is done to it gains nothing, and honey holds 17.1 % water (FoodData Central 19296).
    {
      code: 'nitrogen-flush',
      plan: { keepingClass: 'sugar', needsMoistureTest: false },
      verdict: 'refused',
      misfits: ['gains-nothing'],
      nearest: 'none',
    },
    {
      code: 'oxygen-absorber',
      plan: { keepingClass: 'honey', needsMoistureTest: false, moisturePercent: null },
      verdict: 'refused',
      misfits: ['gains-nothing'],
      nearest: 'none',
    },
    { code: 'none', plan: { keepingClass: 'honey' }, verdict: 'fits', misfits: [], nearest: null },
    // A published list of foods not fit for oxygen-free packs; over 10 % moisture can grow botulism.
    {
      code: 'oxygen-absorber',
      plan: { keepingClass: 'brown-rice' },
      verdict: 'refused',
      misfits: ['fat-or-meal-without-oxygen'],
      nearest: 'freeze-thaw-freeze',
    },
    {
      code: 'oxygen-absorber',
      plan: { keepingClass: 'white-flour' },
      verdict: 'refused',
      misfits: ['fat-or-meal-without-oxygen'],
      nearest: 'freeze-thaw-freeze',
    },
    {
      code: 'oxygen-absorber',
      plan: { moisturePercent: 14 },
      verdict: 'refused',
      misfits: ['too-moist-without-oxygen'],
      nearest: 'freeze-thaw-freeze',
    },
    {
      code: 'nitrogen-flush',
      plan: { moisturePercent: null },
      verdict: 'refused',
      misfits: ['moisture-unknown'],
      nearest: 'freeze-thaw-freeze',
    },
    {
      code: 'vacuum',
      plan: { barrier: 'glass', grams: 1_500 },
      verdict: 'warned',
      misfits: ['more-than-it-treats'],
      nearest: 'oxygen-absorber',
    },
    {
      code: 'food-grade-earth',
      plan: {},
      verdict: 'warned',
      misfits: ['not-recommended'],
      nearest: 'oxygen-absorber',
    },
  ] as const)('$code with $plan: $verdict', ({ code, plan, ...fit }) => {
    expect(judgeTreatment(code, { ...wheatInCans, ...plan })).toEqual(fit);
  });

  test('10.0 % is dry enough, 10.1 % is not', () => {
    const verdictAt = (moisturePercent: number) =>
      judgeTreatment('oxygen-absorber', { ...wheatInCans, moisturePercent }).verdict;
    expect(verdictAt(10)).toBe('fits');
    expect(verdictAt(10.1)).toBe('refused');
  });

  // SR28: soybeans are 19.9 % fat, rolled oats 6.5 %, chickpeas 6.0 %; nuts stand on the published list of what is not fit.
  test('soybeans and peanuts are too fatty for a pack without oxygen; other legumes and oats are not', () => {
    const verdictOf = (keepingClass: PackPlan['keepingClass']) =>
      judgeTreatment('oxygen-absorber', { ...wheatInCans, keepingClass });
    expect(verdictOf('oily-legume')).toEqual({
      verdict: 'refused',
      misfits: ['fat-or-meal-without-oxygen'],
      nearest: 'freeze-thaw-freeze',
    });
    expect(REFERENCE_FOODS.find(({ foodCode }) => foodCode === 'soybeans')?.keepingClass).toBe('oily-legume');
    expect(verdictOf('dry-legume').verdict).toBe('fits');
    expect(verdictOf('rolled-oats').verdict).toBe('fits');
  });

  test.for([
    { bags: [9.5], verdict: 'fits', misfits: [] },
    { bags: [null], verdict: 'warned', misfits: ['moisture-unknown'] },
    { bags: [], verdict: 'warned', misfits: ['moisture-unknown'] },
    { bags: [10.1], verdict: 'refused', misfits: ['too-moist-without-oxygen'] },
    { bags: [9.5, 10.1], verdict: 'warned', misfits: ['too-moist-without-oxygen'] },
    { bags: [null, 10.1], verdict: 'warned', misfits: ['moisture-unknown', 'too-moist-without-oxygen'] },
  ] as const)('bags at $bags % for an absorber: $verdict', ({ bags, verdict, misfits }) => {
    expect(judgeFromBags('oxygen-absorber', wheatInCans, bags)).toMatchObject({ verdict, misfits });
    expect(judgeFromBags('none', wheatInCans, bags).verdict).toBe('fits');
    expect(judgeFromBags('dry-ice', wheatInCans, bags).verdict).toBe('refused');
  });

  test('no treatment at all is never refused, and no moist food is ever let into a pack without oxygen', () => {
    const anyPlan = fc.record({
      keepingClass: fc.constantFrom(...KEEPING_CLASSES),
      needsMoistureTest: fc.constant(true),
      moisturePercent: fc.double({ min: 0, max: 30, noNaN: true }),
      barrier: fc.constantFrom(...CONTAINER_TRAITS.map(({ barrier }) => barrier)),
      grams: fc.nat(20_000),
    });
    fc.assert(
      fc.property(anyPlan, fc.constantFrom(...TREATMENT_CODES), (plan, code) => {
        expect(judgeTreatment('none', plan).verdict).toBe('fits');
        const { verdict, nearest } = judgeTreatment(code, plan);
        if (nearest !== null) expect(judgeTreatment(nearest, plan).verdict).toBe('fits');
        if (plan.moisturePercent > 10 && treatmentOf(code).isOxygenFree) expect(verdict).toBe('refused');
      }),
    );
  });
});

test('every kind, treatment and caution has its row, its words and its source', () => {
  expect(CONTAINER_KINDS.filter(({ kindCode }) => !findContainerTraits(kindCode))).toEqual([]);
  expect(TREATMENTS.map(({ code }) => code)).toEqual([...TREATMENT_CODES]);
  expect(CAUTION_CODES.map((code) => cautionOf(code).code)).toEqual([...CAUTION_CODES]);
  expect([...TREATMENTS, ...NOT_TO_DO, ...CONTAINER_TRAITS].filter(({ source }) => source === '')).toEqual(
    [],
  );
});

test('where work can hurt someone, its treatment carries the caution', () => {
  expect(treatmentOf('dry-ice').cautions).toEqual(['dry-ice', 'carbon-dioxide', 'oxygen-free-moist']);
  expect(treatmentOf('food-grade-earth').cautions).toContain('filter-earth');
  const withoutOxygen = TREATMENTS.filter(({ isOxygenFree }) => isOxygenFree);
  expect(withoutOxygen.filter(({ cautions }) => !cautions.includes('oxygen-free-moist'))).toEqual([]);
});

test('the weakest link is named', () => {
  expect(lifeBandOf('brown-rice', 'can-oxygen-free')).toMatchObject({ likely: 0.5, weakestLink: 'food' });
  expect(lifeBandOf('whole-grain-hard', 'bare-pail')).toMatchObject({ likely: 3, weakestLink: 'pack' });
});

describe('the record of a place', () => {
  const readings = [
    { readOn: '2026-03-01', tenthsCelsius: 120 },
    { readOn: '2026-06-01', tenthsCelsius: 240 },
  ];
  test('a reading holds a month, a gap takes the warmer neighbour', () => {
    expect(historyOf(readings, '2026-02-01', '2026-06-11')).toEqual([
      { days: 28, tenthsCelsius: 120, known: 'gap' },
      { days: 31, tenthsCelsius: 120, known: 'read' },
      { days: 61, tenthsCelsius: 240, known: 'gap' },
      { days: 10, tenthsCelsius: 240, known: 'read' },
    ]);
  });
  test('a place that nobody read is taken as 25 °C', () => {
    expect(historyOf([], '2026-01-01', '2026-01-11')).toEqual([
      { days: 10, tenthsCelsius: 250, known: 'unknown' },
    ]);
  });
  test('the stretches are all the days, whatever the readings', () => {
    const days = fc.uniqueArray(fc.integer({ min: 0, max: 800 }), { maxLength: 8 });
    const dayOf = (offset: number) => new Date(Date.UTC(2025, 0, 1 + offset)).toISOString().slice(0, 10);
    fc.assert(
      fc.property(days, fc.nat(400), fc.nat(400), (offsets, start, length) => {
        const read = offsets.map((offset) => ({ readOn: dayOf(offset), tenthsCelsius: offset % 300 }));
        const history = historyOf(read, dayOf(start), dayOf(start + length));
        expect(sumOf(history.map((part) => part.days))).toBe(length);
      }),
    );
  });
});

// Job map 10.4, 300 g a day.
describe('eating in order', () => {
  const lots = [
    { code: 'W2', grams: 20_000, daysLeft: 120 },
    { code: 'W1', grams: 40_000, daysLeft: 51 },
    { code: 'W3', grams: 50_000, daysLeft: 400 },
  ];
  test('what ends first is eaten first, and what is too much is at risk', () => {
    expect(eatInOrder(lots, 300)).toEqual([
      { code: 'W1', eatenGrams: 15_300, atRiskGrams: 24_700 },
      { code: 'W2', eatenGrams: 20_000, atRiskGrams: 0 },
      { code: 'W3', eatenGrams: 50_000, atRiskGrams: 0 },
    ]);
  });
  test.for([
    { grams: 18_000, daysLeft: 56, pace: 120, risk: 11_280 },
    { grams: 10_000, daysLeft: 96, pace: 80, risk: 2_320 },
  ])('$grams g at $pace g a day leave $risk', ({ grams, daysLeft, pace, risk }) => {
    expect(eatInOrder([{ code: 'a', grams, daysLeft }], pace)[0]?.atRiskGrams).toBe(risk);
  });
  test('without a pace all is at risk', () => {
    expect(sumOf(eatInOrder(lots, 0).map(({ atRiskGrams }) => atRiskGrams))).toBe(110_000);
  });
  test('at the pace that eats all nothing is lost, and a gram a day less loses some', () => {
    const someLots = fc.array(
      fc.record({
        code: fc.uuid(),
        grams: fc.integer({ min: 1, max: 90_000 }),
        daysLeft: fc.integer({ min: 1, max: 900 }),
      }),
      { minLength: 1, maxLength: 6 },
    );
    fc.assert(
      fc.property(someLots, (some) => {
        const pace = paceThatEatsAll(some) ?? 0;
        const atRisk = (gramsPerDay: number) =>
          sumOf(eatInOrder(some, gramsPerDay).map((lot) => lot.atRiskGrams));
        expect(atRisk(pace)).toBeLessThanOrEqual(some.length); // a gram a lot may fall to rounding down
        if (pace > 1) expect(atRisk(pace - 1)).toBeGreaterThan(0);
      }),
    );
    expect(paceThatEatsAll(lots)).toBe(785); // 40,000 / 51
  });
  test('no other order eats more in time', () => {
    // A second opinion: every order of up to five lots, eaten one after the other.
    const eatenIn = (order: readonly { grams: number; daysLeft: number }[], gramsPerDay: number): number => {
      let day = 0;
      let eaten = 0;
      for (const { grams, daysLeft } of order) {
        const inTime = Math.min(grams, Math.max(0, daysLeft - day) * gramsPerDay);
        day += inTime / gramsPerDay;
        eaten += inTime;
      }
      return eaten;
    };
    const ordersOf = <Lot>(rest: readonly Lot[]): Lot[][] =>
      rest.length === 0
        ? [[]]
        : rest.flatMap((first) =>
            ordersOf(rest.filter((lot) => lot !== first)).map((more) => [first, ...more]),
          );
    const someLots = fc.array(
      fc.record({ grams: fc.integer({ min: 1, max: 40 }), daysLeft: fc.integer({ min: 0, max: 20 }) }),
      { minLength: 1, maxLength: 5 },
    );
    fc.assert(
      fc.property(someLots, fc.integer({ min: 1, max: 9 }), (rows, gramsPerDay) => {
        const some = rows.map((row, position) => ({ ...row, code: `C${position}` }));
        const best = Math.max(...ordersOf(some).map((order) => eatenIn(order, gramsPerDay)));
        const eaten = sumOf(eatInOrder(some, gramsPerDay).map((lot) => lot.eatenGrams));
        expect(eaten).toBeLessThanOrEqual(best + 1e-9);
        expect(eaten).toBeGreaterThan(best - some.length); // a gram a lot may fall to rounding down
      }),
    );
  });
  test('the grams at risk stand in the month in which they end', () => {
    const wheat = lots.map((lot) => ({ ...lot, foodCode: 'wheat', placeKey: '' }));
    const outcomes = planRotation(wheat, { pace: new Map([['wheat', 300]]), todayOn: '2026-11-28' });
    expect(sumRisk(outcomes, 'month')).toMatchObject([{ key: '2027-01', atRiskGrams: 24_700 }]);
  });
  test('what is open comes first, an allergic eater’s only stock after what is alike, a hold never', () => {
    const item = { isOnHold: false, isOpen: false, daysLeft: 90, atRiskGrams: 0, isAnEatersOnlyStock: false };
    const queue = rotationQueue([
      { ...item, code: 'A', isAnEatersOnlyStock: true },
      { ...item, code: 'B' },
      { ...item, code: 'C', daysLeft: 400, isOpen: true },
      { ...item, code: 'D', isOnHold: true },
      { ...item, code: 'E', daysLeft: 30 },
    ]);
    expect(queue.map(({ code }) => code)).toEqual(['C', 'E', 'B', 'A']);
  });
});

describe('an inspection', () => {
  test.for([
    { findings: ['nothing-wrong'], best: 'table', holds: false },
    { findings: ['surface-rust', 'dark-colour'], best: 'table', holds: false },
    { findings: ['loose-seal'], best: 'kitchen-soon', holds: false },
    { findings: ['live-insects', 'surface-rust'], best: 'freeze-and-repack', holds: false },
    { findings: ['rancid-smell'], best: 'animals', holds: false },
    { findings: ['bulge-hiss-spurt'], best: 'discard', holds: true },
  ] as const)('$findings: $best', ({ findings, best, holds }) => {
    expect(judgeInspection(findings)).toMatchObject({ best, holds });
  });
  test('mould, bulges, rodents and chemicals leave nothing but discarding, whatever else was found', () => {
    const bad = ['mould', 'bulge-hiss-spurt', 'rodent-marks', 'chemical-smell', 'wet-or-caked'] as const;
    fc.assert(
      fc.property(fc.constantFrom(...bad), fc.subarray([...FINDINGS]), (finding, others) => {
        expect(judgeInspection([...others, finding]).allowed).toEqual(['discard']);
      }),
    );
  });
  test('without a finding nothing goes to the table', () => {
    expect(judgeInspection([]).best).toBe('discard');
  });
  test('a sample is the root of the lot', () => {
    expect([0, 1, 10, 100].map(sampleOf)).toEqual([0, 1, 4, 10]);
  });
  // 7 CFR 810.2204 and FDA CPG 578.300: 32 damaged kernels in 100 g.
  test.for([
    [64, 200, true],
    [63, 200, true],
    [62, 200, false],
    [31, 100, false],
    [32, 100, true],
  ] as const)('%d damaged kernels in %d g fail: %s', ([kernels, grams, fails]) => {
    expect(isInsectDamaged(kernels, grams)).toBe(fails);
  });
});

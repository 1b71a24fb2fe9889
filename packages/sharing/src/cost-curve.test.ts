import fc from 'fast-check';
import { expect, test } from 'vitest';
import { costCurve } from './cost-curve.ts';
import { anOffer } from './fill-builders.ts';

// 50 lb bags; all units: 1–9 at 27.00, 10–19 at 25.50, from 20 on 24.00; freight 95.00, free from goods of
// 600.00. Each row is that arithmetic: 18 × 25.50 = 459.00, + 95.00 = 554.00, / 18 = 30.78.
const offer = anOffer({
  breaks: [
    { fromBags: 1, bagPriceMinorUnits: 2700 },
    { fromBags: 10, bagPriceMinorUnits: 2550 },
    { fromBags: 20, bagPriceMinorUnits: 2400 },
  ],
});
const freight = { steps: [{ fromGrams: 0, minorUnits: 9500 }], freeFromGoodsMinorUnits: 60_000 };

test('a cost curve shows the break at 20 bags, free freight at 25, and the dead zones before them', () => {
  const rows = costCurve({ offer, freight, fromBags: 18, toBags: 25 }).map((row) => [
    row.bags,
    row.goodsMinorUnits,
    row.freightMinorUnits,
    row.totalMinorUnits,
    row.perBagMinorUnits,
    [row.isDeadZone && 'dead', row.isBreak && 'break', row.isFreeFrom && 'free freight']
      .filter(Boolean)
      .join(),
  ]);
  expect(rows).toEqual([
    [18, 45_900, 9500, 55_400, 3078, ''],
    [19, 48_450, 9500, 57_950, 3050, 'dead'],
    [20, 48_000, 9500, 57_500, 2875, 'break'],
    [21, 50_400, 9500, 59_900, 2852, ''],
    [22, 52_800, 9500, 62_300, 2832, 'dead'],
    [23, 55_200, 9500, 64_700, 2813, 'dead'],
    [24, 57_600, 9500, 67_100, 2796, 'dead'],
    [25, 60_000, 0, 60_000, 2400, 'free freight'],
  ]);
});

test('a dead zone reaches only as far as the supplier has bags', () => {
  const [row] = costCurve({ offer: { ...offer, mostBags: 24 }, freight, fromBags: 22, toBags: 22 });
  expect(row?.isDeadZone).toBe(false);
});

// With 300.00 of oats in the same order, 13 bags (331.50) already make 631.50: free freight. At 11 (280.50)
// freight of 95.00 falls by weight on 11 of 22 bags: (280.50 + 47.50) / 11 = 29.8182.
test('what else is ordered moves free freight and bears its share', () => {
  const others = { goodsMinorUnits: 30_000, grams: 11 * 22_680 };
  const rows = costCurve({ offer, freight, others, fromBags: 11, toBags: 13 });
  expect(rows.map((row) => row.freightMinorUnits)).toEqual([9500, 0, 0]);
  expect(rows[0]?.perBagMinorUnits).toBe(2982);
  expect(rows[0]?.totalMinorUnits).toBe(28_050 + 9500);
  expect(rows[1]).toMatchObject({ bags: 12, isFreeFrom: true, perBagMinorUnits: 2550 });
});

const someTerms = fc
  .record({
    prices: fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 3 }),
    gaps: fc.array(fc.integer({ min: 1, max: 8 }), { minLength: 3, maxLength: 3 }),
    breakKind: fc.constantFrom('all-units' as const, 'incremental' as const),
    mostBags: fc.option(fc.integer({ min: 10, max: 30 })),
    free: fc.option(fc.integer({ min: 0, max: 600 })),
    heavy: fc.integer({ min: 0, max: 120 }),
  })
  .map(({ prices, gaps, breakKind, mostBags, free, heavy }) => ({
    offer: anOffer({
      bagGrams: 1000,
      breakKind,
      mostBags,
      breaks: prices.map((bagPriceMinorUnits, i) => {
        return { fromBags: 1 + gaps.slice(0, i).reduce((sum, gap) => sum + gap, 0), bagPriceMinorUnits };
      }),
    }),
    freight: {
      steps: [
        { fromGrams: 0, minorUnits: 50 },
        { fromGrams: 9000, minorUnits: heavy },
      ],
      freeFromGoodsMinorUnits: free,
    },
  }));

// Any cheaper larger order stands within 700 bags here: prices are 0 or at least 1, and goods of 600 are
// free.
test('a dead zone is one where trying every larger order finds one that costs no more', () => {
  const property = fc.property(someTerms, (terms) => {
    const all = costCurve({ ...terms, fromBags: 1, toBags: terms.offer.mostBags ?? 700 });
    for (const row of all.slice(0, 30)) {
      const isDead = all.slice(row.bags).some((larger) => larger.totalMinorUnits <= row.totalMinorUnits);
      expect({ bags: row.bags, isDeadZone: row.isDeadZone }).toEqual({ bags: row.bags, isDeadZone: isDead });
    }
  });
  fc.assert(property, { seed: 20_260_731, numRuns: 60 });
});

test.for([
  { fromBags: 0, toBags: 3, message: /begins at one bag/ },
  { fromBags: 4, toBags: 3, message: /needs a range/ },
  { fromBags: 1.5, toBags: 3, message: /fromBags must be a whole number/ },
])('a range from $fromBags to $toBags is stopped', ({ fromBags, toBags, message }) => {
  expect(() => costCurve({ offer, freight, fromBags, toBags })).toThrow(message);
});

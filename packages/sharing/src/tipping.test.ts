import { fraction } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { costCurve } from './cost-curve.ts';
import { anOffer } from './fill-builders.ts';
import { findTip, shareSaving } from './tipping.ts';

// The price list of the cost curve: 27.00, from 10 bags 25.50, from 20 bags 24.00; freight 95.00, free from
// 600.00.
const offer = anOffer({
  breaks: [
    { fromBags: 1, bagPriceMinorUnits: 2700 },
    { fromBags: 10, bagPriceMinorUnits: 2550 },
    { fromBags: 20, bagPriceMinorUnits: 2400 },
  ],
});
const freight = { steps: [{ fromGrams: 0, minorUnits: 9500 }], freeFromGoodsMinorUnits: 60_000 };
const tipAt = (committedBags: number) => findTip({ offer, freight, committedBags, upToBags: 40 });

describe('at 18 bags for 554.00', () => {
  // 20 bags cost 575.00: 21.00 more, 10.50 a bag; those in pay 28.75 instead of 30.7778: 554.00 − 18 × 28.75
  // = 36.50.
  test('two more bags reach the price break', () => {
    expect(tipAt(18).tip).toEqual({
      extraBags: 2,
      bags: 20,
      reachesBreak: true,
      reachesFreeFreight: false,
      extraCostMinorUnits: 2100,
      extraPerBag: fraction(1050),
      saved: fraction(3650),
      savedMinorUnits: 3650,
    });
  });
  // 25 bags cost 600.00: 46.00 more, 46.00 / 7 a bag; those in save 554.00 − 18 × 24.00 = 122.00.
  test('seven more reach free freight and save those in 122.00', () => {
    expect(tipAt(18).tips.at(-1)).toMatchObject({
      extraBags: 7,
      reachesFreeFreight: true,
      extraCostMinorUnits: 4600,
      extraPerBag: fraction(4600, 7),
      savedMinorUnits: 12_200,
    });
    expect(tipAt(18).tips.map((tip) => tip.extraBags)).toEqual([2, 7]);
  });
  test('no larger order is free', () => expect(tipAt(18).freeTip).toBeNull());

  // 122.00 over 10, 5 and 3 bags: 67.78, 33.89, 20.33; exactly 6777.78, 3388.89, 2033.33, so both spare cents
  // go to the larger fractions.
  test('the saving is shared by mass, to the cent', () => {
    const best = tipAt(18).tips.at(-1);
    const households = [10, 5, 3].map((bags, i) => ({ ownerId: `h${i}`, grams: bags * 22_680 }));
    const shares = best && shareSaving(best, households).map((share) => share.minorUnits);
    expect(shares).toEqual([6778, 3389, 2033]);
  });
});

test('at 21 bags four more cost 1.00 in all', () => {
  expect(tipAt(21).tip).toMatchObject({ extraBags: 4, extraCostMinorUnits: 100 });
});
test.for([
  { committed: 22, lower: 2300 },
  { committed: 23, lower: 4700 },
  { committed: 24, lower: 7100 },
])('at $committed bags ordering 25 lowers the bill by $lower', ({ committed, lower }) => {
  expect(tipAt(committed).freeTip).toMatchObject({ bags: 25, extraCostMinorUnits: -lower });
});
test('at 19 bags one more is a tip and free as well', () => {
  expect(tipAt(19).tip).toEqual(tipAt(19).freeTip);
  expect(tipAt(19).tip).toMatchObject({ extraBags: 1, extraCostMinorUnits: -450 });
});
test('beyond the last break nothing tips, and not beyond what the supplier has', () => {
  expect(tipAt(25)).toEqual({ tip: null, freeTip: null, tips: [] });
  const few = findTip({ offer: { ...offer, mostBags: 19 }, freight, committedBags: 18, upToBags: 40 });
  expect(few).toEqual({ tip: null, freeTip: null, tips: [] });
});

// Bags of oats for 300.00 in the same order: 11 of the 22 bags carry 47.50 of freight. 12 bags make 606.00:
// free. Those in pay 25.50 a bag instead of (280.50 + 47.50) / 11: they save 328.00 − 280.50 = 47.50.
test('what else is ordered brings free freight nearer', () => {
  const others = { goodsMinorUnits: 30_000, grams: 11 * 22_680 };
  const { tip } = findTip({ offer, freight, others, committedBags: 11, upToBags: 15 });
  expect(tip).toMatchObject({ extraBags: 1, extraCostMinorUnits: 2550 - 9500, savedMinorUnits: 4750 });
});

test('a tip is the fewest extra bags with a jump on the way and a lower cost per bag', () => {
  const someOrder = fc.record({
    committedBags: fc.integer({ min: 1, max: 20 }),
    prices: fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 })),
    from: fc.integer({ min: 2, max: 25 }),
    free: fc.option(fc.integer({ min: 1, max: 600 })),
    breakKind: fc.constantFrom('all-units' as const, 'incremental' as const),
  });
  const property = fc.property(someOrder, ({ committedBags, prices, from, free, breakKind }) => {
    const breaks = [
      { fromBags: 1, bagPriceMinorUnits: prices[0] },
      { fromBags: from, bagPriceMinorUnits: prices[1] },
    ];
    const terms = {
      offer: anOffer({ breakKind, breaks }),
      freight: { steps: [{ fromGrams: 0, minorUnits: 95 }], freeFromGoodsMinorUnits: free },
    };
    const rows = costCurve({ ...terms, fromBags: committedBags, toBags: 40 });
    const now = rows[0]?.totalMinorUnits ?? 0;
    const extra = rows.findIndex((row, e) => {
      const hasJump = rows.slice(1, e + 1).some((on) => on.isBreak || on.isFreeFrom);
      return hasJump && row.totalMinorUnits * committedBags < now * row.bags;
    });
    const { tip } = findTip({ ...terms, committedBags, upToBags: 40 });
    expect(tip?.extraBags ?? -1).toBe(extra);
  });
  fc.assert(property, { seed: 20_260_731, numRuns: 300 });
});

test.for([
  { committedBags: 0, message: /at least one committed bag/ },
  { committedBags: 1.5, message: /committedBags must be a whole number/ },
])('$committedBags committed bags are stopped', ({ committedBags, message }) => {
  expect(() => tipAt(committedBags)).toThrow(message);
});

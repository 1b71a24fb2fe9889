import { expect, test } from 'vitest';
import { pledgeEffect } from './pledge-effect.ts';

const BAG = 22_680; // 50 lb
const priced = (goods: number, freight: number, bags: number) => ({
  landed: { minorUnits: goods + freight, grams: bags * BAG },
  freight: { minorUnits: freight, grams: bags * BAG },
});

// Job map 4.5: 18 bags cost 459.00 and 95.00 of freight; with two more, 20 cost 480.00 and 95.00.
const WHEAT = {
  lineId: 'wheat',
  othersGrams: 18 * BAG,
  withIt: priced(48_000, 9500, 20),
  without: priced(45_900, 9500, 18),
};

test('two bags that reach the break save the others what the job map reckons', () => {
  // 18 bags at 28.75 instead of 554.00: 554.00 − 517.50 = 36.50; of it freight 95.00 − 18 ÷ 20 × 95.00 = 9.50.
  expect(pledgeEffect([WHEAT])).toEqual({
    savedMinorUnits: 3650,
    freightSavedMinorUnits: 950,
    lines: [{ lineId: 'wheat', savedMinorUnits: 3650, isBoughtOnlyWithIt: false }],
  });
});

test('a pledge may also make the others’ food dearer, and that is said as it is', () => {
  const turned = { ...WHEAT, withIt: WHEAT.without, without: WHEAT.withIt };
  expect(pledgeEffect([turned])).toMatchObject({ savedMinorUnits: -3650, freightSavedMinorUnits: -950 });
});

test('a food that only comes together with the pledge counts for nothing and is named', () => {
  const oats = { lineId: 'oats', othersGrams: 1000, withIt: priced(3750, 900, 1), without: null };
  const none = { lineId: 'beans', othersGrams: 0, withIt: null, without: null };
  expect(pledgeEffect([WHEAT, oats, none])).toMatchObject({
    savedMinorUnits: 3650,
    lines: [
      { isBoughtOnlyWithIt: false },
      { lineId: 'oats', savedMinorUnits: 0, isBoughtOnlyWithIt: true },
      { lineId: 'beans', savedMinorUnits: 0, isBoughtOnlyWithIt: false },
    ],
  });
});

test('parts of a cent are added before they are rounded', () => {
  const half = (lineId: string) => ({
    lineId,
    othersGrams: 1,
    withIt: { landed: { minorUnits: 0, grams: 2 }, freight: { minorUnits: 0, grams: 2 } },
    without: { landed: { minorUnits: 1, grams: 2 }, freight: { minorUnits: 0, grams: 2 } },
  });
  // Two halves of a cent are one cent, though each alone is rounded up to one as well.
  expect(pledgeEffect([half('a'), half('b')]).savedMinorUnits).toBe(1);
});

test('masses that are no whole grams are refused', () => {
  expect(() => pledgeEffect([{ ...WHEAT, othersGrams: 0.5 }])).toThrow('othersGrams');
});

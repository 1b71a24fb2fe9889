import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hillMonths, peaksOf, placeLabels } from './hills.ts';

const oats = { nameEn: 'Rolled oats', nameEs: 'Avena' };

test('the axis begins this month, or where something is past its day, and is a year long at the least', () => {
  const months = hillMonths([{ month: '2027-02', atRiskGrams: 900 }], [], '2026-11');
  expect(months.map(({ month }) => month)).toEqual([
    ...['2026-11', '2026-12', '2027-01', '2027-02', '2027-03', '2027-04'],
    ...['2027-05', '2027-06', '2027-07', '2027-08', '2027-09', '2027-10'],
  ]);
  expect(months.map(({ grams }) => grams)).toEqual([0, 0, 0, 900, 0, 0, 0, 0, 0, 0, 0, 0]);
  const longer = hillMonths(
    [{ month: '2026-09', atRiskGrams: 5, foods: [{ food: oats, atRiskGrams: 5 }] }],
    [{ month: '2028-01', atRiskGrams: 7 }],
    '2026-11',
  );
  expect(longer).toHaveLength(17);
  expect(longer[0]).toEqual({ month: '2026-09', grams: 5, otherGrams: 0, foods: [oats] });
  expect(longer.at(-1)).toEqual({ month: '2028-01', grams: 0, otherGrams: 7, foods: [] });
});

test('each hill has one peak, the highest first', () => {
  expect(peaksOf([0, 3, 9, 4, 0, 2, 2, 0])).toEqual([2, 5]);
  expect(peaksOf([8])).toEqual([0]);
  expect(peaksOf([0, 0])).toEqual([]);
});

test('labels never touch and never leave the picture', () => {
  const label = fc.record({
    at: fc.nat(),
    x: fc.integer({ min: 0, max: 600 }),
    width: fc.integer({ min: 10, max: 200 }),
  });
  fc.assert(
    fc.property(fc.array(label, { maxLength: 12 }), (labels) => {
      const placed = placeLabels(labels, 600).toSorted((a, b) => a.x - b.x);
      for (const [at, one] of placed.entries()) {
        expect(one.x - one.width / 2).toBeGreaterThanOrEqual(0);
        expect(one.x + one.width / 2).toBeLessThanOrEqual(600);
        const next = placed[at + 1];
        if (next) expect(next.x - one.x).toBeGreaterThanOrEqual((next.width + one.width) / 2);
      }
      if (labels.length > 0) expect(placed.length).toBeGreaterThan(0);
    }),
  );
});

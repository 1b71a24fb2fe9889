import { expect, test } from 'vitest';
import { curveOf, joinSpans, pricesOf, ticksOf } from './curve.ts';

// Job map 4.5: bags of 50 lb at 27.00, 25.50 from 10, 24.00 from 20; freight 95.00, free from 600.00 of goods.
const MILL = {
  key: 'mill',
  name: 'The mill',
  offer: {
    bagOfferId: 'mill',
    bagSize: 50,
    bagGrams: 22_680,
    breakKind: 'all-units',
    breaks: [
      { fromBags: 1, bagPriceMinorUnits: 2700 },
      { fromBags: 10, bagPriceMinorUnits: 2550 },
      { fromBags: 20, bagPriceMinorUnits: 2400 },
    ],
    mostBags: null,
  },
  freight: { steps: [{ fromGrams: 0, minorUnits: 9500 }], freeFromGoodsMinorUnits: 60_000 },
} as const;
const FLAT = {
  ...MILL,
  key: 'flat',
  name: 'Free delivery',
  offer: { ...MILL.offer, bagOfferId: 'flat', breaks: [{ fromBags: 1, bagPriceMinorUnits: 3120 }] },
  freight: { steps: [], freeFromGoodsMinorUnits: null },
};
const WANTED = { least: 540, wanted: 880, most: 1210 };

test('the dead zones and jumps of the job map stand where its table has them', () => {
  const { deadZones, jumps, span } = curveOf([MILL, FLAT], 'mill', WANTED);
  // 19 bags cost more than 20, and 22 to 24 more than 25, while nine at 27.00 come to less than ten.
  expect(deadZones).toEqual([
    { from: 900, to: 950 },
    { from: 1050, to: 1200 },
  ]);
  expect(jumps.map(({ bags, totalMinorUnits, price }) => [bags, totalMinorUnits, price])).toEqual([
    [10, 35_000, 70],
    [20, 57_500, 57.5],
    [25, 60_000, 48],
  ]);
  // From one and a half bags below the least to a little beyond the last jump.
  expect(span).toEqual({ from: 465, to: 1300 });
});

test('a step of the curve holds for everything that its bags cover', () => {
  const { lines } = curveOf([MILL, FLAT], 'mill', WANTED);
  const mill = lines.find(({ isLead }) => isLead)?.steps ?? [];
  expect(mill[0]).toMatchObject({
    bags: 10,
    fromUnits: 450,
    toUnits: 500,
    totalMinorUnits: 35_000,
    price: 70,
  });
  expect(mill.at(-1)?.toUnits).toBe(1300);
  // 18 bags: (18 × 25.50 + 95.00) / 900 lb = 61.56 cents a pound.
  expect(mill.find(({ bags }) => bags === 18)?.price).toBeCloseTo(61.556, 3);
  const flat = lines.find(({ key }) => key === 'flat')?.steps ?? [];
  expect(new Set(flat.map(({ price }) => price))).toEqual(new Set([62.4]));
});

test('before anybody pledges the picture begins at the first bag and reaches the last jump', () => {
  const none = { least: 0, wanted: 0, most: 0 };
  const { span, lines } = curveOf([MILL], 'mill', none);
  expect(span).toEqual({ from: 0, to: 25 * 50 * 1.08 });
  expect(lines[0]?.steps[0]).toMatchObject({ bags: 1, fromUnits: 0, price: 244 });
  // One bag alone lands at 2.44 a pound; the picture is made for the others.
  expect(pricesOf(curveOf([MILL], 'mill', none)).to).toBeLessThan(120);
});

test('a supplier who has few bags ends the line there', () => {
  const few = { ...MILL, offer: { ...MILL.offer, mostBags: 12 } };
  const { lines, jumps } = curveOf([few], 'mill', { least: 100, wanted: 300, most: 500 });
  expect(lines[0]?.steps.at(-1)?.bags).toBe(11); // 500 lb and a little more are eleven bags
  expect(jumps.map(({ bags }) => bags)).toEqual([10]);
  const gone = { ...few, offer: { ...few.offer, mostBags: 2 } };
  expect(curveOf([gone], 'mill', { least: 400, wanted: 500, most: 500 }).lines[0]?.steps).toEqual([]);
});

test.for([
  { from: 450, to: 1300, ticks: [500, 750, 1000, 1250] },
  { from: 46, to: 75, ticks: [50, 60, 70] },
  { from: 0, to: 10, ticks: [0, 5, 10] },
  { from: 5, to: 5, ticks: [] },
])('ticks from $from to $to are round', ({ from, to, ticks }) => {
  expect(ticksOf({ from, to })).toEqual(ticks);
});

test('spans that touch become one', () => {
  expect(
    joinSpans([
      { from: 0, to: 1 },
      { from: 1, to: 2 },
      { from: 3, to: 4 },
    ]),
  ).toEqual([
    { from: 0, to: 2 },
    { from: 3, to: 4 },
  ]);
});

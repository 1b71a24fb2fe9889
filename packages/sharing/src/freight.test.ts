import { expect, test } from 'vitest';
import { freightMinorUnits, leastFreightMinorUnits } from './freight.ts';

const steps = [
  { fromGrams: 0, minorUnits: 3000 },
  { fromGrams: 100_000, minorUnits: 5500 },
  { fromGrams: 500_000, minorUnits: 9500 },
];
const terms = { steps, freeFromGoodsMinorUnits: 60_000 };

test.for([
  { goods: 10_000, grams: 99_999, freight: 3000, because: 'below the second step' },
  { goods: 10_000, grams: 100_000, freight: 5500, because: 'a step begins at its weight' },
  { goods: 59_999, grams: 700_000, freight: 9500, because: 'the last step has no end' },
  { goods: 60_000, grams: 700_000, freight: 0, because: 'free delivery begins at its value' },
  { goods: 0, grams: 0, freight: 0, because: 'nothing delivered costs nothing' },
])('goods of $goods and $grams g pay $freight: $because', ({ goods, grams, freight }) => {
  expect(freightMinorUnits(terms, goods, grams)).toBe(freight);
});

test('no steps deliver for free, one step from 0 is flat', () => {
  expect(freightMinorUnits({ steps: [], freeFromGoodsMinorUnits: null }, 1, 1)).toBe(0);
  const flat = { steps: [{ fromGrams: 0, minorUnits: 9500 }], freeFromGoodsMinorUnits: null };
  expect(freightMinorUnits(flat, 1_000_000, 1)).toBe(9500);
});

test('the least freight of orders up to some size is that of their cheapest step, or free delivery', () => {
  expect(leastFreightMinorUnits(terms, 50_000, 700_000)).toBe(3000);
  expect(leastFreightMinorUnits(terms, 60_000, 700_000)).toBe(0);
  const falling = {
    steps: [...steps.slice(0, 2), { fromGrams: 500_000, minorUnits: 2000 }],
    freeFromGoodsMinorUnits: null,
  };
  expect(leastFreightMinorUnits(falling, 50_000, 700_000)).toBe(2000);
  expect(leastFreightMinorUnits(falling, 50_000, 499_999)).toBe(3000);
});

test.for([
  { wrong: { steps: steps.slice(1) }, message: /begin at 0 grams/ },
  { wrong: { steps: [...steps, { fromGrams: 500_000, minorUnits: 1 }] }, message: /ascend by weight/ },
  { wrong: { steps: [{ fromGrams: 0, minorUnits: 1.5 }] }, message: /minorUnits must be a whole number/ },
  { wrong: { freeFromGoodsMinorUnits: -1 }, message: /freeFromGoodsMinorUnits/ },
])('terms that make no sense are stopped: $message', ({ wrong, message }) => {
  expect(() => freightMinorUnits({ ...terms, ...wrong }, 1, 1)).toThrow(message);
});

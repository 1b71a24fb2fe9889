import { type BoughtFoods, savedAgainstShelf } from '@sheafbook/sharing';
import { AssertionError, sumOf } from '@sheafbook/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';

const autumn: BoughtFoods = {
  onDay: '2026-06-10',
  foods: [
    { foodId: 'wheat', grams: 30_000, goodsMinorUnits: 2_600 },
    { foodId: 'oats', grams: 10_000, goodsMinorUnits: 1_800 },
  ],
  togetherMinorUnits: 800,
};
const price = (foodId: string, onDay: string, minorUnits: number, grams: number) => ({
  ...{ foodId, onDay },
  price: { minorUnits, grams },
});

test('what was saved is the shelf price of the mass less what it cost landed, with its part of freight and credits', () => {
  // Wheat of 30.00 got 4.00 back. Freight of 8.00 falls 6.00 on 30 kg and 2.00 on 10 kg: wheat lands at 32.00, oats at 20.00.
  // A shop asks 2.00 for a kilogram of wheat: 60.00, so 28.00 were saved; of oats nobody noted a price.
  expect(savedAgainstShelf([autumn], [price('wheat', '2026-05-01', 200, 1_000)])).toEqual({
    foods: [
      ...[
        {
          foodId: 'wheat',
          grams: 30_000,
          landedMinorUnits: 3_200,
          shelfMinorUnits: 6_000,
          savedMinorUnits: 2_800,
        },
      ],
      ...[
        {
          foodId: 'oats',
          grams: 10_000,
          landedMinorUnits: 2_000,
          shelfMinorUnits: null,
          savedMinorUnits: null,
        },
      ],
    ],
    ...{ grams: 40_000, pricedGrams: 30_000, savedMinorUnits: 2_800 },
  });
});

test('a buy is compared with the price noted last by its day, or else with the first after it', () => {
  const notes = [
    price('oats', '2026-07-01', 900, 1_000),
    price('oats', '2026-06-10', 300, 1_000),
    price('oats', '2026-01-01', 100, 1_000),
    price('wheat', '2026-09-01', 50, 1_000),
    price('wheat', '2026-08-01', 100, 1_000),
  ];
  const { foods, savedMinorUnits } = savedAgainstShelf([autumn], notes);
  // Oats at 3.00 a kilogram are 30.00, 10.00 above 20.00; wheat at 1.00 is 30.00, so the shop was 2.00 cheaper.
  expect(foods.map((food) => food.savedMinorUnits)).toEqual([-200, 1_000]);
  expect(savedMinorUnits).toBe(800);
});

test('of nothing bought nothing is said, and of no price no sum', () => {
  expect(savedAgainstShelf([], [price('wheat', '2026-05-01', 200, 1_000)])).toEqual({
    foods: [],
    ...{ grams: 0, pricedGrams: 0, savedMinorUnits: 0 },
  });
  expect(savedAgainstShelf([autumn], [])).toMatchObject({ pricedGrams: 0, savedMinorUnits: 0 });
});

const signed = (most: number) => fc.integer({ min: -most, max: most });
const anyFood = fc.record({ grams: fc.nat(100_000), goodsMinorUnits: signed(100_000) });
const anyBuy = fc
  .record({ rows: fc.array(anyFood, { minLength: 1, maxLength: 6 }), togetherMinorUnits: signed(100_000) })
  .map(({ rows, ...buy }) => ({
    ...{ onDay: '2026-06-10', ...buy },
    foods: rows.map((row, at) => ({ foodId: String(at), ...row })),
  }));

test('food by food the landed costs add up to what was charged, whatever came back and however little came', () => {
  fc.assert(
    fc.property(fc.array(anyBuy, { maxLength: 4 }), (buys) => {
      const landed = savedAgainstShelf(buys, []).foods.map((row) => row.landedMinorUnits);
      const charged = buys.flatMap((buy) => [
        buy.togetherMinorUnits,
        ...buy.foods.map((food) => food.goodsMinorUnits),
      ]);
      expect(sumOf(landed)).toBe(sumOf(charged));
      expect(landed.every(Number.isSafeInteger)).toBe(true);
    }),
  );
});

test('a buy of which nothing came and that cost freight all the same is borne evenly, and one that cost nothing is not told', () => {
  const food = (foodId: string) => ({ foodId, grams: 0, goodsMinorUnits: 0 });
  const lost = { onDay: '2026-06-10', foods: [food('wheat'), food('oats')], togetherMinorUnits: 801 };
  expect(savedAgainstShelf([lost], []).foods.map((row) => row.landedMinorUnits)).toEqual([401, 400]);
  expect(savedAgainstShelf([{ ...lost, togetherMinorUnits: 0 }], []).foods).toEqual([]);
});

test('a price is whole, for some mass, and of a day', () => {
  for (const note of [
    price('wheat', '2026-05-01', 200, 0),
    price('wheat', '2026-05-01', 0.5, 1_000),
    price('wheat', '2026-05-32', 200, 1_000),
  ])
    expect(() => savedAgainstShelf([autumn], [note])).toThrow(AssertionError);
});

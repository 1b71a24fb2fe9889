import { type BoughtFoods, savedAgainstShelf } from '@sheafbook/sharing';
import { AssertionError } from '@sheafbook/units';
import fc from 'fast-check';
import { expect, test } from 'vitest';

const autumn: BoughtFoods = {
  onDay: '2026-06-10',
  foods: [
    { foodId: 'wheat', grams: 30_000, goodsMinorUnits: 3_000 },
    { foodId: 'oats', grams: 10_000, goodsMinorUnits: 1_800 },
  ],
  togetherMinorUnits: 800,
  creditedMinorUnits: 400,
};
const price = (foodId: string, onDay: string, minorUnits: number, grams: number) => ({
  ...{ foodId, onDay },
  price: { minorUnits, grams },
});

test('what was saved is the shelf price of the mass less what it cost landed, with its part of freight and credits', () => {
  // Freight of 8.00 falls 6.00 on 30 kg and 2.00 on 10 kg, a credit of 4.00 takes 3.00 and 1.00 off: wheat lands at 33.00,
  // oats at 19.00. A shop asks 2.00 for a kilogram of wheat: 60.00, so 27.00 were saved; of oats nobody noted a price.
  expect(savedAgainstShelf([autumn], [price('wheat', '2026-05-01', 200, 1_000)])).toEqual({
    foods: [
      ...[
        {
          foodId: 'wheat',
          grams: 30_000,
          landedMinorUnits: 3_300,
          shelfMinorUnits: 6_000,
          savedMinorUnits: 2_700,
        },
      ],
      ...[
        {
          foodId: 'oats',
          grams: 10_000,
          landedMinorUnits: 1_900,
          shelfMinorUnits: null,
          savedMinorUnits: null,
        },
      ],
    ],
    ...{ grams: 40_000, pricedGrams: 30_000, savedMinorUnits: 2_700 },
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
  // Oats at 3.00 a kilogram are 30.00, 11.00 above 19.00; wheat at 1.00 is 30.00, so the shop was 3.00 cheaper.
  expect(foods.map((food) => food.savedMinorUnits)).toEqual([-300, 1_100]);
  expect(savedMinorUnits).toBe(800);
});

test('of nothing bought nothing is said, and of no price no sum', () => {
  expect(savedAgainstShelf([], [price('wheat', '2026-05-01', 200, 1_000)])).toEqual({
    foods: [],
    ...{ grams: 0, pricedGrams: 0, savedMinorUnits: 0 },
  });
  expect(savedAgainstShelf([autumn], [])).toMatchObject({ pricedGrams: 0, savedMinorUnits: 0 });
});

test('landed costs add up to what was billed less what was credited, however they are shared', () => {
  const food = fc.record({ grams: fc.nat(100_000), goodsMinorUnits: fc.nat(100_000) });
  const together = fc.tuple(fc.nat(100_000), fc.nat(1_000));
  fc.assert(
    fc.property(
      fc.array(food, { minLength: 1 }),
      together,
      (rows, [togetherMinorUnits, creditedMinorUnits]) => {
        fc.pre(rows.some(({ grams }) => grams > 0));
        const foods = rows.map((row, at) => ({ foodId: String(at), ...row }));
        const buy = { onDay: '2026-06-10', foods, togetherMinorUnits, creditedMinorUnits };
        const landed = savedAgainstShelf([buy], []).foods.reduce((sum, row) => sum + row.landedMinorUnits, 0);
        const goods = rows.reduce((sum, row) => sum + row.goodsMinorUnits, 0);
        expect(landed).toBe(goods + togetherMinorUnits - creditedMinorUnits);
      },
    ),
  );
});

test('a price is whole, for some mass, and of a day', () => {
  for (const note of [
    price('wheat', '2026-05-01', 200, 0),
    price('wheat', '2026-05-01', 0.5, 1_000),
    price('wheat', '2026-05-32', 200, 1_000),
  ])
    expect(() => savedAgainstShelf([autumn], [note])).toThrow(AssertionError);
});

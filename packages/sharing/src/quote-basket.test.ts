import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anOffer } from './fill-builders.ts';
import { freightMinorUnits } from './freight.ts';
import { cheapestBasket } from './quote-basket.ts';
import type { SupplierQuote } from './quote-terms.ts';

/** A supplier that sells bags of 1000 g of some foods, by their price. */
const aSupplier = (
  supplierId: string,
  prices: Readonly<Record<string, number>>,
  given: Partial<SupplierQuote> = {},
): SupplierQuote => ({
  supplierId,
  foods: Object.entries(prices).map(([foodId, bagPriceMinorUnits]) => ({
    foodId,
    offers: [anOffer({ bagGrams: 1000, breaks: [{ fromBags: 1, bagPriceMinorUnits }] })],
  })),
  freight: { steps: [], freeFromGoodsMinorUnits: null },
  minimumGoodsMinorUnits: 0,
  minimumGrams: 0,
  ...given,
});
const flat = (minorUnits: number) => ({
  steps: [{ fromGrams: 0, minorUnits }],
  freeFromGoodsMinorUnits: null,
});
const wants = [
  { foodId: 'wheat', grams: 10_000 },
  { foodId: 'oats', grams: 10_000 },
];
const suppliersOf = (basket: ReturnType<typeof cheapestBasket>) =>
  basket?.foods.map((food) => food.supplierId);

describe('freight couples the foods of one supplier', () => {
  const farm = aSupplier('farm', { wheat: 100, oats: 130 }, { freight: flat(500) });
  // Farm for both: 1000 + 1300 + 500 = 2800. Mill for both: 1200 + 1100 + 500 = 2800. Wheat at the farm and
  // oats at the mill: 1000 + 500 + 1100 + 500 = 3100. The tie goes to the farm, whose name sorts first.
  test('each food at its own cheapest supplier would pay two freights', () => {
    const basket = cheapestBasket(wants, [
      aSupplier('mill', { wheat: 120, oats: 110 }, { freight: flat(500) }),
      farm,
    ]);
    expect(suppliersOf(basket)).toEqual(['farm', 'farm']);
    expect(basket?.totalMinorUnits).toBe(2800);
    expect(basket?.suppliers).toEqual([
      { supplierId: 'farm', goodsMinorUnits: 2300, freightMinorUnits: 500, grams: 20_000 },
    ]);
  });
  // The mill delivers for 100: wheat at the farm, oats at the mill: 1000 + 500 + 1100 + 100 = 2700; the mill
  // for both: 1200 + 1100 + 100 = 2400.
  test('a cheap freight draws all foods to it', () => {
    const mill = aSupplier('mill', { wheat: 120, oats: 110 }, { freight: flat(100) });
    expect(suppliersOf(cheapestBasket(wants, [mill, farm]))).toEqual(['mill', 'mill']);
  });
});

test('a supplier whose minimum would be missed gets nothing', () => {
  const quotes = [
    aSupplier('farm', { wheat: 100 }, { minimumGoodsMinorUnits: 1001 }),
    aSupplier('mill', { wheat: 150 }),
  ];
  expect(suppliersOf(cheapestBasket(wants.slice(0, 1), quotes))).toEqual(['mill']);
  expect(cheapestBasket(wants.slice(0, 1), quotes.slice(0, 1))).toBeNull();
});
test('a food that nobody sells leaves no basket', () => {
  expect(cheapestBasket(wants, [aSupplier('farm', { wheat: 100 })])).toBeNull();
});

const foodIds = ['wheat', 'oats', 'beans', 'rye'];
const somePrice = fc.option(fc.integer({ min: 50, max: 80 }), { freq: 6 });
const someSupplier = fc.record({
  prices: fc.tuple(somePrice, somePrice, somePrice, somePrice),
  steps: fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 300 })),
  free: fc.option(fc.integer({ min: 500, max: 2000 })),
  minimum: fc.constantFrom(0, 0, 600),
});

// Trying every assignment, 3 suppliers for 4 foods: 81 of them.
test('a basket costs what the cheapest of all assignments costs', () => {
  const property = fc.property(
    fc.array(someSupplier, { minLength: 3, maxLength: 3 }),
    fc.tuple(fc.nat({ max: 9 }), fc.nat({ max: 9 }), fc.nat({ max: 9 }), fc.nat({ max: 9 })),
    (suppliers, amounts) => {
      const asked = foodIds.map((foodId, i) => ({ foodId, grams: 1000 * (1 + (amounts[i] ?? 0)) }));
      const quotes = suppliers.map(({ prices, steps, free, minimum }, s) => {
        const sold = foodIds.flatMap((foodId, i) => (prices[i] ? [[foodId, prices[i]] as const] : []));
        const freight = {
          steps: [
            { fromGrams: 0, minorUnits: steps[0] },
            { fromGrams: 9000, minorUnits: steps[1] },
          ],
          freeFromGoodsMinorUnits: free,
        };
        return aSupplier(`s${s}`, Object.fromEntries(sold), { freight, minimumGoodsMinorUnits: minimum });
      });
      const totals = Array.from({ length: 81 }, (_, code) => {
        const goods = [0, 0, 0];
        const grams = [0, 0, 0];
        for (const [i, want] of asked.entries()) {
          const s = Math.floor(code / 3 ** i) % 3;
          goods[s] =
            (goods[s] ?? 0) + (suppliers[s]?.prices[i] ?? Number.POSITIVE_INFINITY) * (want.grams / 1000);
          grams[s] = (grams[s] ?? 0) + want.grams;
        }
        return quotes.reduce((sum, quote, s) => {
          const [value, mass] = [goods[s] ?? 0, grams[s] ?? 0];
          if (mass === 0) return sum;
          if (!Number.isFinite(value) || value < quote.minimumGoodsMinorUnits)
            return Number.POSITIVE_INFINITY;
          return sum + value + freightMinorUnits(quote.freight, value, mass);
        }, 0);
      });
      const least = Math.min(...totals);
      const basket = cheapestBasket(asked, quotes);
      expect(basket?.totalMinorUnits ?? Number.POSITIVE_INFINITY).toBe(least);
      expect(cheapestBasket(asked.toReversed(), quotes.toReversed())?.suppliers).toEqual(basket?.suppliers);
    },
  );
  fc.assert(property, { seed: 20_260_731, numRuns: 150 });
});

test('baskets that are too large, or name a food or supplier twice, are stopped', () => {
  const farm = aSupplier('farm', { wheat: 100 });
  const thirteen = Array.from({ length: 13 }, (_, i) => ({ foodId: `food ${i}`, grams: 1 }));
  const five = Array.from({ length: 5 }, (_, i) => ({ ...farm, supplierId: `s${i}` }));
  expect(() => cheapestBasket(thirteen, [farm])).toThrow(/1 to 12 foods/);
  expect(() => cheapestBasket([], [farm])).toThrow(/1 to 12 foods/);
  expect(() => cheapestBasket(wants, five)).toThrow(/at most 4 suppliers/);
  expect(() => cheapestBasket([...wants, ...wants], [farm])).toThrow(/in a basket once/);
  expect(() => cheapestBasket([{ foodId: 'wheat', grams: 0 }], [farm])).toThrow(/more than 0 grams/);
});

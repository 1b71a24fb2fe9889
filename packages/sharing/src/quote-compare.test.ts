import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anOffer } from './fill-builders.ts';
import { goodsMinorUnits } from './price.ts';
import { compareQuotes } from './quote-compare.ts';
import { coverGrams } from './quote-cover.ts';
import type { SupplierQuote } from './quote-terms.ts';

const aQuote = (given: Partial<SupplierQuote> = {}): SupplierQuote => ({
  supplierId: 'mill',
  foods: [{ foodId: 'wheat', offers: [anOffer()] }],
  freight: { steps: [], freeFromGoodsMinorUnits: null },
  minimumGoodsMinorUnits: 0,
  minimumGrams: 0,
  ...given,
});

// The mill sells 50 lb (22,680 g) at 36.00 with 40.00 of freight; the farm 25 lb (11,340 g) at 19.00,
// delivered. 45,360 g: mill 2 × 36.00 + 40.00 = 112.00; farm 4 × 19.00 = 76.00.
// 226,800 g: mill 10 × 36.00 + 40.00 = 400.00; farm 20 × 19.00 = 380.00.
// 453,600 g: mill 20 × 36.00 + 40.00 = 760.00; farm 40 × 19.00 = 760.00: a tie, and "farm" sorts first.
// 680,400 g: mill 30 × 36.00 + 40.00 = 1120.00; farm 60 × 19.00 = 1140.00.
const mill = aQuote({
  freight: { steps: [{ fromGrams: 0, minorUnits: 4000 }], freeFromGoodsMinorUnits: null },
});
const farmBag = anOffer({ bagSize: 25, breaks: [{ fromBags: 1, bagPriceMinorUnits: 1900 }] });
const farm = aQuote({ supplierId: 'farm', foods: [{ foodId: 'wheat', offers: [farmBag] }] });

describe('suppliers side by side', () => {
  test.for([
    { grams: 45_360, totals: [11_200, 7600], cheapest: 'farm' },
    { grams: 226_800, totals: [40_000, 38_000], cheapest: 'farm' },
    { grams: 453_600, totals: [76_000, 76_000], cheapest: 'farm' },
    { grams: 680_400, totals: [112_000, 114_000], cheapest: 'mill' },
  ])('at $grams g they ask $totals', ({ grams, totals, cheapest }) => {
    const [row] = compareQuotes({ foodId: 'wheat', quotes: [mill, farm], quantitiesGrams: [grams] });
    expect(row?.quotes.map((quote) => quote.totalMinorUnits)).toEqual(totals);
    expect(row?.cheapestSupplierId).toBe(cheapest);
  });
  test('landed price is goods and freight for the whole bags that cover the quantity', () => {
    const [row] = compareQuotes({ foodId: 'wheat', quotes: [mill], quantitiesGrams: [30_000] });
    expect(row?.quotes[0]).toEqual({
      supplierId: 'mill',
      bags: [{ bagOfferId: 'bag of 50', bags: 2 }],
      grams: 45_360,
      goodsMinorUnits: 7200,
      freightMinorUnits: 4000,
      totalMinorUnits: 11_200,
      landedPrice: { minorUnits: 11_200, grams: 45_360 },
      meetsMinimum: true,
    });
  });
  test('a supplier whose minimum is missed is shown, but not called the cheapest', () => {
    const strict = { ...farm, minimumGoodsMinorUnits: 10_000 };
    const [row] = compareQuotes({ foodId: 'wheat', quotes: [mill, strict], quantitiesGrams: [45_360] });
    expect(row?.quotes[1]?.meetsMinimum).toBe(false);
    expect(row?.cheapestSupplierId).toBe('mill');
  });
  test('a food that nobody quotes has no cheapest supplier', () => {
    const [row] = compareQuotes({ foodId: 'rye', quotes: [mill, farm], quantitiesGrams: [1000] });
    expect(row).toEqual({ wantedGrams: 1000, quotes: [], cheapestSupplierId: null });
  });
  test('a supplier with too few bags is left out', () => {
    const few = aQuote({ foods: [{ foodId: 'wheat', offers: [anOffer({ mostBags: 1 })] }] });
    const [row] = compareQuotes({ foodId: 'wheat', quotes: [few], quantitiesGrams: [30_000] });
    expect(row?.quotes).toEqual([]);
  });
  test('no quantity, a supplier twice, or a minimum below nothing is stopped', () => {
    const compare = (quotes: SupplierQuote[], grams: number) =>
      compareQuotes({ foodId: 'wheat', quotes, quantitiesGrams: [grams] });
    expect(() => compare([mill], 0)).toThrow(/must be above 0/);
    expect(() => compare([mill, mill], 1)).toThrow(/quotes once/);
    expect(() => compare([{ ...mill, minimumGrams: -1 }], 1)).toThrow(/minimumGrams/);
  });
});

describe('covering a quantity', () => {
  // 19 bags at 25.50 are 484.50; 20 at 24.00 are 480.00.
  test('a dead zone is left for the next break', () => {
    const breaks = [
      { fromBags: 1, bagPriceMinorUnits: 2550 },
      { fromBags: 20, bagPriceMinorUnits: 2400 },
    ];
    const cover = coverGrams([anOffer({ breaks })], 19 * 22_680);
    expect(cover).toMatchObject({ bags: [{ bags: 20 }], goods: 48_000 });
  });
  test('costs no more than any other bags that hold as much', () => {
    const someOffer = fc.record({
      bagGrams: fc.constantFrom(3000, 5000, 7000),
      prices: fc.tuple(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 1, max: 50 })),
      from: fc.integer({ min: 2, max: 6 }),
      breakKind: fc.constantFrom('all-units' as const, 'incremental' as const),
    });
    const property = fc.property(
      fc.array(someOffer, { minLength: 2, maxLength: 2 }),
      fc.nat({ max: 40_000 }),
      (given, grams) => {
        const offers = given.map(({ bagGrams, prices, from, breakKind }, i) => {
          const breaks = [
            { fromBags: 1, bagPriceMinorUnits: prices[0] },
            { fromBags: from, bagPriceMinorUnits: prices[1] },
          ];
          return anOffer({ bagOfferId: `offer ${i}`, bagGrams, breakKind, breaks });
        });
        const [first, second] = offers;
        let least = Number.POSITIVE_INFINITY;
        for (let a = 0; first && a <= 22; a += 1) {
          for (let b = 0; second && b <= 22; b += 1) {
            if (a * first.bagGrams + b * second.bagGrams < grams) continue;
            least = Math.min(least, goodsMinorUnits(first, a) + goodsMinorUnits(second, b));
          }
        }
        expect(coverGrams(offers, grams)?.goods).toBe(least);
      },
    );
    fc.assert(property, { seed: 20_260_731, numRuns: 150 });
  });
});

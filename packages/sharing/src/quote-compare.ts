import { assert, assertWhole, compareText } from '@sheafbook/units';
import { freightMinorUnits } from './freight.ts';
import { type Cover, coverGrams } from './quote-cover.ts';
import { assertSuppliers, type SupplierQuote } from './quote-terms.ts';
import { compareUnitPrices, type UnitPrice } from './unit-price.ts';

/**
 * What one supplier asks for one food at one quantity, delivered.
 * Units: grams of the whole bags that cover the quantity; minor units; `landedPrice` is goods and freight for
 * those grams. Errors: none.
 */
export type ComparedQuote = {
  readonly supplierId: string;
  readonly bags: Cover['bags'];
  readonly grams: number;
  readonly goodsMinorUnits: number;
  readonly freightMinorUnits: number;
  readonly totalMinorUnits: number;
  readonly landedPrice: UnitPrice;
  readonly meetsMinimum: boolean;
};

/**
 * Puts suppliers of one food side by side on landed cost, at several quantities. Bags of different sizes
 * compare because every price is per mass. Each supplier's bags are the cheapest goods that cover the
 * quantity; a larger order for the sake of freight is what `findTip` looks for.
 * Units: whole grams wanted. Shape: one row a quantity; suppliers in the order given, those that do not quote
 * the food, or not so much of it, left out; `cheapestSupplierId` has the lowest landed price of those whose
 * minimum is met, null when there is none. Ties: the lower total, then the supplier whose name sorts first.
 * Errors: AssertionError when a quantity is not whole and above 0, a supplier comes twice, or terms make no
 * sense.
 */
export function compareQuotes(input: {
  readonly foodId: string;
  readonly quotes: readonly SupplierQuote[];
  readonly quantitiesGrams: readonly number[];
}): {
  readonly wantedGrams: number;
  readonly quotes: ComparedQuote[];
  readonly cheapestSupplierId: string | null;
}[] {
  assertSuppliers(input.quotes);
  return input.quantitiesGrams.map((wantedGrams) => {
    assertWhole(wantedGrams, 'quantity');
    assert(wantedGrams > 0, 'a quantity to compare must be above 0');
    const quotes = input.quotes.flatMap((quote) => priceQuote(quote, input.foodId, wantedGrams) ?? []);
    const [cheapest] = quotes.filter((quote) => quote.meetsMinimum).toSorted(byLandedPrice);
    return { wantedGrams, quotes, cheapestSupplierId: cheapest?.supplierId ?? null };
  });
}

function priceQuote(quote: SupplierQuote, foodId: string, wantedGrams: number): ComparedQuote | undefined {
  const food = quote.foods.find((quoted) => quoted.foodId === foodId);
  const cover = food && coverGrams(food.offers, wantedGrams);
  if (!cover) return undefined;
  const freight = freightMinorUnits(quote.freight, cover.goods, cover.grams);
  const totalMinorUnits = cover.goods + freight;
  return {
    supplierId: quote.supplierId,
    bags: cover.bags,
    grams: cover.grams,
    goodsMinorUnits: cover.goods,
    freightMinorUnits: freight,
    totalMinorUnits,
    landedPrice: { minorUnits: totalMinorUnits, grams: cover.grams },
    meetsMinimum: cover.goods >= quote.minimumGoodsMinorUnits && cover.grams >= quote.minimumGrams,
  };
}

function byLandedPrice(a: ComparedQuote, b: ComparedQuote): number {
  return (
    compareUnitPrices(a.landedPrice, b.landedPrice) ||
    a.totalMinorUnits - b.totalMinorUnits ||
    compareText(a.supplierId, b.supplierId)
  );
}

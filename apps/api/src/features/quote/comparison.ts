import type { BuyLineRow } from '@sheafbook/db/tables';
import {
  type Basket,
  type ComparedQuote,
  cheapestBasket,
  compareQuotes,
  type SupplierQuote,
} from '@sheafbook/sharing';
import { gramsOfPhysicalUnit } from '@sheafbook/units';
import type { BuyQuote } from './queries.ts';

/**
 * A mass that a line is compared at, and what it stands for. `coverGrams` is what the bags must hold for it.
 * Units: grams.
 */
export type ComparedMass = {
  readonly at: 'least' | 'wanted' | 'most' | 'asked';
  readonly grams: number;
  readonly coverGrams: number;
};

/**
 * Whole line units as a mass to compare at. Fifty pledges of 1 lb are 22,700 g and one bag of 50 lb is 22,680 g
 * (ledger-notes 6.14), so units are summed, not grams, and the bags may fall short by half a unit: less than that is
 * rounding of each bag, more is a unit that is missing.
 */
export function massOfUnits(at: ComparedMass['at'], units: number, massUnit: 'lb' | 'kg'): ComparedMass {
  const grams = gramsOfPhysicalUnit(units, massUnit);
  const halfUnit = Math.floor(gramsOfPhysicalUnit(1, massUnit) / 2);
  return { at, grams, coverGrams: grams - halfUnit };
}
export type ComparedLine = { readonly line: BuyLineRow; readonly masses: readonly ComparedMass[] };

/** One line at one mass: `quoteId` names each row, because a supplier may quote a buy twice. */
export type ComparisonRow = ComparedMass & {
  readonly buyLineId: string;
  readonly quotes: readonly (Omit<ComparedQuote, 'supplierId'> & { readonly quoteId: string })[];
  readonly cheapestQuoteId: string | null;
  /** Quotes whose bags are too many to try every mix of them; they are left out and named. */
  readonly tooManyWays: readonly string[];
};

export type BuyComparison = {
  readonly rows: readonly ComparisonRow[];
  readonly basket: Basket | null;
  readonly basketAbsent: 'nothing-wanted' | 'too-large' | 'no-basket-fits' | null;
  readonly suppliers: ReadonlyMap<string, string>;
};

const MOST_FOODS = 12;
const MOST_QUOTES = 4;
/** A cover is found by trying bag counts of every size together; beyond this the answer would keep a member waiting. */
const MOST_WAYS = 200_000;

/**
 * Puts the standing quotes of a buy side by side on landed cost, line by line with each line's own freight, and finds
 * the cheapest basket for what is wanted of all lines together.
 */
export function compareBuy(lines: readonly ComparedLine[], quotes: readonly BuyQuote[]): BuyComparison {
  const offered = quotes.map(toSupplierQuote);
  return {
    rows: lines.flatMap(({ line, masses }) => masses.map((mass) => compareRow(line, mass, offered))),
    ...findBasket(lines, offered),
    suppliers: new Map(quotes.map(({ quote, supplierName }) => [quote.quoteId, supplierName])),
  };
}

/** Here each quote is a supplier of its own, with its own freight and minimum; lines stand for foods. */
function toSupplierQuote({ quote, freight, offers }: BuyQuote): SupplierQuote {
  const lineIds = [...new Set(offers.map((offer) => offer.buyLineId))];
  return {
    supplierId: quote.quoteId,
    foods: lineIds.map((foodId) => ({
      foodId,
      offers: offers.filter((offer) => offer.buyLineId === foodId),
    })),
    freight,
    minimumGoodsMinorUnits: quote.minimumGoodsMinorUnits,
    minimumGrams: quote.minimumGrams,
  };
}

function compareRow(line: BuyLineRow, mass: ComparedMass, quotes: readonly SupplierQuote[]): ComparisonRow {
  const { buyLineId } = line;
  const isFew = (quote: SupplierQuote) => countWays(quote, buyLineId, mass.coverGrams) <= MOST_WAYS;
  const [row] = compareQuotes({
    foodId: buyLineId,
    quotes: quotes.filter(isFew),
    quantitiesGrams: [mass.coverGrams],
  });
  return {
    ...mass,
    buyLineId,
    quotes: (row?.quotes ?? []).map(({ supplierId: quoteId, ...compared }) => ({ ...compared, quoteId })),
    cheapestQuoteId: row?.cheapestSupplierId ?? null,
    tooManyWays: quotes.filter((quote) => !isFew(quote)).map((quote) => quote.supplierId),
  };
}

/** Bag counts up to enough, multiplied over all sizes: never fewer than the ways that are tried. */
function countWays({ foods }: SupplierQuote, foodId: string, grams: number): number {
  const offers = foods.find((food) => food.foodId === foodId)?.offers ?? [];
  return offers.reduce(
    (ways, offer) => ways * (Math.ceil(grams / offer.bagGrams) + 1 + offer.breaks.length),
    1,
  );
}

function findBasket(
  lines: readonly ComparedLine[],
  quotes: readonly SupplierQuote[],
): Pick<BuyComparison, 'basket' | 'basketAbsent'> {
  const wants = lines.flatMap(({ line, masses }) =>
    masses
      .filter(({ at }) => at === 'wanted' || at === 'asked')
      .map(({ coverGrams }) => ({ foodId: line.buyLineId, grams: coverGrams })),
  );
  if (wants.length === 0) return { basket: null, basketAbsent: 'nothing-wanted' };
  const isTooLarge =
    wants.length > MOST_FOODS ||
    quotes.length > MOST_QUOTES ||
    wants.some(({ foodId, grams }) => quotes.some((quote) => countWays(quote, foodId, grams) > MOST_WAYS));
  if (isTooLarge) return { basket: null, basketAbsent: 'too-large' };
  const basket = cheapestBasket(wants, quotes);
  return { basket, basketAbsent: basket ? null : 'no-basket-fits' };
}

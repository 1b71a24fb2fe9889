import { cheapestBasket, compareQuotes, type SupplierQuote } from '@sheafbook/sharing';
import { sumOf } from '@sheafbook/units';
import type { FillInputs, FillLineFacts, FillQuote } from './inputs.ts';

/** What `cheapestBasket` looks through; more foods or quotes are compared food by food. */
const MOST_FOODS = 12;
const MOST_QUOTES = 4;

/**
 * The quote of each line: the one chosen by hand, else the only one, else the one in the cheapest basket for what is
 * wanted, with every supplier's freight and minimum counted. A line that nobody quotes has none.
 */
export function chooseQuotes(inputs: FillInputs): ReadonlyMap<string, FillQuote> {
  const quoteOf = new Map(inputs.quotes.map((quote) => [quote.quoteId, quote]));
  const wants = inputs.lines
    .filter((line) => quotesFor(inputs, line).length > 0)
    .map((line) => ({ foodId: line.lineId, grams: gramsWanted(inputs, line) }));
  const offered = inputs.quotes.map((quote) => toSupplierQuote(inputs, quote));
  const basket =
    wants.length >= 1 && wants.length <= MOST_FOODS && offered.length <= MOST_QUOTES
      ? cheapestBasket(wants, offered)
      : null;
  const chosen = wants.flatMap(({ foodId, grams }) => {
    const inBasket = basket?.foods.find((food) => food.foodId === foodId)?.supplierId;
    const quote = quoteOf.get(inBasket ?? cheapestAlone(offered, foodId, grams));
    return quote ? [[foodId, quote] as const] : [];
  });
  return new Map(chosen);
}

/** The quotes that may serve a line. A choice by hand leaves no other. */
function quotesFor(inputs: FillInputs, { lineId, quoteId }: FillLineFacts): FillQuote[] {
  return inputs.quotes.filter(
    (quote) =>
      (quoteId === null || quote.quoteId === quoteId) &&
      quote.offers.some((offer) => offer.lineId === lineId),
  );
}

/** A line without pledges is compared at one of the smallest bags. */
function gramsWanted(inputs: FillInputs, line: FillLineFacts): number {
  const pledged = inputs.pledges.filter((pledge) => pledge.lineId === line.lineId);
  const offers = quotesFor(inputs, line).flatMap((quote) =>
    quote.offers.filter((offer) => offer.lineId === line.lineId),
  );
  return (
    sumOf(pledged.map((pledge) => pledge.wantedGrams)) || Math.min(...offers.map((offer) => offer.bagGrams))
  );
}

/** The comparison knows suppliers by id; here each quote is one, because a supplier may quote a buy twice. */
function toSupplierQuote(inputs: FillInputs, quote: FillQuote): SupplierQuote {
  const foods = inputs.lines.flatMap((line) => {
    const offers = quote.offers.filter((offer) => offer.lineId === line.lineId);
    return quotesFor(inputs, line).includes(quote) ? [{ foodId: line.lineId, offers }] : [];
  });
  const { quoteId: supplierId, freight, minimumGoodsMinorUnits, minimumGrams } = quote;
  return { supplierId, foods, freight, minimumGoodsMinorUnits, minimumGrams };
}

/** Without a basket: the lowest landed price, of those whose minimum this food alone meets if there are any. */
function cheapestAlone(quotes: readonly SupplierQuote[], foodId: string, grams: number): string {
  const [row] = compareQuotes({ foodId, quotes, quantitiesGrams: [grams] });
  const [freed] = compareQuotes({
    foodId,
    quotes: quotes.map((quote) => ({ ...quote, minimumGoodsMinorUnits: 0, minimumGrams: 0 })),
    quantitiesGrams: [grams],
  });
  const [firstOffering] = quotes.filter((quote) => quote.foods.some((food) => food.foodId === foodId));
  return row?.cheapestSupplierId ?? freed?.cheapestSupplierId ?? firstOffering?.supplierId ?? '';
}

import type { BuyLineRow } from '@sheafbook/db/tables';
import type { BuyComparison, ComparisonRow } from './comparison.ts';
import type { BuyQuote, QuotedOffer } from './queries.ts';
import type { QuoteWarning } from './warnings.ts';

export type QuoteWithWarnings = { readonly quote: BuyQuote; readonly warnings: readonly QuoteWarning[] };

function presentOffer(offer: QuotedOffer) {
  return {
    id: offer.bagOfferId,
    buyLineId: offer.buyLineId,
    bagSize: offer.bagSize,
    bagGrams: offer.bagGrams,
    bagLabel: offer.bagLabel,
    breakKind: offer.breakKind,
    mostBags: offer.mostBags,
    breaks: offer.breaks.map(({ fromBags, bagPriceMinorUnits }) => ({ fromBags, bagPriceMinorUnits })),
  };
}

export function presentQuote({
  quote: { quote, supplierName, freight, offers },
  warnings,
}: QuoteWithWarnings) {
  return {
    id: quote.quoteId,
    buyId: quote.buyId,
    supplier: { id: quote.supplierId, name: supplierName },
    reference: quote.reference,
    validUntil: quote.validUntil,
    minimumGoodsMinorUnits: quote.minimumGoodsMinorUnits,
    minimumGrams: quote.minimumGrams,
    freightSteps: freight.steps.map(({ fromGrams, minorUnits }) => ({ fromGrams, minorUnits })),
    freightFreeFromMinorUnits: freight.freeFromGoodsMinorUnits,
    leadDays: quote.leadDays,
    cropYear: quote.cropYear,
    moistureNote: quote.moistureNote,
    foreignPriceNote: quote.foreignPriceNote,
    offers: offers.map(presentOffer),
    enteredAt: quote.enteredAt.toISOString(),
    isWithdrawn: quote.withdrawnAt !== null,
    version: quote.version,
    warnings: warnings.map(({ code, message }) => ({ code, message })),
  };
}

export const presentQuotes = (quotes: readonly QuoteWithWarnings[]) => ({ quotes: quotes.map(presentQuote) });

/** One row a price, since that is what a spreadsheet compares. */
export function presentQuoteCells(quotes: readonly QuoteWithWarnings[]) {
  return quotes.flatMap(({ quote: { quote, supplierName, offers } }) =>
    offers.flatMap((offer) =>
      offer.breaks.map(({ fromBags, bagPriceMinorUnits }) => ({
        quoteId: quote.quoteId,
        supplier: supplierName,
        reference: quote.reference,
        validUntil: quote.validUntil,
        isWithdrawn: quote.withdrawnAt !== null,
        buyLineId: offer.buyLineId,
        bag: offer.bagLabel,
        bagGrams: offer.bagGrams,
        breakKind: offer.breakKind,
        mostBags: offer.mostBags,
        fromBags,
        bagPriceMinorUnits,
      })),
    ),
  );
}

export type LineChoice = {
  readonly line: BuyLineRow;
  /** Standing whole-bag pledges that are no whole number of this quote's bags. */
  readonly pledgesOffBagSize: number;
};

export const presentLineChoice = ({ line, pledgesOffBagSize }: LineChoice) => ({
  buyLineId: line.buyLineId,
  quoteId: line.quoteId,
  version: line.version,
  pledgesOffBagSize,
});

function presentRow({ quotes, ...row }: ComparisonRow, suppliers: ReadonlyMap<string, string>) {
  return {
    buyLineId: row.buyLineId,
    at: row.at,
    grams: row.grams,
    cheapestQuoteId: row.cheapestQuoteId,
    tooManyWays: row.tooManyWays,
    quotes: quotes.map((quote) => ({
      quoteId: quote.quoteId,
      supplier: suppliers.get(quote.quoteId) ?? '',
      bags: quote.bags.map(({ bagOfferId, bags }) => ({ bagOfferId, bags })),
      grams: quote.grams,
      goodsMinorUnits: quote.goodsMinorUnits,
      freightMinorUnits: quote.freightMinorUnits,
      totalMinorUnits: quote.totalMinorUnits,
      landedPrice: { minorUnits: quote.landedPrice.minorUnits, grams: quote.landedPrice.grams },
      meetsMinimum: quote.meetsMinimum,
    })),
  };
}

export function presentComparison({ rows, basket, basketAbsent, suppliers }: BuyComparison) {
  return {
    lines: rows.map((row) => presentRow(row, suppliers)),
    basketAbsent,
    basket: basket && {
      totalMinorUnits: basket.totalMinorUnits,
      assignmentsTried: basket.assignmentsTried,
      lines: basket.foods.map((food) => ({
        buyLineId: food.foodId,
        quoteId: food.supplierId,
        bags: food.bags.map(({ bagOfferId, bags }) => ({ bagOfferId, bags })),
        grams: food.grams,
        goodsMinorUnits: food.goodsMinorUnits,
      })),
      quotes: basket.suppliers.map((order) => ({
        quoteId: order.supplierId,
        supplier: suppliers.get(order.supplierId) ?? '',
        goodsMinorUnits: order.goodsMinorUnits,
        freightMinorUnits: order.freightMinorUnits,
        grams: order.grams,
      })),
    },
  };
}

import { freightMinorUnits, goodsMinorUnits } from '@sheafbook/sharing';
import type { Fill, Quote } from './buy-body.ts';
import { bagOfferOf, freightOf } from './quote-offers.ts';

export type OrderedBag = {
  readonly bagOfferId: string;
  readonly lineId: string;
  readonly bagLabel: string;
  readonly bags: number;
  readonly goodsMinorUnits: number;
};

/** What one supplier will be sent, at the prices that it asks today. */
export type OrderNow = {
  readonly quote: Quote;
  readonly bags: readonly OrderedBag[];
  readonly goodsMinorUnits: number;
  readonly freightMinorUnits: number;
  readonly totalMinorUnits: number;
};

/** The fixed bags of a buy by supplier, priced anew: terms that were confirmed after the fixing count. */
export function ordersNow(fill: Fill, quotes: readonly Quote[]): OrderNow[] {
  return quotes.flatMap((quote) => {
    const bags = fill.lines
      .filter(({ quoteId }) => quoteId === quote.id)
      .flatMap((line) =>
        line.bags.flatMap(({ bagOfferId, bags: count }) => {
          const offer = quote.offers.find(({ id }) => id === bagOfferId);
          if (!offer || count === 0) return [];
          const { bagLabel, bagGrams } = offer;
          const goods = goodsMinorUnits(bagOfferOf(offer), count);
          return [
            { bagOfferId, lineId: line.lineId, bagLabel, bags: count, goodsMinorUnits: goods, bagGrams },
          ];
        }),
      );
    if (bags.length === 0) return [];
    const goods = bags.reduce((sum, bag) => sum + bag.goodsMinorUnits, 0);
    const grams = bags.reduce((sum, bag) => sum + bag.bags * bag.bagGrams, 0);
    const freight = freightMinorUnits(freightOf(quote), goods, grams);
    return [
      { quote, bags, goodsMinorUnits: goods, freightMinorUnits: freight, totalMinorUnits: goods + freight },
    ];
  });
}

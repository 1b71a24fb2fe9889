import type { FixedBagsRow } from '@sheafbook/db/tables';
import { freightMinorUnits, goodsMinorUnits } from '@sheafbook/sharing';
import { assert } from '@sheafbook/units';
import type { BuyQuote } from '../quote/queries.ts';

export type OrderDraft = {
  readonly quote: BuyQuote;
  readonly goodsMinorUnits: number;
  readonly freightMinorUnits: number;
  readonly lines: readonly {
    readonly buyLineId: string;
    readonly bagOfferId: string;
    readonly bags: number;
    readonly goodsMinorUnits: number;
  }[];
};

/** The fixed bags at the terms that the quotes have now, one order a quote, in the order of the quotes. */
export function draftOrders(fixed: readonly FixedBagsRow[], quotes: readonly BuyQuote[]): OrderDraft[] {
  const drafts = quotes.flatMap((quote) => draftOrder(fixed, quote) ?? []);
  const drafted = drafts.reduce((count, draft) => count + draft.lines.length, 0);
  assert(drafted === fixed.length, 'every fixed bag size belongs to a quote of the buy');
  return drafts;
}

function draftOrder(fixed: readonly FixedBagsRow[], quote: BuyQuote): OrderDraft | undefined {
  const lines = quote.offers.flatMap((offer) => {
    const bags = fixed.find((row) => row.bagOfferId === offer.bagOfferId)?.bags ?? 0;
    if (bags === 0) return [];
    const { bagOfferId, buyLineId } = offer;
    return [
      {
        buyLineId,
        bagOfferId,
        bags,
        grams: bags * offer.bagGrams,
        goodsMinorUnits: goodsMinorUnits(offer, bags),
      },
    ];
  });
  if (lines.length === 0) return undefined;
  const goods = lines.reduce((sum, line) => sum + line.goodsMinorUnits, 0);
  const grams = lines.reduce((sum, line) => sum + line.grams, 0);
  return {
    quote,
    goodsMinorUnits: goods,
    freightMinorUnits: freightMinorUnits(quote.freight, goods, grams),
    lines: lines.map(({ grams: _, ...line }) => line),
  };
}

export const totalOf = (
  drafts: readonly Pick<OrderDraft, 'goodsMinorUnits' | 'freightMinorUnits'>[],
): number => drafts.reduce((sum, draft) => sum + draft.goodsMinorUnits + draft.freightMinorUnits, 0);

import type { BuyQuote } from '../quote/queries.ts';

/** The terms as they stand, in the shape in which they are sent. */
export function presentTerms({ quote, freight, offers }: BuyQuote) {
  return {
    version: quote.version,
    validUntil: quote.validUntil,
    freightSteps: freight.steps.map(({ fromGrams, minorUnits }) => ({ fromGrams, minorUnits })),
    freightFreeFromMinorUnits: freight.freeFromGoodsMinorUnits,
    offers: offers.map(({ bagOfferId, breaks }) => ({
      bagOfferId,
      breaks: breaks.map(({ fromBags, bagPriceMinorUnits }) => ({ fromBags, bagPriceMinorUnits })),
    })),
  };
}

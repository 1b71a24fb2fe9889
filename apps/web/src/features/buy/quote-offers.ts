import type { BagOffer, FreightTerms } from '@sheafbook/sharing';
import type { Offer, Quote } from './buy-body.ts';
import type { CurveOffer } from './curve.ts';

/** A quote's terms in the words of the shared sums. */
export function bagOfferOf(offer: Offer): BagOffer {
  const { id: bagOfferId, bagSize, bagGrams, mostBags, breaks } = offer;
  const breakKind = offer.breakKind === 'incremental' ? 'incremental' : 'all-units';
  return { bagOfferId, bagSize, bagGrams, breakKind, breaks, mostBags };
}

export const freightOf = (quote: Quote): FreightTerms => ({
  steps: quote.freightSteps,
  freeFromGoodsMinorUnits: quote.freightFreeFromMinorUnits,
});

/** Whether a quote can be ordered from on a day. */
export const isStanding = (quote: Quote, todayOn: string): boolean =>
  !quote.isWithdrawn && quote.validUntil >= todayOn;

/** Every bag of one food that stands, each under its own quote's freight. */
export function curveOffersOf(quotes: readonly Quote[], lineId: string, todayOn: string): CurveOffer[] {
  return quotes
    .filter((quote) => isStanding(quote, todayOn))
    .flatMap((quote) => {
      const offers = quote.offers.filter((offer) => offer.buyLineId === lineId);
      return offers.map((offer) => ({
        key: offer.id,
        name: offers.length > 1 ? `${quote.supplier.name}, ${offer.bagLabel}` : quote.supplier.name,
        offer: bagOfferOf(offer),
        freight: freightOf(quote),
      }));
    });
}

/** Days between the order and a quote's last one; below zero it lapses first. */
export function daysToSpare(validUntil: string, orderOn: string, todayOn: string): number {
  const orderedOn = orderOn > todayOn ? orderOn : todayOn;
  return Math.round((Date.parse(validUntil) - Date.parse(orderedOn)) / 86_400_000);
}

import type { BagOffer, FreightTerms, UnitPrice } from '@sheafbook/sharing';
import { compareText } from '@sheafbook/units';

/** Counts up when the way of filling changes, so that an old fill is known to be another method's. */
export const FILL_METHOD_VERSION = 1;

/** A line of the buy as the fill sees it. `quoteId` is the quote chosen by hand; the cap is what common stock may take. */
export type FillLineFacts = {
  readonly lineId: string;
  readonly massUnit: 'lb' | 'kg';
  readonly stepUnits: number;
  readonly commonCapGrams: number;
  readonly quoteId: string | null;
};

/** A supplier's terms: bags by line, one freight and one minimum for all of them. */
export type FillQuote = {
  readonly quoteId: string;
  readonly supplierId: string;
  readonly validUntilOn: string;
  readonly freight: FreightTerms;
  readonly minimumGoodsMinorUnits: number;
  readonly minimumGrams: number;
  readonly offers: readonly (BagOffer & { readonly lineId: string })[];
};

export type FillPledgeFacts = {
  readonly pledgeId: string;
  readonly householdId: string;
  readonly seat: number;
  readonly lineId: string;
  readonly leastGrams: number;
  readonly wantedGrams: number;
  readonly mostGrams: number;
  readonly wholeBags: boolean;
  readonly substituteLineId: string | null;
  readonly rankedAt: string;
  readonly ceiling: UnitPrice | null;
};

/**
 * Everything that decides a fill, frozen with it, so that anyone can run it again and get the same bytes. It holds
 * every ceiling, so only a fill or a review reads it. Lines stand in the buy's order, pledges in pledge order
 * (ranked-at, then seat).
 */
export type FillInputs = {
  readonly methodVersion: number;
  readonly commonOwnerId: string;
  readonly lines: readonly FillLineFacts[];
  readonly quotes: readonly FillQuote[];
  readonly pledges: readonly FillPledgeFacts[];
};

/** Pledge order: the earlier pledge first, then the lower seat; the line only makes the order total. */
export function sortPledges(pledges: readonly FillPledgeFacts[]): FillPledgeFacts[] {
  return pledges.toSorted(
    (a, b) => compareText(a.rankedAt, b.rankedAt) || a.seat - b.seat || compareText(a.lineId, b.lineId),
  );
}

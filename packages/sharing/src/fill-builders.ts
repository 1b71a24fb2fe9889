import type { FillLine, FillPledge, FillRequest } from './fill-request.ts';
import type { BagOffer } from './price.ts';

// Builders for tests: plain defaults, so that a test states only what it is about.

/** Name, least, wanted, most, step. */
export type PledgeRow = readonly [string, number, number, number, number];

export const aPledge = ([name, least, wanted, most, step]: PledgeRow): FillPledge => ({
  pledgeId: `${name}'s pledge`,
  ownerId: name,
  least,
  wanted,
  most,
  step,
  ceiling: null,
});

/** A bag of 50 lb = 22,680 g for 36.00, at every number of bags. */
export const anOffer = (given: Partial<BagOffer> = {}): BagOffer => {
  const bagSize = given.bagSize ?? 50;
  return {
    bagOfferId: `bag of ${bagSize}`,
    bagSize,
    bagGrams: Math.round(bagSize * 453.592_37),
    breakKind: 'all-units',
    breaks: [{ fromBags: 1, bagPriceMinorUnits: 72 * bagSize }],
    mostBags: null,
    ...given,
  };
};

export const aLine = (given: Partial<FillLine> = {}): FillLine => ({
  lineId: 'wheat',
  offers: [anOffer()],
  pledges: [],
  commonCap: 0,
  leastBags: 0,
  mostBags: null,
  ...given,
});

export const aRequest = (given: Partial<FillRequest> = {}): FillRequest => ({
  lines: [aLine()],
  freight: { steps: [], freeFromGoodsMinorUnits: null },
  minimumGoodsMinorUnits: 0,
  minimumGrams: 0,
  ...given,
});

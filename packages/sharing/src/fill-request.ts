import type { FreightTerms } from './freight.ts';
import type { BagOffer } from './price.ts';
import type { UnitPrice } from './unit-price.ts';

/**
 * What one household promised to take of one food.
 * Units: whole line units; least ≤ wanted ≤ most, all multiples of `step` (a whole-bag pledge has the bag's
 * size as its step). `ceiling`: the landed price may be at most this, null = any price.
 * Errors: none.
 */
export type FillPledge = {
  readonly pledgeId: string;
  readonly ownerId: string;
  readonly least: number;
  readonly wanted: number;
  readonly most: number;
  readonly step: number;
  readonly ceiling: UnitPrice | null;
};

/**
 * One food of a buy at one supplier.
 * Units: whole line units, the same unit on every line of a request; `leastBags` and `mostBags` count the
 * bags of all sizes together and bind only if the line is bought at all (null = no limit).
 * Shape: `pledges` stand in pledge order (pledged-at, then seat), the order of the tie-breaks.
 * `commonCap` is the most unfilled mass that the common stock takes.
 * Errors: none.
 */
export type FillLine = {
  readonly lineId: string;
  readonly offers: readonly BagOffer[];
  readonly pledges: readonly FillPledge[];
  readonly commonCap: number;
  readonly leastBags: number;
  readonly mostBags: number | null;
};

/**
 * All lines of a buy that share one supplier's freight and minimum.
 * Units: minor units and grams over the whole order; 0 = no minimum. An order of nothing needs no minimum.
 * Errors: none.
 */
export type FillRequest = {
  readonly lines: readonly FillLine[];
  readonly freight: FreightTerms;
  readonly minimumGoodsMinorUnits: number;
  readonly minimumGrams: number;
};

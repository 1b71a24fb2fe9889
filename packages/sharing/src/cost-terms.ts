import type { FreightTerms } from './freight.ts';
import type { BagOffer } from './price.ts';

/**
 * One bag size under its freight terms. `others` is what else the same order holds: it moves freight steps
 * and free freight, and bears its by-weight share of freight.
 * Units: minor units and grams. Errors: none.
 */
export type CostTerms = {
  readonly offer: BagOffer;
  readonly freight: FreightTerms;
  readonly others?: { readonly goodsMinorUnits: number; readonly grams: number };
};

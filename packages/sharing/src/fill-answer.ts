import type { UnitPrice } from './unit-price.ts';

/**
 * What one pledge gets, and if it gets nothing, why: its ceiling is below the landed price, it does not fit
 * in whole bags with the others, or no bag of the line is bought.
 * Units: `units` whole line units, `grams` its part of the grams of all bags of the line. Errors: none.
 */
export type FillAllotment = {
  readonly pledgeId: string;
  readonly ownerId: string;
  readonly units: number;
  readonly grams: number;
  readonly dropped: null | 'ceiling' | 'does-not-fit' | 'line-not-bought';
};

/**
 * The fill of one line.
 * Units: whole bags, line units, grams, minor units. Shape: bags and allotments stand in the order of the
 * request; allotments and common grams add up to the grams of the bags. `key` is the line's own
 * [dropped pledges, unfilled bags, unfilled units, total deviation, largest deviation], with several bag
 * sizes also goods and bags. `landedPrice` is exact, in lowest terms, null when nothing is bought.
 * Errors: none.
 */
export type FilledLine = {
  readonly lineId: string;
  readonly bags: readonly { readonly bagOfferId: string; readonly bags: number }[];
  readonly allotments: readonly FillAllotment[];
  readonly commonUnits: number;
  readonly commonGrams: number;
  readonly goodsMinorUnits: number;
  readonly key: readonly number[];
  readonly landedPrice: UnitPrice | null;
};

/**
 * Why the fill is the best one, or what is not proven about it.
 * Units: `countsTried` bag counts (each a choice of bags for every line looked at); `levels` hold the value
 * reached over all lines and the proven bound, in the unit of that level. Errors: none.
 */
export type FillCertificate = {
  readonly method: 'exhausted-bag-counts' | 'joint-bag-counts' | 'drops-then-solve';
  readonly countsTried: number;
  readonly isProvenBest: boolean;
  readonly note: string;
  readonly levels: readonly { readonly level: string; readonly value: number; readonly bound: number }[];
};

/**
 * The fill of a whole order. Units: minor units and grams. Shape: lines in the order of the request. Errors:
 * none.
 */
export type FillAnswer = {
  readonly lines: readonly FilledLine[];
  readonly goodsMinorUnits: number;
  readonly freightMinorUnits: number;
  readonly grams: number;
  readonly certificate: FillCertificate;
};

import type { FillCertificate, UnitPrice } from '@sheafbook/sharing';

/**
 * Why a pledge gets nothing of a line. `no-quote`: nobody valid offers the food; `substitute`: its ceiling kept it
 * out here and its substitute was used instead; `override`: the coordinator left it out, with a written reason.
 */
export type DropReason =
  | 'ceiling'
  | 'does-not-fit'
  | 'line-not-bought'
  | 'no-quote'
  | 'substitute'
  | 'override';

/** What one pledge gets of one line. A pledge that moved to its substitute stands on both lines. */
export type PledgeAnswer = {
  readonly pledgeId: string;
  readonly householdId: string;
  readonly units: number;
  readonly grams: number;
  readonly wholeBags: boolean;
  readonly isSubstitute: boolean;
  readonly dropped: DropReason | null;
};

export type LineAnswer = {
  readonly lineId: string;
  readonly quoteId: string | null;
  readonly bags: readonly {
    readonly bagOfferId: string;
    readonly bags: number;
    readonly goodsMinorUnits: number;
  }[];
  readonly pledges: readonly PledgeAnswer[];
  readonly commonUnits: number;
  readonly commonGrams: number;
  readonly goodsMinorUnits: number;
  readonly landedPrice: UnitPrice | null;
};

/** One supplier's order. `isBelowMinimum`: its pledges alone don't reach what the supplier asks for at least. */
export type BasketAnswer = {
  readonly quoteId: string;
  readonly supplierId: string;
  readonly goodsMinorUnits: number;
  readonly freightMinorUnits: number;
  readonly grams: number;
  readonly isBelowMinimum: boolean;
  readonly certificate: FillCertificate;
};

/** A pledge that was kept out by its ceiling and had a substitute; `isServed` tells whether that helped. */
export type Substitution = {
  readonly pledgeId: string;
  readonly householdId: string;
  readonly fromLineId: string;
  readonly toLineId: string;
  readonly isServed: boolean;
};

/** The fill of a whole buy: one basket a supplier. It holds no ceiling. */
export type BuyFill = {
  readonly baskets: readonly BasketAnswer[];
  readonly lines: readonly LineAnswer[];
  readonly substitutions: readonly Substitution[];
};

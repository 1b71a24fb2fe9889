/** A quote with the last day it stands. Units: ISO day. Errors: none. */
export type QuoteFact = { readonly quoteId: string; readonly foodId: string; readonly validUntilOn: string };

/** What opening a buy for pledges is judged by. Units: ISO days. Errors: none. */
export type GatheringFacts = {
  readonly foodIds: readonly string[];
  readonly quotes: readonly QuoteFact[];
  readonly gatheringClosesOn: string | null;
};

/**
 * What fixing a buy is judged by. `isFillCurrent` is null when no fill was run, false when the pledges changed since.
 * Units: allotted and most in the whole units that the line is filled in. Errors: none.
 */
export type FixingFacts = {
  readonly isFillCurrent: boolean | null;
  readonly allotments: readonly {
    readonly pledgeId: string;
    readonly allotted: number;
    readonly most: number;
    readonly isWithinCeiling: boolean;
  }[];
  readonly supplierIdsBelowMinimum: readonly string[];
};

/** What opening a fixed buy again is judged by. Units: ISO days. Errors: none. */
export type ReopeningFacts = {
  readonly depositHolders: readonly { readonly householdId: string; readonly isTold: boolean }[];
  readonly quotes: readonly QuoteFact[];
  readonly todayOn: string;
  readonly reason: string;
};

/**
 * What ordering is judged by: one deposit row for every household with an allotment. `priceRisePercent` is how far the
 * group's rules let the re-priced total go above the estimate.
 * Units: minor units; whole per cent; ISO days. Errors: none.
 */
export type OrderingFacts = {
  readonly approvals: readonly { readonly loginId: string; readonly duty: 'coordinator' | 'treasurer' }[];
  readonly deposits: readonly {
    readonly householdId: string;
    readonly dueMinorUnits: number;
    readonly receivedMinorUnits: number;
    readonly isWaived: boolean;
  }[];
  readonly quotes: readonly QuoteFact[];
  readonly todayOn: string;
  readonly estimatedMinorUnits: number;
  readonly repricedMinorUnits: number;
  readonly priceRisePercent: number;
};

/**
 * What landing is judged by. A count of 0 is a count; null is none. `sizes` are the bag sizes that were counted.
 * Units: bags. Errors: none.
 */
export type LandingFacts = {
  readonly lines: readonly { readonly lineId: string; readonly countedBags: number | null }[];
  readonly sizes: readonly {
    readonly bagOfferId: string;
    readonly countedBags: number;
    readonly numberedBags: number;
  }[];
};

/**
 * What sharing out is judged by. Grams of bags on hold count as short until they are released.
 * Units: grams. Errors: none.
 */
export type SharingFacts = {
  readonly bags: readonly { readonly bagId: string; readonly isWeighedOrExempted: boolean }[];
  readonly lines: readonly { readonly lineId: string; readonly ruleName: string | null }[];
  readonly lots: readonly {
    readonly lotId: string;
    readonly landedGrams: number;
    readonly onHoldGrams: number;
    readonly sharedGrams: number;
    readonly commonGrams: number;
    readonly lostGrams: number;
  }[];
};

/** What closing is judged by. Units: minor units and grams. Errors: none. */
export type ClosingFacts = {
  readonly supplierIdsWithoutInvoice: readonly string[];
  readonly openClaimIds: readonly string[];
  readonly clearingMinorUnits: number;
  readonly deposits: readonly { readonly householdId: string; readonly heldMinorUnits: number }[];
  readonly unassignedGrams: number;
};

/** What calling off is judged by. Units: minor units. Errors: none. */
export type CallingOffFacts = {
  readonly deposits: readonly { readonly householdId: string; readonly heldMinorUnits: number }[];
  readonly clearingMinorUnits: number;
  readonly isCancellationRecorded: boolean;
};

/** A wanted move of a buy's stage, with the facts that its guard looks at. Units: none. Errors: none. */
export type StageMove =
  | { readonly from: 'planning'; readonly to: 'gathering'; readonly facts: GatheringFacts }
  | { readonly from: 'gathering'; readonly to: 'fixed'; readonly facts: FixingFacts }
  | { readonly from: 'fixed'; readonly to: 'gathering'; readonly facts: ReopeningFacts }
  | { readonly from: 'fixed'; readonly to: 'ordered'; readonly facts: OrderingFacts }
  | { readonly from: 'ordered'; readonly to: 'landed'; readonly facts: LandingFacts }
  | { readonly from: 'landed'; readonly to: 'shared-out'; readonly facts: SharingFacts }
  | { readonly from: 'shared-out'; readonly to: 'closed'; readonly facts: ClosingFacts }
  | {
      readonly from: 'planning' | 'gathering' | 'fixed' | 'ordered';
      readonly to: 'called-off';
      readonly facts: CallingOffFacts;
    };

import type { Fraction } from '@sheafbook/units';

/** The six named ways to divide a short delivery. Units: none. Errors: none. */
export const SPLIT_RULES = [
  'proportional',
  'equal-awards',
  'equal-losses',
  'first-come',
  'need-first',
  'rotation-of-loss',
] as const;

/** One of the named rules. Units: none. Errors: none. */
export type SplitRule = (typeof SPLIT_RULES)[number];

/**
 * What one owner may claim of a delivery. `dailyNeedUnits` and `stockUnits` are read by need-first only,
 * `carryUnits` (what it has borne beyond its part before, may be negative) by rotation-of-loss only.
 * Units: all in the one unit the caller divides: grams, bags, pounds. Errors: none; `splitByRule` checks.
 */
export type SplitClaim = {
  readonly ownerId: string;
  readonly seat: number;
  readonly claimUnits: number;
  readonly pledgeOrder: number;
  readonly dailyNeedUnits?: Fraction;
  readonly stockUnits?: number;
  readonly carryUnits?: number;
};

/** What a split is asked. Units: as the claims; `stepUnits` defaults to 1. Errors: none; `splitByRule` checks. */
export type SplitInput = {
  readonly rule: SplitRule;
  readonly availableUnits: number;
  readonly stepUnits?: number;
  readonly claims: readonly SplitClaim[];
};

/**
 * One owner's result: `exactUnits` is what the rule gives before rounding, `gotSpareUnit` says that the owner got
 * a step beyond the whole steps in it, from the steps that rounding down left over.
 * Units: as the claims. Errors: none.
 */
export type SplitAward = {
  readonly ownerId: string;
  readonly claimUnits: number;
  readonly exactUnits: Fraction;
  readonly awardUnits: number;
  readonly gotSpareUnit: boolean;
};

/**
 * The whole answer, awards in seat order; awards and surplus add up to what was available.
 * Units: as the claims. Errors: none.
 */
export type SplitAnswer = {
  readonly rule: SplitRule;
  readonly availableUnits: number;
  readonly awards: readonly SplitAward[];
  readonly surplusUnits: number;
  readonly sentence: string;
  readonly version: 1;
};

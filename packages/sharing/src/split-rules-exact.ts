import { assert, compareFractions, type Fraction, fraction, subtractFractions } from '@sheafbook/units';
import { fillToLevel, type RisingPart } from './split-rules-level.ts';
import type { SplitClaim, SplitRule } from './split-rules-terms.ts';

/** Divides a total that does not meet all claims; one exact award a claim, in the same order. */
type ExactRule = (totalUnits: number, claims: readonly SplitClaim[]) => Fraction[];

/**
 * The awards of a rule before any rounding.
 * Units: the total and the results are in the claims' unit. Shape: one award a claim, in the same order, each
 * between nothing and the claim; they add up to the total.
 * Errors: AssertionError when the total exceeds the claims, or a claim lacks what the rule reads.
 * Source: the division rules for conflicting claims (proportional, constrained equal awards, constrained equal
 * losses) as published on bankruptcy problems; need-first and rotation of loss are this product's own.
 */
export const EXACT_RULES: Readonly<Record<SplitRule, ExactRule>> = {
  proportional,
  'equal-awards': equalAwards,
  'equal-losses': equalLosses,
  'first-come': firstCome,
  'need-first': needFirst,
  'rotation-of-loss': rotationOfLoss,
};

function proportional(totalUnits: number, claims: readonly SplitClaim[]): Fraction[] {
  const claimedUnits = sumClaims(claims);
  if (claimedUnits === 0) return claims.map(() => fraction(0));
  return claims.map((claim) => fraction(BigInt(totalUnits) * BigInt(claim.claimUnits), claimedUnits));
}

function equalAwards(totalUnits: number, claims: readonly SplitClaim[]): Fraction[] {
  return fillToLevel(
    fraction(totalUnits),
    claims.map((claim) => risingTo(claim.claimUnits)),
  );
}

function equalLosses(totalUnits: number, claims: readonly SplitClaim[]): Fraction[] {
  return claimsLess(claims, equalAwards(sumClaims(claims) - totalUnits, claims));
}

function firstCome(totalUnits: number, claims: readonly SplitClaim[]): Fraction[] {
  const inTurn = claims.toSorted((a, b) => a.pledgeOrder - b.pledgeOrder || a.seat - b.seat);
  const awardOf = new Map<SplitClaim, number>();
  let leftUnits = totalUnits;
  for (const claim of inTurn) {
    const awardUnits = Math.min(claim.claimUnits, leftUnits);
    awardOf.set(claim, awardUnits);
    leftUnits -= awardUnits;
  }
  return claims.map((claim) => fraction(awardOf.get(claim) ?? 0));
}

/** Whoever eats nothing of the food has endless coverage: those are filled last, in proportion to their claims. */
function needFirst(totalUnits: number, claims: readonly SplitClaim[]): Fraction[] {
  const eating = claims.filter((claim) => needOf(claim).numerator > 0n);
  const others = claims.filter((claim) => needOf(claim).numerator === 0n);
  const eatingUnits = Math.min(totalUnits, sumClaims(eating));
  const awards = [
    ...fillToLevel(fraction(eatingUnits), eating.map(coverageRise)),
    ...proportional(totalUnits - eatingUnits, others),
  ];
  const awardOf = new Map([...eating, ...others].map((claim, position) => [claim, awards[position]]));
  return claims.map((claim) => awardOf.get(claim) ?? fraction(0));
}

function rotationOfLoss(totalUnits: number, claims: readonly SplitClaim[]): Fraction[] {
  const lossUnits = sumClaims(claims) - totalUnits;
  const proportionalLosses = proportional(lossUnits, claims);
  const parts = claims.map((claim, position) => ({
    ...risingTo(claim.claimUnits),
    startUnits: subtractFractions(carryOf(claim), proportionalLosses[position] ?? fraction(0)),
  }));
  return claimsLess(claims, fillToLevel(fraction(lossUnits), parts));
}

function risingTo(mostUnits: number): RisingPart {
  return { perLevel: fraction(1), startUnits: fraction(0), mostUnits: fraction(mostUnits) };
}

/** The level is days of coverage: `need · days` must be held, and the stock is there already. */
function coverageRise(claim: SplitClaim): RisingPart {
  assert(claim.stockUnits !== undefined, 'need-first reads the stock of every claimant');
  return {
    perLevel: needOf(claim),
    startUnits: fraction(claim.stockUnits),
    mostUnits: fraction(claim.claimUnits),
  };
}

function needOf(claim: SplitClaim): Fraction {
  assert(claim.dailyNeedUnits !== undefined, 'need-first reads the daily need of every claimant');
  assert(compareFractions(claim.dailyNeedUnits, fraction(0)) >= 0, 'a daily need cannot be negative');
  return claim.dailyNeedUnits;
}

function carryOf(claim: SplitClaim): Fraction {
  assert(claim.carryUnits !== undefined, 'rotation of loss reads the carry of every claimant');
  return fraction(claim.carryUnits);
}

function claimsLess(claims: readonly SplitClaim[], losses: readonly Fraction[]): Fraction[] {
  return claims.map((claim, position) =>
    subtractFractions(fraction(claim.claimUnits), losses[position] ?? fraction(0)),
  );
}

function sumClaims(claims: readonly SplitClaim[]): number {
  return claims.reduce((sum, claim) => sum + claim.claimUnits, 0);
}

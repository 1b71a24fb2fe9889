import { assert, assertWhole, fraction } from '@sheafbook/units';
import { EXACT_RULES } from './split-rules-exact.ts';
import { roundToSteps } from './split-rules-rounding.ts';
import { splitSentence } from './split-rules-sentence.ts';
import type { SplitAnswer, SplitAward, SplitClaim, SplitInput } from './split-rules-terms.ts';

/**
 * Divides what came of a food among those who claim it, by a named rule, when it is less than the claims; when it is
 * not, every claim is met and the rest is surplus. What does not make a whole step is set aside as surplus first, then
 * the rule divides the whole steps exactly, and largest remainders round the exact awards to steps.
 * Units: `availableUnits`, `stepUnits` and everything in the claims are one unit, whichever the caller divides. For
 * whole bags either count in bags, or keep grams with a step of one bag's grams, which keeps finer carries.
 * Shape: one award a claim, in seat order whatever the order of the claims; 0 ≤ award ≤ claim; awards + surplus =
 * available. Awards are whole steps when claims are.
 * Ties: largest remainder, then the lower seat. First-come goes by `pledgeOrder`, then the lower seat.
 * More available never lessens an exact award under any rule. After rounding to steps this still holds for
 * equal-awards, equal-losses and first-come when claims are whole steps; under the others one step may be lost,
 * as largest remainders can do.
 * Errors: AssertionError when a number is not whole and ≥ 0, the step is 0, a seat or owner comes twice, or a claim lacks
 * what the rule reads (need and stock for need-first, carry for rotation-of-loss).
 */
export function splitByRule(input: SplitInput): SplitAnswer {
  const { rule, availableUnits, stepUnits = 1 } = input;
  checkAmounts(availableUnits, stepUnits);
  checkClaims(input.claims);
  const claims = input.claims.toSorted((a, b) => a.seat - b.seat);
  const claimedUnits = claims.reduce((sum, claim) => sum + claim.claimUnits, 0);
  assertWhole(claimedUnits, 'the sum of the claims');
  const awards =
    availableUnits >= claimedUnits ? claims.map(metInFull) : divideShort({ ...input, claims, stepUnits });
  const surplusUnits = availableUnits - awards.reduce((sum, award) => sum + award.awardUnits, 0);
  const sentence = splitSentence({ rule, availableUnits, stepUnits, awards, surplusUnits });
  return { rule, availableUnits, awards, surplusUnits, sentence, version: 1 };
}

function divideShort(input: Required<SplitInput>): SplitAward[] {
  const { rule, availableUnits, stepUnits, claims } = input;
  const totalUnits = availableUnits - (availableUnits % stepUnits);
  const exactAwards = EXACT_RULES[rule](totalUnits, claims);
  const bounded = claims.map(({ claimUnits }, position) => ({
    claimUnits,
    exactUnits: exactAwards[position] ?? fraction(0),
  }));
  const stepped = roundToSteps(bounded, { totalUnits, stepUnits });
  return claims.map(({ ownerId, claimUnits }, position) => ({
    ownerId,
    claimUnits,
    exactUnits: exactAwards[position] ?? fraction(0),
    awardUnits: stepped[position]?.awardUnits ?? 0,
    gotSpareUnit: stepped[position]?.gotSpareUnit ?? false,
  }));
}

function metInFull({ ownerId, claimUnits }: SplitClaim): SplitAward {
  return {
    ownerId,
    claimUnits,
    exactUnits: fraction(claimUnits),
    awardUnits: claimUnits,
    gotSpareUnit: false,
  };
}

function checkAmounts(availableUnits: number, stepUnits: number): void {
  assertWhole(availableUnits, 'availableUnits');
  assertWhole(stepUnits, 'stepUnits');
  assert(stepUnits > 0, 'stepUnits must be at least 1');
}

function checkClaims(claims: readonly SplitClaim[]): void {
  for (const claim of claims) {
    assertWhole(claim.seat, 'seat');
    assertWhole(claim.claimUnits, 'claimUnits');
    assertWhole(claim.pledgeOrder, 'pledgeOrder');
    if (claim.stockUnits !== undefined) assertWhole(claim.stockUnits, 'stockUnits');
    assert(
      claim.carryUnits === undefined || Number.isSafeInteger(claim.carryUnits),
      `carryUnits must be a whole number, got ${claim.carryUnits}`,
    );
  }
  assert(new Set(claims.map((claim) => claim.seat)).size === claims.length, 'two claims have one seat');
  assert(new Set(claims.map((claim) => claim.ownerId)).size === claims.length, 'two claims have one owner');
}

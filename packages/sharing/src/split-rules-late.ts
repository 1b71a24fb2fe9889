import { assert } from '@sheafbook/units';
import type { SplitAward, SplitClaim } from './split-rules-terms.ts';

/**
 * The claims that stay open after a split, for what comes late: a later part of a delivery, or a bag released from a
 * hold. The same rule then divides it among these. What was awarded counts as stock from now on, and a carry is spent,
 * since the first split has paid it back already; the carry kept for the next buy comes from `carriesAfter` with the
 * original claims and all awards of the delivery added up.
 * Units: as the claims. Shape: one claim a claim, in the same order; met ones claim 0.
 * Errors: AssertionError when a claim has no award, or an award exceeds its claim.
 */
export function remainingClaims(
  answer: { readonly awards: readonly Pick<SplitAward, 'ownerId' | 'awardUnits'>[] },
  claims: readonly SplitClaim[],
): SplitClaim[] {
  const awardOf = new Map(answer.awards.map((award) => [award.ownerId, award.awardUnits]));
  return claims.map((claim) => {
    const awardUnits = awardOf.get(claim.ownerId);
    assert(awardUnits !== undefined, `the claim of ${claim.ownerId} has no award`);
    assert(awardUnits <= claim.claimUnits, `the award of ${claim.ownerId} exceeds its claim`);
    const { stockUnits, carryUnits } = claim;
    return {
      ...claim,
      claimUnits: claim.claimUnits - awardUnits,
      ...(stockUnits === undefined ? {} : { stockUnits: stockUnits + awardUnits }),
      ...(carryUnits === undefined ? {} : { carryUnits: 0 }),
    };
  });
}

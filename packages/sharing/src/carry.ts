import { assert } from '@sheafbook/units';
import { splitByWeight } from './split-by-weight.ts';
import type { SplitAward, SplitClaim } from './split-rules-terms.ts';

/** What an owner has borne beyond its proportional part so far; negative when less. Units: as the claims. Errors: none. */
export type Carry = { readonly ownerId: string; readonly carryUnits: number };

/**
 * The carries after a split by any rule: the old carry, plus the loss borne, less the proportional part of the whole
 * loss. The proportional parts are whole by largest remainder, so the changes add up to 0 exactly and carries that
 * added up to 0 still do. With whole bags divide grams in steps of a bag, or most of what rounding cost is
 * lost again here.
 * Units: as the claims. Shape: one carry a claim, in seat order. A claim without a carry starts at 0.
 * Errors: AssertionError when a claim has no award or its award exceeds it.
 */
export function carriesAfter(
  answer: { readonly awards: readonly Pick<SplitAward, 'ownerId' | 'awardUnits'>[] },
  claims: readonly SplitClaim[],
): Carry[] {
  const awardOf = new Map(answer.awards.map((award) => [award.ownerId, award.awardUnits]));
  const inSeatOrder = claims.toSorted((a, b) => a.seat - b.seat);
  const losses = inSeatOrder.map(({ ownerId, claimUnits }) => {
    const awardUnits = awardOf.get(ownerId);
    assert(awardUnits !== undefined, `the claim of ${ownerId} has no award`);
    assert(awardUnits <= claimUnits, `the award of ${ownerId} exceeds its claim`);
    return claimUnits - awardUnits;
  });
  const lossSum = losses.reduce((sum, loss) => sum + loss, 0);
  const parts =
    lossSum === 0
      ? []
      : splitByWeight(
          lossSum,
          inSeatOrder.map((claim) => claim.claimUnits),
        );
  return inSeatOrder.map(({ ownerId, carryUnits = 0 }, position) => ({
    ownerId,
    carryUnits: carryUnits + (losses[position] ?? 0) - (parts[position] ?? 0),
  }));
}

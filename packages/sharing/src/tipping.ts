import {
  assert,
  assertWhole,
  compareFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  roundFraction,
  subtractFractions,
} from '@sheafbook/units';
import { costOfBags, isBreak, isFreeFrom } from './cost-of-bags.ts';
import type { CostTerms } from './cost-terms.ts';
import { splitByWeight } from './split-by-weight.ts';

/**
 * A larger order than the committed one, and what it does.
 * Units: whole bags; minor units. Shape: `extraCostMinorUnits` is for the whole order and may be negative;
 * `extraPerBag` is the value of a bag at which the extra bags pay for themselves; `saved` is what those
 * already in save together on their bags with a by-weight share of freight, exact and rounded (a half up).
 * Errors: none.
 */
export type Tip = {
  readonly extraBags: number;
  readonly bags: number;
  readonly reachesBreak: boolean;
  readonly reachesFreeFreight: boolean;
  readonly extraCostMinorUnits: number;
  readonly extraPerBag: Fraction;
  readonly saved: Fraction;
  readonly savedMinorUnits: number;
};

/**
 * Finds what a few more bags would do to an order.
 * `tip`: the fewest extra bags with a lower landed cost per bag and a price break or free freight on the way.
 * `freeTip`: the fewest extra bags that cost nothing more in all. `tips`: the first tip, and for each further
 * jump the first order that costs less per bag than the tip before.
 * Units: whole bags; minor units. `upToBags` is how far it looks. Errors: AssertionError when a number is not
 * whole, nothing is committed, or the terms make no sense.
 */
export function findTip(terms: CostTerms & { readonly committedBags: number; readonly upToBags: number }): {
  readonly tip: Tip | null;
  readonly freeTip: Tip | null;
  readonly tips: readonly Tip[];
} {
  const { committedBags, upToBags } = terms;
  assertWhole(committedBags, 'committedBags');
  assertWhole(upToBags, 'upToBags');
  assert(committedBags >= 1, 'a tip needs at least one committed bag');
  const most = Math.min(upToBags, terms.offer.mostBags ?? upToBags);
  const larger: Tip[] = [];
  for (let bags = committedBags + 1; bags <= most; bags += 1)
    larger.push(describeOrder(terms, bags, larger.at(-1)));
  const tips = listTips(terms, larger);
  return {
    tip: tips[0] ?? null,
    freeTip: larger.find((order) => order.extraCostMinorUnits <= 0) ?? null,
    tips,
  };
}

function describeOrder(
  terms: CostTerms & { readonly committedBags: number },
  bags: number,
  oneLess: Tip | undefined,
): Tip {
  const [now, then] = [costOfBags(terms, terms.committedBags), costOfBags(terms, bags)];
  const extraBags = bags - terms.committedBags;
  const saved = subtractFractions(
    now.landed,
    multiplyFractions(then.landed, fraction(terms.committedBags, bags)),
  );
  return {
    extraBags,
    bags,
    reachesBreak: oneLess?.reachesBreak === true || isBreak(terms, bags),
    reachesFreeFreight: oneLess?.reachesFreeFreight === true || isFreeFrom(terms, bags),
    extraCostMinorUnits: then.total - now.total,
    extraPerBag: fraction(then.total - now.total, extraBags),
    saved,
    savedMinorUnits: Number(roundFraction(saved)),
  };
}

/** Saving more than before on the same bags and costing less per bag are the same thing. */
function listTips(terms: CostTerms, larger: readonly Tip[]): Tip[] {
  const tips: Tip[] = [];
  let hasJumped = false;
  for (const order of larger) {
    hasJumped ||= isBreak(terms, order.bags) || isFreeFrom(terms, order.bags);
    if (!hasJumped || compareFractions(order.saved, tips.at(-1)?.saved ?? fraction(0)) <= 0) continue;
    tips.push(order);
    hasJumped = false;
  }
  return tips;
}

/**
 * Shares a tip's saving over those already in, by the mass of their bags.
 * Units: grams in, minor units out. Shape: one amount per household, in the same order; they add up to
 * `savedMinorUnits`. Ties: the odd minor unit goes to the largest remainder, then to the earlier.
 * Errors: AssertionError when a mass is not whole and ≥ 0, none is above 0, or the larger order saves
 * nothing.
 */
export function shareSaving(
  tip: Tip,
  households: readonly { readonly ownerId: string; readonly grams: number }[],
): { readonly ownerId: string; readonly minorUnits: number }[] {
  const parts = splitByWeight(
    tip.savedMinorUnits,
    households.map((household) => household.grams),
  );
  return households.map(({ ownerId }, position) => ({ ownerId, minorUnits: parts[position] ?? 0 }));
}

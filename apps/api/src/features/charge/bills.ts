import { type ChargeTerms, chargeLandedCost, type LandedOwner, landedCostInput } from '@sheafbook/sharing';
import { sumOf } from '@sheafbook/units';
import { Problem } from '../../platform/problem.ts';

/** What suppliers and carriers ask for one line of a buy, or for all of it. Units: minor units. */
export type Bill = {
  readonly kind: 'goods' | 'freight' | 'other';
  readonly buyLineId: string | null;
  readonly minorUnits: number;
};

/** What a claim takes off the bills: all of it while it is open, then what was credited. Units: minor units. */
export type Credit = {
  readonly kind: string;
  readonly buyLineId: string | null;
  readonly minorUnits: number;
};

/** What each owner was awarded of a line, all rounds together. Units: grams. */
export type LineAward = { readonly buyLineId: string; readonly ownerId: string; readonly grams: number };

export type CostFacts = {
  readonly bills: readonly Bill[];
  readonly credits: readonly Credit[];
  /** What withdrawals before the order left of their deposits: it lowers the cost for everyone, by weight. */
  readonly withheldMinorUnits: number;
  readonly awards: readonly LineAward[];
  readonly owners: readonly LandedOwner[];
  readonly terms: ChargeTerms;
  /** What was levied before, when a buy is charged again; reckoned from the goods when left out. */
  readonly levyMinorUnits?: number | undefined;
};

export const goodsKey = (buyLineId: string): string => `goods:${buyLineId}`;

/**
 * Every cost line of a buy, shared among those who bear it by `landedCostInput`: goods less their credits by grams
 * awarded, and what was billed, credited, withheld and levied beside them. A line that nobody can bear is refused,
 * since its cost would stay in the clearing account.
 */
export function chargeBills(facts: CostFacts) {
  const { awards, owners, terms } = facts;
  const input = landedCostInput({
    ...{ goods: goodsLines(facts), owners, terms },
    freightMinorUnits: sumBills(facts, 'freight'),
    otherMinorUnits: sumBills(facts, 'other'),
    orderCreditMinorUnits: sumCreditsOnOrder(facts),
    withheldMinorUnits: facts.withheldMinorUnits,
    levyMinorUnits: facts.levyMinorUnits,
  });
  if (input.others.length > 0 && !awards.some((award) => award.grams > 0))
    throw new Problem('does-not-add-up', {
      detail: 'Nothing has landed that could bear the freight. Claim it back from whoever billed it.',
    });
  return chargeLandedCost(input);
}

function goodsLines({ bills, credits, awards }: CostFacts) {
  const goodsBills = bills.filter((bill) => bill.kind === 'goods');
  const named = [...goodsBills, ...awards].flatMap(({ buyLineId }) => buyLineId ?? []);
  return [...new Set(named)].toSorted().map((buyLineId) => {
    const isOfLine = (row: { readonly buyLineId: string | null }) => row.buyLineId === buyLineId;
    const billed = sumOf(goodsBills.filter(isOfLine).map((bill) => bill.minorUnits));
    const credited = sumOf(credits.filter(isOfLine).map((credit) => credit.minorUnits));
    const lineAwards = awards.filter((award) => isOfLine(award) && award.grams > 0);
    refuseUnbearable({ buyLineId, netMinorUnits: billed - credited, isLanded: lineAwards.length > 0 });
    return { costLineId: goodsKey(buyLineId), netMinorUnits: billed - credited, awards: lineAwards };
  });
}

function refuseUnbearable(line: { buyLineId: string; netMinorUnits: number; isLanded: boolean }): void {
  const { buyLineId, netMinorUnits, isLanded } = line;
  if (netMinorUnits < 0)
    throw new Problem('does-not-add-up', {
      detail: 'More is claimed back for this food than was billed for it.',
      lineId: buyLineId,
      minorUnits: netMinorUnits,
    });
  if (netMinorUnits > 0 && !isLanded)
    throw new Problem('does-not-add-up', {
      detail:
        'Nothing of this food was shared, so nobody can bear what it cost. Claim it back from the supplier; what is not granted falls on those it was promised to.',
      lineId: buyLineId,
      minorUnits: netMinorUnits,
    });
}

/** Freight and other bills less what is claimed back of them. */
function sumBills({ bills, credits }: CostFacts, kind: 'freight' | 'other'): number {
  const billed = sumOf(bills.filter((bill) => bill.kind === kind).map((bill) => bill.minorUnits));
  const credited = kind === 'freight' ? credits.filter(isOnFreight) : [];
  return billed - sumOf(credited.map((credit) => credit.minorUnits));
}

const sumCreditsOnOrder = ({ credits }: CostFacts): number =>
  sumOf(
    credits
      .filter((credit) => credit.buyLineId === null && !isOnFreight(credit))
      .map((credit) => credit.minorUnits),
  );

const isOnFreight = (credit: Credit): boolean => credit.kind === 'freight' && credit.buyLineId === null;

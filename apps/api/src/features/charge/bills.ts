import { chargeLandedCost, type FreightBasis, type LandedOwner, levyMinorUnits } from '@sheafbook/sharing';
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

export type ChargeTerms = {
  readonly freightBasis: string;
  readonly blendNumerator: number;
  readonly blendDenominator: number;
  readonly levyHundredthsOfPercent: number;
};

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
 * Every cost line of a buy, shared among those who bear it: goods less their credits by grams awarded; freight and
 * other bills by the buy's frozen basis; a credit on the order as a whole by the value of goods; the store fund's levy
 * by the value of goods. A line that nobody can bear is refused, since its cost would stay in the clearing account.
 */
export function chargeBills(facts: CostFacts) {
  const { awards, owners, terms } = facts;
  const goods = goodsLines(facts);
  const goodsMinorUnits = sumOf(goods.map((line) => line.netMinorUnits));
  const canBear = {
    byValue: goodsMinorUnits > 0,
    byHousehold: owners.some((owner) => owner.bearsHouseholdPart),
  };
  const bearable = (basis: FreightBasis) => bearableBasis(basis, canBear);
  const basis = bearable(freightBasisOf(terms));
  const byValue = bearable({ kind: 'by-value' });
  const others = [
    { costLineId: lineId('freight', basis), minorUnits: sumBills(facts, 'freight'), basis },
    { costLineId: lineId('other', basis), minorUnits: sumBills(facts, 'other'), basis },
    { costLineId: 'credit', minorUnits: 0 - sumCreditsOnOrder(facts), basis: byValue },
    { costLineId: 'withheld', minorUnits: 0 - facts.withheldMinorUnits, basis: BY_WEIGHT },
    {
      costLineId: 'levy',
      minorUnits: facts.levyMinorUnits ?? levyMinorUnits(goodsMinorUnits, terms.levyHundredthsOfPercent),
      basis: byValue,
    },
  ].filter((line) => line.minorUnits !== 0);
  if (others.length > 0 && !awards.some((award) => award.grams > 0))
    throw new Problem('does-not-add-up', {
      detail: 'Nothing has landed that could bear the freight. Claim it back from whoever billed it.',
    });
  return chargeLandedCost({ owners, goods, others });
}

const BY_WEIGHT: FreightBasis = { kind: 'by-weight' };

/** A blend becomes two lines, named after it by `chargeLandedCost`. */
const lineId = (name: string, basis: FreightBasis): string =>
  basis.kind === 'blend' ? name : `${name}:${basis.kind}`;

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
        'Nothing of this food was shared, so nobody can bear what it cost. Claim it back from the supplier.',
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

export function freightBasisOf({
  freightBasis,
  blendNumerator,
  blendDenominator,
}: ChargeTerms): FreightBasis {
  switch (freightBasis) {
    case 'by-value':
    case 'per-household':
      return { kind: freightBasis };
    case 'blend':
      return { kind: 'blend', numerator: blendNumerator, denominator: blendDenominator };
    default:
      return BY_WEIGHT;
  }
}

/** Where goods cost nothing, or common stock alone took them, a basis that finds nobody falls back to weight. */
function bearableBasis(
  basis: FreightBasis,
  canBear: { byValue: boolean; byHousehold: boolean },
): FreightBasis {
  if (basis.kind === 'by-value' && !canBear.byValue) return BY_WEIGHT;
  const needsHouseholds = basis.kind === 'per-household' || basis.kind === 'blend';
  return needsHouseholds && !canBear.byHousehold ? BY_WEIGHT : basis;
}

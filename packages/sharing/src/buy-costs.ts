import { assert, sumOf } from '@sheafbook/units';
import { levyMinorUnits } from './deposit.ts';
import type {
  FreightBasis,
  GoodsLine,
  LandedCostInput,
  LandedOwner,
  OtherLine,
} from './landed-cost-terms.ts';

/**
 * What a buy is charged by, as a group's rules say it and a buy freezes it. `freightBasis` is the kind of a
 * `FreightBasis`; the blend's part is read for a blend alone.
 * Units: the blend is a pure number from 0 to 1; the levy is hundredths of a per cent. Errors: none.
 */
export type ChargeTerms = {
  readonly freightBasis: string;
  readonly blendNumerator: number;
  readonly blendDenominator: number;
  readonly levyHundredthsOfPercent: number;
};

/**
 * Everything that a buy cost, or is reckoned to cost, before it is shared. A credit on the order as a whole and what
 * withdrawals left of their deposits take off the cost; a levy that was charged before is named, and else reckoned.
 * Units: minor units of one currency; awards in grams. Errors: none.
 */
export type BuyCosts = {
  readonly goods: readonly GoodsLine[];
  readonly owners: readonly LandedOwner[];
  readonly terms: ChargeTerms;
  readonly freightMinorUnits: number;
  readonly otherMinorUnits?: number;
  readonly orderCreditMinorUnits?: number;
  readonly withheldMinorUnits?: number;
  readonly levyMinorUnits?: number | undefined;
};

const BY_WEIGHT: FreightBasis = { kind: 'by-weight' };

/**
 * The one question that charges, estimates and comparisons of a buy ask `chargeLandedCost`: goods by grams awarded;
 * freight and other bills by the terms' basis; a credit on the order and the levy by the value of goods; withheld
 * deposits by weight. Where goods cost nothing, or no household bears a part, a basis that finds nobody falls back to
 * weight, and the line is named after the basis it is shared by. Lines of 0 are left out.
 * Units: as `BuyCosts`. Errors: AssertionError when the terms name an unknown basis, or the goods come to less than 0.
 */
export function landedCostInput(costs: BuyCosts): LandedCostInput {
  const { goods, owners, terms } = costs;
  const goodsMinorUnits = sumOf(goods.map((line) => line.netMinorUnits));
  const canBear = {
    byValue: goodsMinorUnits > 0,
    byHousehold: owners.some((owner) => owner.bearsHouseholdPart),
  };
  const basis = bearableBasis(freightBasisOf(terms), canBear);
  const byValue = bearableBasis({ kind: 'by-value' }, canBear);
  const levy = costs.levyMinorUnits ?? levyMinorUnits(goodsMinorUnits, terms.levyHundredthsOfPercent);
  const others: OtherLine[] = [
    { costLineId: lineId('freight', basis), minorUnits: costs.freightMinorUnits, basis },
    { costLineId: lineId('other', basis), minorUnits: costs.otherMinorUnits ?? 0, basis },
    { costLineId: 'credit', minorUnits: 0 - (costs.orderCreditMinorUnits ?? 0), basis: byValue },
    { costLineId: 'withheld', minorUnits: 0 - (costs.withheldMinorUnits ?? 0), basis: BY_WEIGHT },
    { costLineId: 'levy', minorUnits: levy, basis: byValue },
  ];
  return { owners, goods, others: others.filter((line) => line.minorUnits !== 0) };
}

/** A blend becomes two lines, named after it by `chargeLandedCost`. */
const lineId = (name: string, basis: FreightBasis): string =>
  basis.kind === 'blend' ? name : `${name}:${basis.kind}`;

function freightBasisOf({ freightBasis, blendNumerator, blendDenominator }: ChargeTerms): FreightBasis {
  switch (freightBasis) {
    case 'by-value':
    case 'per-household':
      return { kind: freightBasis };
    case 'blend':
      return { kind: 'blend', numerator: blendNumerator, denominator: blendDenominator };
    default:
      assert(freightBasis === BY_WEIGHT.kind, 'the terms name one of the four bases');
      return BY_WEIGHT;
  }
}

function bearableBasis(
  basis: FreightBasis,
  canBear: { readonly byValue: boolean; readonly byHousehold: boolean },
): FreightBasis {
  if (basis.kind === 'by-value' && !canBear.byValue) return BY_WEIGHT;
  const needsHouseholds = basis.kind === 'per-household' || basis.kind === 'blend';
  return needsHouseholds && !canBear.byHousehold ? BY_WEIGHT : basis;
}

/**
 * Everyone who may be charged for a buy: whoever was awarded something, and a household that withdrew after the
 * order, which still bears its part per household. Common stock, and who stepped into another's place, bear none of
 * that.
 * Units: grams. Shape: each owner once, awards in the order given, then those who withdrew. Errors: none.
 */
export function listBearers(facts: {
  readonly awards: readonly { readonly ownerId: string; readonly grams: number }[];
  readonly commonId: string;
  readonly seatOf: (ownerId: string) => number;
  readonly withdrawnIds?: readonly string[];
  readonly standInIds?: readonly string[];
}): LandedOwner[] {
  const { awards, commonId, seatOf, withdrawnIds = [], standInIds = [] } = facts;
  const awarded = awards.filter((award) => award.grams > 0).map((award) => award.ownerId);
  return [...new Set([...awarded, ...withdrawnIds])].map((ownerId) => {
    const isHousehold = ownerId !== commonId;
    const bearsHouseholdPart = isHousehold && !standInIds.includes(ownerId);
    return { ownerId, seat: seatOf(ownerId), isHousehold, bearsHouseholdPart };
  });
}

import { chargeLandedCost, type FreightBasis, type LandedOwner, levyMinorUnits } from '@sheafbook/sharing';
import { sumOf } from '@sheafbook/units';
import type { BuyFill } from './answer.ts';

/** What the charges of a buy are reckoned by: the part of the group's rules that a buy freezes when it is fixed. */
export type ChargeRules = {
  readonly freightBasis: string;
  readonly blendNumerator: number;
  readonly blendDenominator: number;
  readonly levyHundredthsOfPercent: number;
};

export function freightBasisOf({
  freightBasis,
  blendNumerator,
  blendDenominator,
}: ChargeRules): FreightBasis {
  switch (freightBasis) {
    case 'by-value':
    case 'per-household':
      return { kind: freightBasis };
    case 'blend':
      return { kind: 'blend', numerator: blendNumerator, denominator: blendDenominator };
    default:
      return { kind: 'by-weight' };
  }
}

/** One owner's estimated charge, and of it the goods on each line. Units: minor units. */
export type OwnerEstimate = {
  readonly ownerId: string;
  readonly minorUnits: number;
  readonly goods: ReadonlyMap<string, number>;
};

export type Estimates = {
  readonly goodsMinorUnits: number;
  readonly freightMinorUnits: number;
  readonly levyMinorUnits: number;
  readonly totalMinorUnits: number;
  /** In seat order, common stock last; the estimates add up to the total. */
  readonly owners: readonly OwnerEstimate[];
};

/** Grams above 0 promised of each line, owner by owner; common stock is an owner like any other. */
export type Awards = readonly {
  readonly lineId: string;
  readonly goodsMinorUnits: number;
  readonly awards: readonly { readonly ownerId: string; readonly grams: number }[];
}[];

export function awardsOf(fill: BuyFill, commonOwnerId: string): Awards {
  return fill.lines.map(({ lineId, goodsMinorUnits, pledges, commonGrams }) => ({
    lineId,
    goodsMinorUnits,
    awards: [
      ...pledges.map(({ householdId, grams }) => ({ ownerId: householdId, grams })),
      { ownerId: commonOwnerId, grams: commonGrams },
    ].filter((award) => award.grams > 0),
  }));
}

/**
 * What each household would be charged if everything came as promised, by the very sums that will charge it: goods by
 * grams, freight of all suppliers together by the rules' basis, the store fund's levy by the value of goods.
 */
export function estimateCharges(
  awards: Awards,
  terms: {
    readonly freightMinorUnits: number;
    readonly rules: ChargeRules;
    readonly seats: ReadonlyMap<string, number>;
    readonly commonOwnerId: string;
  },
): Estimates {
  const { freightMinorUnits, rules, commonOwnerId } = terms;
  const bought = awards.filter((line) => line.awards.length > 0);
  const goods = sumOf(bought.map((line) => line.goodsMinorUnits));
  const levy = levyMinorUnits(goods, rules.levyHundredthsOfPercent);
  const charged = chargeLandedCost({
    owners: listOwners(bought, terms),
    goods: bought.map(({ lineId, goodsMinorUnits, awards: shares }) => ({
      costLineId: `goods:${lineId}`,
      netMinorUnits: goodsMinorUnits,
      awards: shares,
    })),
    others: [
      { costLineId: 'freight', minorUnits: freightMinorUnits, basis: freightBasisOf(rules) },
      { costLineId: 'levy', minorUnits: levy, basis: { kind: 'by-value' } },
    ],
  });
  const goodsOf = (ownerId: string) =>
    new Map(
      bought.map(({ lineId }, position) => {
        const share = charged.lines[position]?.shares.find((known) => known.ownerId === ownerId);
        return [lineId, share?.minorUnits ?? 0] as const;
      }),
    );
  return {
    goodsMinorUnits: goods,
    freightMinorUnits,
    levyMinorUnits: levy,
    totalMinorUnits: goods + freightMinorUnits + levy,
    owners: charged.totals
      .filter(({ ownerId, minorUnits }) => ownerId !== commonOwnerId || minorUnits > 0)
      .map(({ ownerId, minorUnits }) => ({ ownerId, minorUnits, goods: goodsOf(ownerId) })),
  };
}

/** Everyone with an award. Common stock stands after the last seat, so that it never takes an odd cent from one. */
function listOwners(
  awards: Awards,
  { seats, commonOwnerId }: { seats: ReadonlyMap<string, number>; commonOwnerId: string },
): LandedOwner[] {
  const holding = awards.flatMap((line) => line.awards.map((award) => award.ownerId));
  const ownerIds = [...new Set([...holding, commonOwnerId])];
  const lastSeat = Math.max(0, ...seats.values());
  return ownerIds.map((ownerId) => {
    const isHousehold = ownerId !== commonOwnerId;
    const seat = seats.get(ownerId) ?? lastSeat + 1;
    return { ownerId, seat, isHousehold, bearsHouseholdPart: isHousehold };
  });
}

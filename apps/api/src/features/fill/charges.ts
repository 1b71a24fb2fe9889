import {
  type ChargeTerms,
  chargeLandedCost,
  landedCostInput,
  levyMinorUnits,
  listBearers,
} from '@sheafbook/sharing';
import { sumOf } from '@sheafbook/units';
import type { BuyFill } from './answer.ts';

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
 * What each household would be charged if everything came as promised, by the very sums that will charge it: the
 * freight of all suppliers together is one line, as their bills will be.
 */
export function estimateCharges(
  awards: Awards,
  terms: {
    readonly freightMinorUnits: number;
    readonly rules: ChargeTerms;
    readonly seats: ReadonlyMap<string, number>;
    readonly commonOwnerId: string;
  },
): Estimates {
  const { freightMinorUnits, rules, seats, commonOwnerId } = terms;
  const bought = awards.filter((line) => line.awards.length > 0);
  const goods = sumOf(bought.map((line) => line.goodsMinorUnits));
  const levy = levyMinorUnits(goods, rules.levyHundredthsOfPercent);
  const lastSeat = Math.max(0, ...seats.values());
  const charged = chargeLandedCost(
    landedCostInput({
      goods: bought.map(({ lineId, goodsMinorUnits, awards: shares }) => ({
        costLineId: `goods:${lineId}`,
        netMinorUnits: goodsMinorUnits,
        awards: shares,
      })),
      owners: listBearers({
        awards: bought.flatMap((line) => line.awards),
        commonId: commonOwnerId,
        seatOf: (ownerId) => seats.get(ownerId) ?? lastSeat + 1, // common stock, after the last seat
      }),
      terms: rules,
      freightMinorUnits,
      levyMinorUnits: levy,
    }),
  );
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

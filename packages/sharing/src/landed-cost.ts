import { assert, assertWhole } from '@sheafbook/units';
import { shareLine, type WeighedOwner } from './landed-cost-line.ts';
import type {
  ChargedLine,
  GoodsLine,
  LandedCostInput,
  LandedOwner,
  LandedTotal,
  OtherLine,
} from './landed-cost-terms.ts';

/**
 * Charges what a buy cost to its owners, line by line: each line is shared by largest remainder, and an owner's total is
 * the sum of its shares, so totals add up to the bills to the last minor unit. Goods go by grams awarded; every other
 * line by its own basis. A blend becomes two lines, `<id>:by-weight` with the rounded-down part and `<id>:per-household`.
 * Units: minor units of one currency; grams. Shape: lines in the order given, goods first; shares and totals in seat
 * order, one for each owner also when it is 0.
 * Ties: the odd minor unit goes to the largest remainder, then to the lower seat. A negative line is shared as its
 * absolute amount and negated.
 * Errors: AssertionError when a number is not whole, a seat, owner or line comes twice, an award names an unknown
 * owner, a per-household part falls on no household, or a line other than 0 has nobody to bear it.
 * Source: the sharing of freight by weight agrees with published joint-cost examples (see the tests).
 */
export function chargeLandedCost(input: LandedCostInput): {
  readonly lines: readonly ChargedLine[];
  readonly totals: readonly LandedTotal[];
} {
  checkOwners(input.owners);
  const owners = input.owners.toSorted((a, b) => a.seat - b.seat);
  for (const line of input.goods) checkGoods(line, owners);
  const goods = input.goods.map((line) => chargeGoods(line, owners));
  const gramsOf = sumByOwner(
    input.goods.flatMap((line) => line.awards),
    (award) => award.grams,
  );
  const valuesOf = sumByOwner(
    goods.flatMap((line) => line.shares),
    (share) => share.minorUnits,
  );
  const others = input.others.flatMap((line) => chargeOther(line, { owners, gramsOf, valuesOf }));
  const lines = [...goods, ...others];
  assert(new Set(lines.map((line) => line.costLineId)).size === lines.length, 'two cost lines have one id');
  const totalsOf = sumByOwner(
    lines.flatMap((line) => line.shares),
    (share) => share.minorUnits,
  );
  return {
    lines,
    totals: owners.map(({ ownerId }) => ({ ownerId, minorUnits: totalsOf.get(ownerId) ?? 0 })),
  };
}

type Bearers = {
  readonly owners: readonly LandedOwner[];
  readonly gramsOf: ReadonlyMap<string, number>;
  readonly valuesOf: ReadonlyMap<string, number>;
};

function chargeGoods({ costLineId, netMinorUnits, awards }: GoodsLine, owners: readonly LandedOwner[]) {
  const gramsOf = sumByOwner(awards, (award) => award.grams);
  return shareLine(
    costLineId,
    netMinorUnits,
    weigh(owners, (owner) => gramsOf.get(owner.ownerId) ?? 0),
  );
}

function chargeOther({ costLineId, minorUnits, basis }: OtherLine, bearers: Bearers): ChargedLine[] {
  const { owners, gramsOf, valuesOf } = bearers;
  const byWeight = weigh(owners, (owner) => gramsOf.get(owner.ownerId) ?? 0);
  const byHousehold = weigh(owners, (owner) => (owner.bearsHouseholdPart ? 1 : 0));
  switch (basis.kind) {
    case 'by-weight':
      return [shareLine(costLineId, minorUnits, byWeight)];
    case 'by-value': {
      const byValue = weigh(owners, (owner) => valuesOf.get(owner.ownerId) ?? 0);
      return [shareLine(costLineId, minorUnits, byValue)];
    }
    case 'per-household':
      return [shareLine(costLineId, minorUnits, byHousehold)];
    case 'blend': {
      const weightPart = partByWeight(minorUnits, basis);
      return [
        shareLine(`${costLineId}:by-weight`, weightPart, byWeight),
        shareLine(`${costLineId}:per-household`, minorUnits - weightPart, byHousehold),
      ];
    }
  }
}

function weigh(owners: readonly LandedOwner[], weightOf: (owner: LandedOwner) => number): WeighedOwner[] {
  return owners.map((owner) => ({ ownerId: owner.ownerId, weight: weightOf(owner) }));
}

function partByWeight(
  minorUnits: number,
  { numerator, denominator }: { readonly numerator: number; readonly denominator: number },
): number {
  assertWhole(numerator, 'the numerator of a blend');
  assertWhole(denominator, 'the denominator of a blend');
  assert(denominator > 0 && numerator <= denominator, 'a blend lies between 0 and 1');
  const size = (BigInt(Math.abs(minorUnits)) * BigInt(numerator)) / BigInt(denominator);
  return Number(minorUnits < 0 ? -size : size); // the sign on the bigint, which knows no -0
}

function sumByOwner<Row extends { readonly ownerId: string }>(
  rows: readonly Row[],
  amountOf: (row: Row) => number,
): Map<string, number> {
  const sums = new Map<string, number>();
  for (const row of rows) sums.set(row.ownerId, (sums.get(row.ownerId) ?? 0) + amountOf(row));
  return sums;
}

function checkOwners(owners: readonly LandedOwner[]): void {
  for (const owner of owners) {
    assertWhole(owner.seat, 'seat');
    assert(owner.isHousehold || !owner.bearsHouseholdPart, 'only a household bears a per-household part');
  }
  assert(new Set(owners.map((owner) => owner.seat)).size === owners.length, 'two owners have one seat');
  assert(new Set(owners.map((owner) => owner.ownerId)).size === owners.length, 'an owner is listed twice');
}

function checkGoods(line: GoodsLine, owners: readonly LandedOwner[]): void {
  assertWhole(line.netMinorUnits, 'netMinorUnits');
  for (const award of line.awards) {
    assertWhole(award.grams, 'grams');
    assert(
      owners.some((owner) => owner.ownerId === award.ownerId),
      `${line.costLineId} is awarded to ${award.ownerId}, who is not among the owners`,
    );
  }
}

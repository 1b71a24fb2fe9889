import { assertWhole, fraction, roundFraction, subtractFractions, sumFractions } from '@sheafbook/units';
import { assertUnitPrice, type UnitPrice } from './unit-price.ts';

/**
 * One food of a buy with some household's pledges in it, and filled again without them. `othersGrams` is what everybody
 * else got. A price is null where the food is not bought at all.
 * Units: grams; minor units for grams: `landed` is goods and freight, `freight` the part of it that is freight.
 * Errors: none.
 */
export type EffectLine = {
  readonly lineId: string;
  readonly othersGrams: number;
  readonly withIt: { readonly landed: UnitPrice; readonly freight: UnitPrice } | null;
  readonly without: { readonly landed: UnitPrice; readonly freight: UnitPrice } | null;
};

/**
 * What a household's pledges did for all others (job map 16, number 15): what their food would have cost them more
 * without it, at the landed price of the bags filled again, and how much of that is freight. Below zero they would have
 * paid less. A food that would not be bought without the pledges counts for nothing and is named.
 * Units: minor units, rounded once over all foods, a half up. Shape: one row a food, in the order given; the rows are
 * rounded each by themselves and need not add up to the sums.
 * Errors: AssertionError when grams are not whole and ≥ 0 or a price makes no sense.
 */
export function pledgeEffect(lines: readonly EffectLine[]): {
  readonly savedMinorUnits: number;
  readonly freightSavedMinorUnits: number;
  readonly lines: readonly {
    readonly lineId: string;
    readonly savedMinorUnits: number;
    readonly isBoughtOnlyWithIt: boolean;
  }[];
} {
  const rows = lines.map((line) => ({
    lineId: line.lineId,
    saved: difference(line, 'landed'),
    freight: difference(line, 'freight'),
    isBoughtOnlyWithIt: line.withIt !== null && line.without === null,
  }));
  return {
    savedMinorUnits: Number(roundFraction(sumFractions(rows.map((row) => row.saved)))),
    freightSavedMinorUnits: Number(roundFraction(sumFractions(rows.map((row) => row.freight)))),
    lines: rows.map(({ lineId, saved, isBoughtOnlyWithIt }) => ({
      lineId,
      savedMinorUnits: Number(roundFraction(saved)),
      isBoughtOnlyWithIt,
    })),
  };
}

function difference({ othersGrams, withIt, without }: EffectLine, part: 'landed' | 'freight') {
  assertWhole(othersGrams, 'othersGrams');
  if (withIt === null || without === null) return fraction(0);
  return subtractFractions(costOf(without[part], othersGrams), costOf(withIt[part], othersGrams));
}

function costOf(price: UnitPrice, grams: number) {
  assertUnitPrice(price);
  return fraction(BigInt(price.minorUnits) * BigInt(grams), price.grams);
}

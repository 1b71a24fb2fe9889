import { ceilFraction, type Fraction, fraction, sumFractions } from '@sheafbook/units';
import { type DaysCovered, daysCovered } from './days-covered.ts';
import type { EaterRate, EdibleLot } from './edible-stock.ts';
import type { FoodGroupCode } from './food-group.ts';
import { type GapPiece, gapAt, gapPieces } from './gap-pieces.ts';
import { amountOf, isPast } from './larder.ts';

/**
 * Coverage of one food group: what daysCovered says of it, and what is lacking to the target.
 * Units: grams; `needGramsPerDay` exact; `stockGrams` is all that is not past its last day, of which nobody here may
 * eat `nobodyMayEatGrams`; `gapGrams` is rounded up, of food that every eater may eat and that keeps to the target;
 * `gapPieces` says the same for every day before. Shape: `isTargeted` when the household counts the group and
 * somebody needs it. Errors: none by itself.
 */
export type GroupCoverage = DaysCovered & {
  readonly group: FoodGroupCode;
  readonly isTargeted: boolean;
  readonly needGramsPerDay: Fraction;
  readonly stockGrams: number;
  readonly nobodyMayEatGrams: number;
  readonly gapGrams: number;
  readonly gapPieces: readonly GapPiece[];
};

/**
 * Covers one food group, for householdCoverage.
 * Units: grams, rates in grams a day; see GroupCoverage. Errors: as daysCovered.
 */
export function coverGroup(input: {
  readonly group: FoodGroupCode;
  readonly rates: readonly EaterRate[];
  readonly lots: readonly EdibleLot[];
  readonly targetDays: number;
  readonly isWanted: boolean;
}): GroupCoverage {
  const { group, rates, lots, targetDays } = input;
  const covered = daysCovered({ rates, lots });
  const pieces = gapPieces({ rates, lots }, targetDays);
  const needGramsPerDay = sumFractions(rates.map(({ perDay }) => perDay));
  const usable = lots.filter((lot) => !isPast(lot));
  return {
    ...covered,
    group,
    isTargeted: input.isWanted && needGramsPerDay.numerator > 0n,
    needGramsPerDay,
    stockGrams: sumGrams(usable),
    nobodyMayEatGrams: sumGrams(usable.filter(({ eaterIds }) => eaterIds.length === 0)),
    gapGrams: Number(ceilFraction(gapAt(pieces, fraction(targetDays)))),
    gapPieces: pieces,
  };
}

function sumGrams(lots: readonly EdibleLot[]): number {
  return Number(ceilFraction(sumFractions(lots.map(amountOf))));
}

import {
  addFractions,
  assert,
  assertWhole,
  compareFractions,
  divideFractions,
  type Fraction,
  fraction,
} from '@sheafbook/units';
import type { Days } from './days.ts';
import type { FoodGroupCode } from './food-group.ts';
import type { GapPiece } from './gap-pieces.ts';

/**
 * What a household needs of a food group and holds of it. `gapPieces`, from householdCoverage for the same target,
 * says what is lacking when diets or last days bind; without them it is the need less the stock.
 * Units: exact grams a day, whole grams. Errors: none by itself.
 */
export type GroupGap = {
  readonly group: FoodGroupCode;
  readonly needGramsPerDay: Fraction;
  readonly stockGrams: number;
  readonly gapPieces?: readonly GapPiece[];
};

/** The pieces of a group's gap; a group that nobody needs has none and never limits. Units: grams. Errors: none. */
export function piecesOf(gap: GroupGap): readonly GapPiece[] {
  if (gap.gapPieces) return gap.gapPieces;
  if (gap.needGramsPerDay.numerator === 0n) return [];
  return [{ gramsPerDay: gap.needGramsPerDay, coveredGrams: fraction(gap.stockGrams) }];
}

/** How long a group lasts with some grams more, of food that all may eat. Units: exact grams and days. Errors: none. */
export function daysWith(pieces: readonly GapPiece[], moreGrams: Fraction): Days {
  return pieces.reduce<Days>((least, { gramsPerDay, coveredGrams }) => {
    const days = divideFractions(addFractions(coveredGrams, moreGrams), gramsPerDay);
    return least === 'no-end' || compareFractions(days, least) < 0 ? days : least;
  }, 'no-end');
}

/** Units: as in GroupGap. Errors: AssertionError when a group stands twice, or a need or stock makes no sense. */
export function assertGaps(groups: readonly GroupGap[]): void {
  assert(new Set(groups.map(({ group }) => group)).size === groups.length, 'a group stands once');
  for (const { group, needGramsPerDay, stockGrams } of groups) {
    assertWhole(stockGrams, `stockGrams of ${group}`);
    assert(needGramsPerDay.numerator >= 0n, `${group} needs less than nothing`);
  }
}

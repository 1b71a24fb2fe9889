import {
  asFraction,
  assert,
  BUSHEL_WEIGHTS,
  divideFractions,
  type Fraction,
  fraction,
  fractionToNumber,
  kilogramsPerCubicMetre,
  MILLILITRES_PER_UNIT,
  multiplyFractions,
  roundFraction,
} from '@sheafbook/units';
import { CUP_SOURCE } from './composition-table.ts';
import type { BulkDensity } from './food.ts';

/**
 * Bulk density from what a level, unshaken US cup weighs, rounded to three decimals.
 * Units: grams per US cup in, milligrams per millilitre out (the same figure as kg/m³).
 * Errors: AssertionError when the figure is not finite.
 */
export function bulkFromCup(gramsPerCup: number): number {
  const gramsPerMillilitre = divideFractions(asFraction(gramsPerCup), MILLILITRES_PER_UNIT['us-cup']);
  return toThreeDecimals(multiplyFractions(gramsPerMillilitre, fraction(1000)));
}

/**
 * Bulk density from a test weight by plain division, rounded to three decimals; not the certificate's kg/hL.
 * Units: pounds per US bushel in, milligrams per millilitre out (the same figure as kg/m³).
 * Errors: AssertionError when the figure is not finite.
 */
export function bulkFromTestWeight(poundsPerBushel: number): number {
  return toThreeDecimals(kilogramsPerCubicMetre(poundsPerBushel));
}

function toThreeDecimals(value: Fraction): number {
  return fractionToNumber(fraction(roundFraction(multiplyFractions(value, fraction(1000))), 1000));
}

// Foods whose cup the table does not weigh, but whose grain is traded by the bushel.
const GRAIN_OF_FOOD: Readonly<Record<string, string>> = {
  'wheat-soft-red-winter': 'wheat',
  'wheat-soft-white': 'wheat',
  'wheat-durum': 'wheat',
  sorghum: 'sorghum',
};

const UNKNOWN_BECAUSE: Readonly<Record<string, string>> = {
  bulgur: 'unknown: no cup weight for this row and no bushel weight; weigh a level container',
  pasta: 'unknown: it depends on the shape of the pasta; weigh a level container',
  'oil-canola': 'unknown: no cup weight for this row; weigh a full container',
};

/**
 * The bulk density of a reference food with where it comes from: its cup, else its grain's bushel, else the reason why
 * there is none.
 * Units: grams per US cup in, as `BulkDensity` out. Errors: AssertionError when a food has neither figure nor reason.
 */
export function bulkDensityOf(foodCode: string, gramsPerCup: number | null): BulkDensity {
  if (gramsPerCup !== null) {
    return {
      bulkMilligramsPerMillilitre: bulkFromCup(gramsPerCup),
      bulkBasis: 'cup',
      bulkSource: CUP_SOURCE,
    };
  }
  const weight = BUSHEL_WEIGHTS.find((row) => row.grain === GRAIN_OF_FOOD[foodCode]);
  if (!weight) {
    const reason = UNKNOWN_BECAUSE[foodCode];
    assert(reason, `${foodCode} has no bulk density and no reason`);
    return { bulkMilligramsPerMillilitre: null, bulkBasis: null, bulkSource: reason };
  }
  return {
    bulkMilligramsPerMillilitre: bulkFromTestWeight(weight.poundsPerBushel),
    bulkBasis: 'test-weight',
    bulkSource: `${weight.poundsPerBushel} lb/bu by plain division; ${weight.source}`,
  };
}

/**
 * A bulk density as it is kept, in whole micrograms, as the sums read it; null where nobody knows it.
 * Units: micrograms per millilitre in, milligrams per millilitre out. Errors: none.
 */
export const bulkOf = (kept: { readonly bulkMicrogramsPerMillilitre: number | null }) => ({
  bulkMilligramsPerMillilitre:
    kept.bulkMicrogramsPerMillilitre === null ? null : kept.bulkMicrogramsPerMillilitre / 1000,
});

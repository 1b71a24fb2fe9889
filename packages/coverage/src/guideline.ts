import {
  divideFractions,
  type Fraction,
  fraction,
  GRAMS_PER_UNIT,
  multiplyFractions,
} from '@sheafbook/units';
import type { FoodGroupCode } from './food-group.ts';

/**
 * How much of a food group one adult is reckoned to need in a year. A household may edit every figure.
 * Units: exact fractions of a pound and of a gram. Errors: none by itself.
 */
export type GuidelineRow = {
  readonly group: FoodGroupCode;
  readonly poundsPerAdultYear: Fraction;
  readonly gramsPerAdultYear: Fraction;
  readonly source: string;
  readonly note: string;
};

const REPRINT = 'a reprinted home-storage guideline of 2006; a planning convention, not a nutrition standard';

/** Ten quarts are forty cups; a cup of soybean oil is 218 g. Source: NIST Handbook 44; USDA SR weight file, NDB 04044. */
const OIL_GRAMS = fraction(40 * 218);

/**
 * The guideline that coverage by mass starts from.
 * Units: pounds and grams for one adult and year. Errors: none.
 * Source: beside each row.
 */
export const GUIDELINE: readonly GuidelineRow[] = [
  byPounds(
    'grains',
    400,
    'Wheat, flour, rice, corn, oats and pasta together. A lower published variant says 300 lb.',
  ),
  byPounds('legumes', 60, ''),
  byPounds(
    'dried-milk',
    16,
    'About a glass a day. Children and nursing mothers need more than the age share, not less.',
  ),
  {
    group: 'fats',
    poundsPerAdultYear: divideFractions(OIL_GRAMS, GRAMS_PER_UNIT.lb),
    gramsPerAdultYear: OIL_GRAMS,
    source: `${REPRINT} (10 quarts of oil), as mass by the cup weight of soybean oil in the USDA SR weight file`,
    note: 'A variant of the same guideline says 25 lb of oil.',
  },
  byPounds('sugars', 60, 'Sugar or honey.'),
  byPounds('salt', 8, ''),
];

/**
 * A guideline row from a figure in pounds, such as one a household typed in.
 * Units: whole pounds for one adult and year. Errors: RangeError when the pounds are not whole.
 */
export function guidelineRow(row: {
  readonly group: FoodGroupCode;
  readonly pounds: number;
  readonly source: string;
  readonly note?: string;
}): GuidelineRow {
  const pounds = fraction(row.pounds);
  const gramsPerAdultYear = multiplyFractions(pounds, GRAMS_PER_UNIT.lb);
  return {
    group: row.group,
    poundsPerAdultYear: pounds,
    gramsPerAdultYear,
    source: row.source,
    note: row.note ?? '',
  };
}

function byPounds(group: FoodGroupCode, pounds: number, note: string): GuidelineRow {
  return guidelineRow({ group, pounds, source: REPRINT, note });
}

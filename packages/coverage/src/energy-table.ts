import type { Activity } from './eater.ts';

/** Kilocalories a day when sedentary, moderately active, active. */
type ByActivity = readonly [sedentary: number, moderate: number, active: number];

/**
 * One age band of the table of energy needs.
 * Units: completed years, inclusive, and kilocalories a day. Errors: none by itself.
 */
export type EnergyRow = {
  readonly fromAge: number;
  readonly toAge: number;
  readonly male: ByActivity;
  readonly female: ByActivity;
  readonly source: string;
  readonly conflict: string;
};

/**
 * One age of the table for toddlers, who have no column by activity.
 * Units: completed months and kilocalories a day. Errors: none by itself.
 */
export type ToddlerRow = { readonly fromMonths: number; readonly male: number; readonly female: number };

const A2_2 = 'Dietary Guidelines for Americans 2020-2025 (USDA and HHS), appendix 2, table A2-2';
const READ = `${A2_2}; ages 2 to 20 carry the values of table A2-1 of the 2015 edition`;
const COPIED = `${A2_2}; adult rows from memory, agreeing cell by cell with a transcription of the printed appendix`;

/**
 * Estimated energy need by age, sex and activity, ages 2 and over; rounded to 200 kcal by its authors, for a
 * reference man of 5 ft 10 in and 154 lb and a reference woman of 5 ft 4 in and 126 lb, not for pregnancy or nursing.
 * Units: kilocalories a day. Errors: none. Source: beside each row, with what disagrees.
 */
export const ENERGY_TABLE: readonly EnergyRow[] = [
  row([2, 2], [1000, 1000, 1000], [1000, 1000, 1000]),
  row([3, 3], [1000, 1400, 1400], [1000, 1200, 1400]),
  row([4, 4], [1200, 1400, 1600], [1200, 1400, 1400]),
  row([5, 5], [1200, 1400, 1600], [1200, 1400, 1600]),
  row([6, 6], [1400, 1600, 1800], [1200, 1400, 1600]),
  row([7, 7], [1400, 1600, 1800], [1200, 1600, 1800]),
  row([8, 8], [1400, 1600, 2000], [1400, 1600, 1800]),
  row([9, 9], [1600, 1800, 2000], [1400, 1600, 1800]),
  row([10, 10], [1600, 1800, 2200], [1400, 1800, 2000]),
  row([11, 11], [1800, 2000, 2200], [1600, 1800, 2000]),
  row([12, 12], [1800, 2200, 2400], [1600, 2000, 2200]),
  row([13, 13], [2000, 2200, 2600], [1600, 2000, 2200]),
  row([14, 14], [2000, 2400, 2800], [1800, 2000, 2400]),
  row([15, 15], [2200, 2600, 3000], [1800, 2000, 2400]),
  row([16, 18], [2400, 2800, 3200], [1800, 2000, 2400]),
  row([19, 20], [2600, 2800, 3000], [2000, 2200, 2400]),
  row([21, 25], [2400, 2800, 3000], [2000, 2200, 2400]),
  {
    ...row([26, 30], [2400, 2600, 3000], [1800, 2000, 2400]),
    conflict:
      'One chart of no authority shows sedentary women at 2000; the transcription and two texts say 1800.',
  },
  row([31, 35], [2400, 2600, 3000], [1800, 2000, 2200]),
  row([36, 40], [2400, 2600, 2800], [1800, 2000, 2200]),
  row([41, 45], [2200, 2600, 2800], [1800, 2000, 2200]),
  row([46, 50], [2200, 2400, 2800], [1800, 2000, 2200]),
  row([51, 55], [2200, 2400, 2800], [1600, 1800, 2200]),
  row([56, 60], [2200, 2400, 2600], [1600, 1800, 2200]),
  row([61, 65], [2000, 2400, 2600], [1600, 1800, 2000]),
  row([66, 70], [2000, 2200, 2600], [1600, 1800, 2000]),
  {
    ...row([71, 75], [2000, 2200, 2600], [1600, 1800, 2000]),
    conflict: 'One chart of no authority shows active men at 2400; the transcription says 2600.',
  },
  row([76, Number.POSITIVE_INFINITY], [2000, 2200, 2400], [1600, 1800, 2000]),
];

/**
 * Estimated energy need in the second year, by completed months; nothing is held for the first.
 * Units: kilocalories a day. Errors: none.
 * Source: the same appendix, table A2-1, from memory, agreeing with a transcription of the printed appendix.
 */
export const TODDLER_TABLE: readonly ToddlerRow[] = [
  { fromMonths: 12, male: 800, female: 800 },
  { fromMonths: 15, male: 900, female: 800 },
  { fromMonths: 18, male: 1000, female: 900 },
  { fromMonths: 21, male: 1000, female: 1000 },
];

/** The place of an activity in a row of the table. Units: none. Errors: none. */
export const ACTIVITY_COLUMN: Readonly<Record<Activity, 0 | 1 | 2>> = {
  sedentary: 0,
  moderate: 1,
  active: 2,
};

function row([fromAge, toAge]: readonly [number, number], male: ByActivity, female: ByActivity): EnergyRow {
  return { fromAge, toAge, male, female, source: toAge <= 20 ? READ : COPIED, conflict: '' };
}

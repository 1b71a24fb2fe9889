import { compareFractions, type Fraction, floorFraction } from '@sheafbook/units';

/** Exact days, or that nothing is eaten and so nothing ends. Units: days. Errors: none. */
export type Days = Fraction | 'no-end';

/** Whole days that are certain, for display; null when there is no end. Units: days. Errors: none. */
export function wholeDaysOf(days: Days): number | null {
  return days === 'no-end' ? null : Number(floorFraction(days));
}

/** Orders days, no end being the longest. Units: days. Errors: none. */
export function compareDays(a: Days, b: Days): number {
  if (a === 'no-end' || b === 'no-end') return Number(a === 'no-end') - Number(b === 'no-end');
  return compareFractions(a, b);
}

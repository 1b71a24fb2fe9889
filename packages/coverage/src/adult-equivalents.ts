import {
  addFractions,
  assert,
  assertWhole,
  type Fraction,
  fraction,
  multiplyFractions,
} from '@sheafbook/units';
import { type Age, ageOn } from './age.ts';
import type { EaterFacts } from './eater.ts';

/** What of an eater the share of an adult's ration depends on. Units: as in EaterFacts. Errors: none by itself. */
export type AgedEater = Pick<EaterFacts, 'birthOn' | 'presentPercent'>;

/** Whether each child's age is taken a year later, since children grow while the stock lasts. Units: none. Errors: none. */
export type AdultEquivalentOptions = { readonly addYear?: boolean };

/**
 * The share of an adult's ration by completed years, an upper age at a time.
 * Units: shares of one adult's ration. Errors: none.
 * Source: age fractions of a reprinted home-storage guideline of 2006; a planning convention, not a nutrition standard.
 */
export const AGE_SHARES: readonly { readonly toAge: number; readonly share: Fraction }[] = [
  { toAge: 3, share: fraction(1, 2) },
  { toAge: 6, share: fraction(7, 10) },
  { toAge: 10, share: fraction(9, 10) },
  { toAge: Number.POSITIVE_INFINITY, share: fraction(1) },
];

/**
 * How many adults' rations a household needs: each eater's share by age, times the part of the year present.
 * Units: adult-equivalents; 0 for a household without eaters, and for an eater who is not born yet.
 * Errors: AssertionError when a day does not exist or a presence is not a whole percentage.
 * Source: see AGE_SHARES. The option of adding a year is advice of the same reprint; it is off unless asked for.
 */
export function adultEquivalents(
  eaters: readonly AgedEater[],
  today: string,
  options: AdultEquivalentOptions = {},
): Fraction {
  return eaters.reduce((sum, eater) => addFractions(sum, adultShare(eater, today, options)), fraction(0));
}

/**
 * One eater's part of `adultEquivalents`.
 * Units: adult-equivalents. Errors: as adultEquivalents.
 */
export function adultShare(eater: AgedEater, today: string, options: AdultEquivalentOptions = {}): Fraction {
  const age = ageOn(eater.birthOn, today);
  if (!age.isBorn) return fraction(0);
  return multiplyFractions(shareByAge(age, options), presence(eater));
}

/**
 * The part of the year that an eater is at this table.
 * Units: 0 to 1. Errors: AssertionError when the percentage is not whole or above 100.
 */
export function presence(eater: Pick<EaterFacts, 'presentPercent'>): Fraction {
  assertWhole(eater.presentPercent, 'presentPercent');
  assert(eater.presentPercent <= 100, `presentPercent must be 100 or less, got ${eater.presentPercent}`);
  return fraction(eater.presentPercent, 100);
}

function shareByAge(age: Age, { addYear = false }: AdultEquivalentOptions): Fraction {
  const years = age.years + (addYear ? 1 : 0);
  return AGE_SHARES.find((row) => years <= row.toAge)?.share ?? fraction(1);
}

import { divideFractions, multiplyFractions, sumFractions } from '@sheafbook/units';
import type { EaterRate } from './edible-stock.ts';
import type { FoodGroupCode } from './food-group.ts';
import type { HouseholdCoverage } from './household-coverage.ts';

/** The group's need, shared out as its eaters are counted. */
export function ratesOf(
  { eaters, groups }: Pick<HouseholdCoverage, 'eaters' | 'groups'>,
  group: FoodGroupCode,
): EaterRate[] {
  const need = groups.find((covered) => covered.group === group)?.needGramsPerDay;
  const all = sumFractions(eaters.map(({ adultEquivalents }) => adultEquivalents));
  if (!need || all.numerator === 0n) return [];
  return eaters.map(({ eaterId, adultEquivalents }) => ({
    eaterId,
    perDay: divideFractions(multiplyFractions(need, adultEquivalents), all),
  }));
}

import {
  type Activity,
  type EaterFacts,
  type FoodGroupCode,
  GUIDELINE,
  type HouseholdCoverageInput,
  householdCoverage,
  type Sex,
} from '@sheafbook/coverage';
import type { EaterRow, HouseholdGuidelineRow, HouseholdPlanRow } from '@sheafbook/db/tables';
import { fraction } from '@sheafbook/units';
import type { HouseholdStock } from './stock.ts';

/** What a household goes by until it says otherwise: a year, in grains and legumes. */
const DEFAULT_PLAN = { targetDays: 365, targetGroups: ['grains', 'legumes'], addYear: false } as const;

export type HouseholdFacts = {
  readonly eaters: readonly EaterRow[];
  readonly plan: HouseholdPlanRow | undefined;
  readonly guidelines: readonly HouseholdGuidelineRow[];
  readonly stock: HouseholdStock;
};

/** The one place where a household's rows become the input of its coverage. */
export function coverageInput(
  facts: HouseholdFacts,
  today: string,
  wishedDays?: number,
): HouseholdCoverageInput {
  const { targetDays: ownDays, targetGroups, addYear } = facts.plan ?? DEFAULT_PLAN;
  const targetDays = wishedDays ?? ownDays;
  return {
    eaters: facts.eaters.map(toFacts),
    stock: facts.stock.atHome,
    today,
    targetDays,
    targetGroups: targetGroups as readonly FoodGroupCode[],
    addYear,
    guideline: GUIDELINE.map((row) => {
      const own = facts.guidelines.find((edited) => edited.foodGroup === row.group);
      return own ? { group: row.group, gramsPerAdultYear: fraction(own.gramsPerAdultYear) } : row;
    }),
  };
}

/** The smaller of the two measures is what a household is told (DESIGN section 11). */
export const reckonCoverage = (facts: HouseholdFacts, today: string, wishedDays?: number) =>
  householdCoverage(coverageInput(facts, today, wishedDays));

/** The checks of the table hold what these types say. */
export const toFacts = (eater: EaterRow): EaterFacts => ({
  ...eater,
  sex: eater.sex as Sex,
  activity: eater.activity as Activity,
});

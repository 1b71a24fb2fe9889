import type { HouseholdGuidelineRow, HouseholdPlanRow } from '@sheafbook/db/tables';

export type Plan = {
  readonly plan: HouseholdPlanRow | undefined;
  readonly guidelines: readonly HouseholdGuidelineRow[];
};

/** A household that entered none is shown the defaults, as version 0. */
export function presentPlan({ plan, guidelines }: Plan) {
  return {
    needBasis: plan?.needBasis ?? 'guideline',
    targetDays: plan?.targetDays ?? 365,
    targetGroups: plan?.targetGroups ?? ['grains', 'legumes'],
    addYear: plan?.addYear ?? false,
    guidelines: guidelines.map(({ foodGroup, gramsPerAdultYear }) => ({ foodGroup, gramsPerAdultYear })),
    version: plan?.version ?? 0,
  };
}

import type { Fraction } from '@sheafbook/units';
import type { Days, DaysCovered } from './days-covered.ts';
import type { EaterFacts } from './eater.ts';
import type { FoodGroupCode } from './food-group.ts';
import type { GuidelineRow } from './guideline.ts';
import type { StockLot } from './stock-lot.ts';

export type GapPiece = { readonly gramsPerDay: Fraction; readonly coveredGrams: Fraction };

export type GroupCoverage = Omit<DaysCovered, 'atRisk'> & {
  readonly group: FoodGroupCode;
  readonly isTargeted: boolean;
  readonly needGramsPerDay: Fraction;
  readonly stockGrams: number;
  readonly nobodyMayEatGrams: number;
  readonly atRisk: readonly { readonly lotId: string; readonly grams: number }[];
  readonly gapGrams: number;
  readonly gapPieces: readonly GapPiece[];
};

export type EaterNeed = {
  readonly eaterId: string;
  readonly adultEquivalents: Fraction;
  readonly kilocaloriesPerDay: Fraction;
  readonly basis: 'typed' | 'equation' | 'table' | 'unknown-under-2';
  readonly note: string;
};

export type HouseholdCoverage = {
  readonly state: 'counted' | 'no-eaters';
  readonly adultEquivalents: Fraction;
  readonly eaters: readonly EaterNeed[];
  readonly groups: readonly GroupCoverage[];
  readonly byMass: {
    readonly days: Days;
    readonly wholeDays: number | null;
    readonly limitingGroup: FoodGroupCode | null;
    readonly secondGroup: FoodGroupCode | null;
  };
  readonly byEnergy: {
    readonly days: Days;
    readonly wholeDays: number | null;
    readonly limitingEaterIds: readonly string[];
    readonly kilocaloriesPerDay: Fraction;
    readonly kilocalories: Fraction;
  };
  readonly wholeDays: number | null;
  readonly shorterMeasure: 'mass' | 'energy' | null;
  readonly runsOutFirst: FoodGroupCode | null;
};

export type HouseholdCoverageInput = {
  readonly eaters: readonly EaterFacts[];
  readonly stock: readonly StockLot[];
  readonly today: string;
  readonly targetDays: number;
  readonly basis?: 'mass' | 'energy' | 'both';
  readonly guideline?: readonly Pick<GuidelineRow, 'group' | 'gramsPerAdultYear'>[];
  readonly targetGroups?: readonly FoodGroupCode[];
  readonly addYear?: boolean;
};

export function householdCoverage(input: HouseholdCoverageInput): HouseholdCoverage {
  throw new Error(`not written yet for ${input.today}`);
}

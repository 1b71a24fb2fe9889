import type { Fraction } from '@sheafbook/units';
import type { Days } from './days-covered.ts';
import type { FoodGroupCode } from './food-group.ts';
import type { GapPiece } from './household-coverage.ts';

export type GroupGap = {
  readonly group: FoodGroupCode;
  readonly needGramsPerDay: Fraction;
  readonly stockGrams: number;
  readonly gapPieces?: readonly GapPiece[];
};

export type Pack = {
  readonly packId: string;
  readonly group: FoodGroupCode;
  readonly grams: number;
  readonly minorUnits: number;
  readonly mostPacks: number | null;
};

export function closeGapDivisible(input: {
  readonly groups: readonly (GroupGap & { readonly minorUnitsPerKilogram: Fraction | null })[];
  readonly budgetMinorUnits: number;
  readonly targetDays: number;
}): {
  readonly days: Days;
  readonly wholeDays: number | null;
  readonly minorUnits: Fraction;
  readonly limitingGroup: FoodGroupCode | null;
  readonly groups: readonly {
    readonly group: FoodGroupCode;
    readonly grams: Fraction;
    readonly minorUnits: Fraction;
  }[];
} {
  throw new Error(`not written yet for ${input.targetDays}`);
}

export function closeGapWhole(input: {
  readonly groups: readonly GroupGap[];
  readonly packs: readonly Pack[];
  readonly budgetMinorUnits: number;
  readonly targetDays: number;
}): {
  readonly packs: readonly { readonly packId: string; readonly count: number }[];
  readonly minorUnits: number;
  readonly days: Days;
  readonly wholeDays: number | null;
  readonly limitingGroup: FoodGroupCode | null;
  readonly reachesTarget: boolean;
} {
  throw new Error(`not written yet for ${input.targetDays}`);
}

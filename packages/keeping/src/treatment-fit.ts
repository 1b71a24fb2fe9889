import type { KeepingClass } from '@sheafbook/foods';
import { assert } from '@sheafbook/units';
import type { Barrier } from './container-traits.ts';
import { TREATMENT_CODES, type TreatmentCode, treatmentOf } from './treatment.ts';

/** The names of the reasons why a treatment does not suit. Units: none. Errors: none. */
export const MISFITS = [
  'dry-ice-in-metal',
  'gas-stays-in-glass',
  'barrier-leaks',
  'barrier-unknown',
  'sets-hard',
  'fat-or-meal-without-oxygen',
  'class-unknown',
  'too-moist-without-oxygen',
  'moisture-unknown',
  'more-than-it-treats',
  'not-recommended',
] as const;

/** Why a treatment does not suit. Units: none. Errors: none. */
export type Misfit = (typeof MISFITS)[number];

/**
 * What is to be packed, and in what. Null is unknown: nobody measured, nobody said what kind of food or wall it is.
 * Units: per cent wet basis; whole grams. Errors: none.
 */
export type PackPlan = {
  readonly keepingClass: KeepingClass | null;
  readonly needsMoistureTest: boolean;
  readonly moisturePercent: number | null;
  readonly barrier: Barrier | null;
  readonly grams: number;
};

/** Whether a treatment may be used, why not, and the nearest one that may. Units: none. Errors: none. */
export type TreatmentFit = {
  readonly verdict: 'fits' | 'warned' | 'refused';
  readonly misfits: readonly Misfit[];
  readonly nearest: TreatmentCode | null;
};

/** The most moisture that a pack without oxygen may hold. Units: per cent wet basis. Errors: none. Source: Utah State University Extension. */
export const MOST_MOISTURE_WITHOUT_OXYGEN = 10;

// Pearled barley, brown rice, milled grain other than rolled oats, and flour (published list of foods not fit for
// oxygen-free packs); oils and oily legumes are fatty.
const NOT_WITHOUT_OXYGEN: readonly KeepingClass[] = [
  'pearled-barley',
  'brown-rice',
  'whole-meal',
  'white-flour',
  'cracked-grain',
  'oil',
];
const SETS_HARD: readonly KeepingClass[] = ['sugar', 'salt'];
const WARNINGS: readonly Misfit[] = ['more-than-it-treats', 'not-recommended'];

/**
 * Whether a treatment suits what is to be packed. What could hurt somebody or does nothing is refused with its reason; what
 * is merely weak is warned of. A modest way that is safe is never refused: `none` always fits.
 * Units: as `PackPlan`. Shape: `nearest` is the best treatment that fits, null when this one does.
 * Errors: AssertionError when a moisture is not between 0 and 100.
 * Source: the rows of `TREATMENTS`; sugar with an absorber sets hard (a published dry-pack page; salt is common practice).
 */
export function judgeTreatment(code: TreatmentCode, plan: PackPlan): TreatmentFit {
  const { moisturePercent } = plan;
  const isMoisture = moisturePercent === null || (moisturePercent >= 0 && moisturePercent <= 100);
  assert(isMoisture, 'a moisture lies between 0 and 100 per cent');
  const misfits = listMisfits(code, plan);
  if (misfits.length === 0) return { verdict: 'fits', misfits, nearest: null };
  const verdict = misfits.every((misfit) => WARNINGS.includes(misfit)) ? 'warned' : 'refused';
  const nearest = TREATMENT_CODES.find((other) => other !== code && listMisfits(other, plan).length === 0);
  return { verdict, misfits, nearest: nearest ?? null };
}

function listMisfits(code: TreatmentCode, plan: PackPlan): Misfit[] {
  const { barriers, isOxygenFree, mostGrams } = treatmentOf(code);
  const { keepingClass, barrier } = plan;
  const misfits: Misfit[] = [];
  if (!barriers.includes(barrier ?? 'open'))
    misfits.push(barrier === null ? 'barrier-unknown' : whyNotIn(code, barrier));
  if (code === 'oxygen-absorber' && keepingClass !== null && SETS_HARD.includes(keepingClass))
    misfits.push('sets-hard');
  if (isOxygenFree) misfits.push(...listDangersWithoutOxygen(plan));
  if (mostGrams !== null && plan.grams > mostGrams) misfits.push('more-than-it-treats');
  if (code === 'food-grade-earth') misfits.push('not-recommended');
  return misfits;
}

function whyNotIn(code: TreatmentCode, barrier: Barrier): Misfit {
  if (code !== 'dry-ice') return 'barrier-leaks';
  if (barrier === 'metal') return 'dry-ice-in-metal';
  return barrier === 'open' ? 'barrier-leaks' : 'gas-stays-in-glass';
}

function listDangersWithoutOxygen(plan: PackPlan): Misfit[] {
  const { keepingClass, moisturePercent, needsMoistureTest } = plan;
  if (keepingClass === null) return ['class-unknown'];
  if (NOT_WITHOUT_OXYGEN.includes(keepingClass)) return ['fat-or-meal-without-oxygen'];
  if (moisturePercent === null) return needsMoistureTest ? ['moisture-unknown'] : [];
  return moisturePercent > MOST_MOISTURE_WITHOUT_OXYGEN ? ['too-moist-without-oxygen'] : [];
}

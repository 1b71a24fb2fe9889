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
  'gains-nothing',
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

// Pearled barley, brown rice, milled grain other than rolled oats, flour and nuts (a published list of foods not fit for
// oxygen-free packs). That oils and oily legumes (soybeans, peanuts: a fifth and more is fat) go with nuts is common
// practice, no source.
const NOT_WITHOUT_OXYGEN: readonly KeepingClass[] = [
  'pearled-barley',
  'brown-rice',
  'whole-meal',
  'white-flour',
  'cracked-grain',
  'oily-legume',
  'oil',
];
const SETS_HARD: readonly KeepingClass[] = ['sugar', 'salt'];
// Nothing grows or hatches in them as they are. Honey is wetter (17.1 %, FoodData Central 19296) than a pack without oxygen
// allows. That nothing is to be gained is published for sugar; for salt and honey it is common practice, no source.
const KEEPS_UNTREATED: readonly KeepingClass[] = ['sugar', 'salt', 'honey'];
const WARNINGS: readonly Misfit[] = ['more-than-it-treats', 'not-recommended'];

/**
 * Whether a treatment suits what is to be packed. What could hurt somebody or does nothing is refused with its reason; what
 * is merely weak is warned of. A modest way that is safe is never refused: `none` always fits.
 * Units: as `PackPlan`. Shape: `nearest` is the best treatment that fits, null when this one does.
 * Errors: AssertionError when a moisture is not between 0 and 100.
 * Source: the rows of `TREATMENTS`; sugar with an absorber sets hard and gains nothing (a published dry-pack page; salt and
 * honey are common practice).
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

/**
 * The moisture to judge by when food may come from any of several bags: that of the driest, and unknown as soon as one was
 * not measured, for it may be dry too. What is worth a word all the same: a bag that nobody measured, or one too moist.
 * Units: per cent wet basis; null is unknown. Shape: `misfits` empty where all were measured and are dry enough.
 * Errors: none.
 */
export function moistureOfBags(percents: readonly (number | null)[]): {
  readonly moisturePercent: number | null;
  readonly misfits: readonly Misfit[];
} {
  const known = percents.filter((percent) => percent !== null);
  const isUnknown = known.length === 0 || known.length < percents.length;
  const misfits: Misfit[] = isUnknown ? ['moisture-unknown'] : [];
  if (known.some((percent) => percent > MOST_MOISTURE_WITHOUT_OXYGEN))
    misfits.push('too-moist-without-oxygen');
  return { moisturePercent: isUnknown ? null : Math.min(...known), misfits };
}

/**
 * As `judgeTreatment`, for food that comes to a line from bags: where nobody has measured, it is warned of and not refused, for
 * bags are measured up to the moment when they are poured. What is known to be too moist in every bag is refused.
 * Units: as `PackPlan`, and per cent of each bag. Errors: as `judgeTreatment`. Source: as `judgeTreatment`.
 */
export function judgeFromBags(
  code: TreatmentCode,
  plan: Omit<PackPlan, 'moisturePercent'>,
  percents: readonly (number | null)[],
): TreatmentFit {
  const { moisturePercent, misfits } = moistureOfBags(percents);
  const fit = judgeTreatment(code, { ...plan, needsMoistureTest: false, moisturePercent });
  if (fit.verdict === 'refused' || !treatmentOf(code).isOxygenFree) return fit;
  const minded = misfits.filter((misfit) => misfit !== 'moisture-unknown' || plan.needsMoistureTest);
  const all = [...fit.misfits, ...minded];
  return { verdict: all.length > 0 ? 'warned' : 'fits', misfits: all, nearest: fit.nearest };
}

function listMisfits(code: TreatmentCode, plan: PackPlan): Misfit[] {
  const { barriers, isOxygenFree, mostGrams } = treatmentOf(code);
  const { keepingClass, barrier } = plan;
  const misfits: Misfit[] = [];
  if (!barriers.includes(barrier ?? 'open'))
    misfits.push(barrier === null ? 'barrier-unknown' : whyNotIn(code, barrier));
  if (code !== 'none' && keepingClass !== null && KEEPS_UNTREATED.includes(keepingClass))
    misfits.push(whyUntreated(code, keepingClass));
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

const whyUntreated = (code: TreatmentCode, keepingClass: KeepingClass): Misfit =>
  code === 'oxygen-absorber' && SETS_HARD.includes(keepingClass) ? 'sets-hard' : 'gains-nothing';

function listDangersWithoutOxygen(plan: PackPlan): Misfit[] {
  const { keepingClass, moisturePercent, needsMoistureTest } = plan;
  if (keepingClass === null) return ['class-unknown'];
  if (NOT_WITHOUT_OXYGEN.includes(keepingClass)) return ['fat-or-meal-without-oxygen'];
  if (moisturePercent === null) return needsMoistureTest ? ['moisture-unknown'] : [];
  return moisturePercent > MOST_MOISTURE_WITHOUT_OXYGEN ? ['too-moist-without-oxygen'] : [];
}

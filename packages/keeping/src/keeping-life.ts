import type { KeepingClass } from '@sheafbook/foods';
import { assert, sumOf } from '@sheafbook/units';
import { daysSinceUsedUp, remainingDays, usedDays } from './ageing.ts';
import type { Barrier } from './container-traits.ts';
import { isForPeople, type Outcome } from './inspection.ts';
import { lifeBandOf, openedDaysOf, type PackClass, packClassOf, type WeakestLink } from './life-band.ts';
import type { Stretch } from './place-history.ts';
import type { TreatmentCode } from './treatment.ts';

/**
 * What is known of a container. Null is unknown, and unknown takes the cautious case; only where nobody looked at it, nothing
 * was found.
 * Units: per cent wet basis; tenths of a degree Celsius where it stands now. Errors: none by itself.
 */
export type KeptContainer = {
  readonly keepingClass: KeepingClass;
  readonly barrier: Barrier | null;
  readonly isDark: boolean;
  readonly treatment: TreatmentCode | null;
  readonly moisturePercent: number | null;
  readonly standsInLight: boolean | null;
  readonly openedDaysAgo: number | null;
  /** What the last look at it came to, and how long ago that was. */
  readonly lastLook: { readonly outcome: Outcome; readonly daysAgo: number } | null;
  /** From the day it was packed until today. */
  readonly history: readonly Stretch[];
  readonly nowTenthsCelsius: number;
};

/** What shortened a life or made it less certain. Units: none. Errors: none. */
export type LifeReason =
  | 'pack'
  | 'food'
  | 'moisture'
  | 'moisture-unknown'
  | 'light'
  | 'opened'
  | 'found-soon'
  | 'found-unfit'
  | 'warm-past'
  | 'gap-in-readings'
  | 'told-history'
  | 'unknown-history'
  | 'unknown-treatment'
  | 'unknown-container'
  | 'estimate';

/**
 * How long a container still keeps. Where its likely life is over, `pastDays` says for how long it has been.
 * Units: whole days at the present place, rounded down, and up in `pastDays`; `usedPart` of the likely life, 0 to 1.
 * Errors: none by itself.
 */
export type KeepingLife = {
  readonly lowDays: number;
  readonly likelyDays: number;
  readonly highDays: number;
  readonly pastDays: number;
  readonly usedPart: number;
  readonly packClass: PackClass;
  readonly weakestLink: WeakestLink;
  readonly reasons: readonly LifeReason[];
  readonly source: string;
  readonly isEstimate: boolean;
};

const DAYS_PER_YEAR = 365.25;
const LONGEST_SHOWN_DAYS = 30 * DAYS_PER_YEAR;
const DRY_PERCENT = 10;
/** How long what a look left for the kitchen is still eaten. Units: days. Errors: none. Source: common practice, no source. */
export const FOUND_SOON_DAYS = 30;
const NOISE_DAYS = 1e-6; // what adding up doubles may leave beyond a whole day
const LIT_PART = 0.7; // clear containers on a lit shelf; common practice, no source

/**
 * The band of a container's remaining life with its reasons. A band is looked up by food and pack, damp and light shorten it,
 * the place's history uses it up, and what is left lasts longer where it is cooler, never longer than the band itself and
 * never over 30 years. Opening ends it, and so does a look: what is to be eaten soon, or to be frozen and packed anew, has
 * `FOUND_SOON_DAYS` from that day, and what may not be eaten has none.
 * Units: as `KeepingLife`. Errors: AssertionError when a moisture is not between 0 and 100 or a stretch runs backwards.
 * Source: DESIGN of this project over `FOOD_BANDS`, `PACK_BANDS` and `PUBLISHED_AGEING`; what a look leaves: common practice,
 * no source.
 */
export function keepingLifeOf(kept: KeptContainer): KeepingLife {
  const packClass = packClassOf(kept.barrier, kept.treatment);
  const band = lifeBandOf(kept.keepingClass, packClass);
  const factor = moistureFactor(kept.moisturePercent) * lightFactor(kept);
  const used = usedDays(kept.history);
  const isUncertain = listUnknowns(kept).length > 0;
  const left = (years: number) => daysLeft({ years, factor, used }, kept);
  const lowDays = left(band.low);
  const likelyDays = isUncertain ? lowDays : left(band.likely);
  const likelyLifeDays = (isUncertain ? band.low : band.likely) * DAYS_PER_YEAR * factor;
  return {
    ...{ lowDays, likelyDays, highDays: left(band.high) },
    pastDays: likelyDays > 0 ? 0 : pastDaysOf(likelyLifeDays, kept),
    usedPart: Math.min(1, used / (band.likely * DAYS_PER_YEAR * factor)),
    packClass,
    weakestLink: band.weakestLink,
    reasons: listReasons(kept, band),
    source: band.source,
    isEstimate: band.isEstimate || isUncertain || isTold(kept) || foundDays(kept) < Number.POSITIVE_INFINITY,
  };
}

function daysLeft(
  { years, factor, used }: { readonly years: number; readonly factor: number; readonly used: number },
  kept: KeptContainer,
): number {
  const lifeDays = years * DAYS_PER_YEAR * factor;
  const capDays = Math.min(lifeDays, LONGEST_SHOWN_DAYS);
  const shut = remainingDays({ lifeDays, usedDays: used, capDays }, kept.nowTenthsCelsius);
  return Math.max(0, Math.floor(Math.min(shut, openDays(kept), foundDays(kept))));
}

/** Days that opening leaves, below zero where they are over. */
const openDays = ({ keepingClass, openedDaysAgo }: KeptContainer): number =>
  openedDaysAgo === null ? Number.POSITIVE_INFINITY : openedDaysOf(keepingClass) - openedDaysAgo;

/** Days that the last look leaves, below zero where they are over. */
function foundDays({ lastLook }: KeptContainer): number {
  if (lastLook === null || lastLook.outcome === 'table') return Number.POSITIVE_INFINITY;
  return (isForPeople(lastLook.outcome) ? FOUND_SOON_DAYS : 0) - lastLook.daysAgo;
}

/** Since the first of what ended it: its age, its opening, or what was found. A begun day counts, as what is left counts without it. */
const pastDaysOf = (lifeDays: number, kept: KeptContainer): number =>
  Math.max(
    0,
    Math.ceil(daysSinceUsedUp(lifeDays, kept.history) - NOISE_DAYS),
    ...[-openDays(kept), -foundDays(kept)].filter(Number.isFinite),
  );

/** Each per cent above 10 halves the life. Source: as the temperature rule, USDA Agriculture Handbook 506. */
function moistureFactor(moisturePercent: number | null): number {
  if (moisturePercent === null) return 1;
  assert(moisturePercent >= 0 && moisturePercent <= 100, 'a moisture lies between 0 and 100 per cent');
  return moisturePercent <= DRY_PERCENT ? 1 : 2 ** (DRY_PERCENT - moisturePercent);
}

const lightFactor = ({ isDark, standsInLight }: KeptContainer) =>
  isDark || standsInLight === false ? 1 : LIT_PART;

const isUnfit = ({ lastLook }: KeptContainer): boolean => lastLook !== null && !isForPeople(lastLook.outcome);

const isTold = ({ history }: KeptContainer) => history.some(({ known }) => known === 'told');

function listUnknowns(kept: KeptContainer): LifeReason[] {
  const unknowns: LifeReason[] = [];
  if (kept.history.some(({ known }) => known === 'unknown')) unknowns.push('unknown-history');
  if (kept.treatment === null) unknowns.push('unknown-treatment');
  if (kept.barrier === null) unknowns.push('unknown-container');
  return unknowns;
}

function listReasons(
  kept: KeptContainer,
  band: { readonly weakestLink: WeakestLink; readonly isEstimate: boolean },
): LifeReason[] {
  // What nobody knows is taken as warm and is its own reason: nobody can say that it stood warm.
  const known = kept.history.filter((part) => part.known !== 'unknown');
  const reasons: LifeReason[] = [band.weakestLink];
  if (kept.moisturePercent === null) reasons.push('moisture-unknown');
  else if (kept.moisturePercent > DRY_PERCENT) reasons.push('moisture');
  if (lightFactor(kept) < 1) reasons.push('light');
  if (kept.openedDaysAgo !== null) reasons.push('opened');
  if (foundDays(kept) < Number.POSITIVE_INFINITY) reasons.push(isUnfit(kept) ? 'found-unfit' : 'found-soon');
  if (usedDays(known) > sumOf(known.map((part) => part.days))) reasons.push('warm-past');
  if (kept.history.some(({ known }) => known === 'gap')) reasons.push('gap-in-readings');
  if (isTold(kept)) reasons.push('told-history');
  reasons.push(...listUnknowns(kept));
  if (band.isEstimate) reasons.push('estimate');
  return reasons;
}

/**
 * The days that moving a container to another place would add to its likely life.
 * Units: tenths of a degree Celsius, whole days; below zero where it is warmer. Errors: as `keepingLifeOf`.
 */
export function gainFromMoving(kept: KeptContainer, toTenthsCelsius: number): number {
  const there = keepingLifeOf({ ...kept, nowTenthsCelsius: toTenthsCelsius });
  return there.likelyDays - keepingLifeOf(kept).likelyDays;
}

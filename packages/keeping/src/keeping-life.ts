import type { KeepingClass } from '@sheafbook/foods';
import { assert, sumOf } from '@sheafbook/units';
import { remainingDays, usedDays } from './ageing.ts';
import type { Barrier } from './container-traits.ts';
import { lifeBandOf, openedDaysOf, type PackClass, packClassOf, type WeakestLink } from './life-band.ts';
import type { Stretch } from './place-history.ts';
import type { TreatmentCode } from './treatment.ts';

/**
 * What is known of a container. Null is unknown, and unknown takes the cautious case.
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
  | 'warm-past'
  | 'gap-in-readings'
  | 'told-history'
  | 'unknown-history'
  | 'unknown-treatment'
  | 'unknown-container'
  | 'estimate';

/**
 * How long a container still keeps.
 * Units: whole days at the present place, rounded down; `usedPart` of the likely life, 0 to 1. Errors: none by itself.
 */
export type KeepingLife = {
  readonly lowDays: number;
  readonly likelyDays: number;
  readonly highDays: number;
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
const LIT_PART = 0.7; // clear containers on a lit shelf; common practice, no source

/**
 * The band of a container's remaining life with its reasons. A band is looked up by food and pack, damp and light shorten it,
 * the place's history uses it up, and what is left lasts longer where it is cooler, never longer than the band itself and
 * never over 30 years.
 * Units: as `KeepingLife`. Errors: AssertionError when a moisture is not between 0 and 100 or a stretch runs backwards.
 * Source: DESIGN of this project over `FOOD_BANDS`, `PACK_BANDS` and `PUBLISHED_AGEING`.
 */
export function keepingLifeOf(kept: KeptContainer): KeepingLife {
  const packClass = packClassOf(kept.barrier, kept.treatment);
  const band = lifeBandOf(kept.keepingClass, packClass);
  const factor = moistureFactor(kept.moisturePercent) * lightFactor(kept);
  const used = usedDays(kept.history);
  const isUncertain = listUnknowns(kept).length > 0;
  const left = (years: number) => daysLeft({ years, factor, used }, kept);
  const lowDays = left(band.low);
  return {
    lowDays,
    likelyDays: isUncertain ? lowDays : left(band.likely),
    highDays: left(band.high),
    usedPart: Math.min(1, used / (band.likely * DAYS_PER_YEAR * factor)),
    packClass,
    weakestLink: band.weakestLink,
    reasons: listReasons(kept, band),
    source: band.source,
    isEstimate: band.isEstimate || isUncertain || isTold(kept),
  };
}

function daysLeft(
  { years, factor, used }: { readonly years: number; readonly factor: number; readonly used: number },
  { keepingClass, openedDaysAgo, nowTenthsCelsius }: KeptContainer,
): number {
  const lifeDays = years * DAYS_PER_YEAR * factor;
  const capDays = Math.min(lifeDays, LONGEST_SHOWN_DAYS);
  const shut = remainingDays({ lifeDays, usedDays: used, capDays }, nowTenthsCelsius);
  const open = openedDaysAgo === null ? Number.POSITIVE_INFINITY : openedDaysOf(keepingClass) - openedDaysAgo;
  return Math.max(0, Math.floor(Math.min(shut, open)));
}

/** Each per cent above 10 halves the life. Source: as the temperature rule, USDA Agriculture Handbook 506. */
function moistureFactor(moisturePercent: number | null): number {
  if (moisturePercent === null) return 1;
  assert(moisturePercent >= 0 && moisturePercent <= 100, 'a moisture lies between 0 and 100 per cent');
  return moisturePercent <= DRY_PERCENT ? 1 : 2 ** (DRY_PERCENT - moisturePercent);
}

const lightFactor = ({ isDark, standsInLight }: KeptContainer) =>
  isDark || standsInLight === false ? 1 : LIT_PART;

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

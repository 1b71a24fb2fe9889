import { assert, assertWhole, daysBetween } from '@sheafbook/units';

/** A scale is laid a known weight on again after so long. Units: days. Errors: none. Source: common practice, no source. */
export const SCALE_CHECK_DAYS = 30;

/**
 * A known weight on a scale, what it showed, and by how much the group or its maker lets it be off.
 * Units: grams. Errors: none by itself.
 */
export type ScaleReading = {
  readonly laidGrams: number;
  readonly shownGrams: number;
  readonly limitGrams: number;
};

/**
 * By how much a scale shows more (above zero) or less (below) than lies on it, and whether that is within its limit. At its
 * limit it is true still.
 * Units: grams. Errors: AssertionError when a figure is not whole and ≥ 0, or nothing was laid on.
 */
export function judgeScale({ laidGrams, shownGrams, limitGrams }: ScaleReading): {
  readonly offByGrams: number;
  readonly isTrue: boolean;
} {
  assertWhole(laidGrams, 'laidGrams');
  assertWhole(shownGrams, 'shownGrams');
  assertWhole(limitGrams, 'limitGrams');
  assert(laidGrams > 0, 'a scale is checked with a weight');
  const offByGrams = shownGrams - laidGrams;
  return { offByGrams, isTrue: Math.abs(offByGrams) <= limitGrams };
}

/**
 * How a scale stands on a day by its last check: nobody checked it, it was off, that is too long ago, or it is true.
 * Units: none. Errors: none.
 */
export type ScaleVerdict = 'never-checked' | 'off' | 'check-is-old' | 'true';

/**
 * Whether a scale is to be weighed on, on a day. One that was off stays off until a later check finds it true, however old
 * that is; one that was true is so for `SCALE_CHECK_DAYS` days, the last of them with it. A check of a later day than asked
 * counts as of that day.
 * Units: grams, whole days. Errors: AssertionError as `judgeScale`, or when a day is none.
 */
export function scaleStanding(
  last: (ScaleReading & { readonly checkedOn: string }) | null,
  onDay: string,
): { readonly verdict: ScaleVerdict; readonly offByGrams: number | null; readonly daysSince: number | null } {
  if (last === null) return { verdict: 'never-checked', offByGrams: null, daysSince: null };
  const { offByGrams, isTrue } = judgeScale(last);
  const daysSince = Math.max(0, daysBetween(last.checkedOn, onDay));
  const isOld = daysSince > SCALE_CHECK_DAYS;
  return { verdict: !isTrue ? 'off' : isOld ? 'check-is-old' : 'true', offByGrams, daysSince };
}

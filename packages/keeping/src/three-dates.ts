import { addDays, assert, assertWhole, weekdayOf } from '@sheafbook/units';
import type { KeepingLife } from './keeping-life.ts';

/** When a pantry takes gifts and how much life it wants. Units: days; weekdays 0 (Sunday) to 6. Errors: none. */
export type GiftTerms = {
  readonly leastLifeDays: number;
  readonly transportDays: number;
  readonly openWeekdays: readonly number[];
};

/** The three dates of a lot's last years. Units: ISO days; null where no pantry takes it. Errors: none by itself. */
export type ThreeDates = {
  readonly eatFirstOn: string;
  readonly offerOn: string;
  readonly giftClosesOn: string | null;
};

/** How long a lot is offered to members before a pantry could have it. Units: days. Errors: none. Source: common practice, no source. */
export const OFFER_DAYS = 60;
/** The same before eat-first where no pantry takes it. Units: days. Errors: none. Source: common practice, no source. */
export const OFFER_DAYS_WITHOUT_PANTRY = 90;

/**
 * Eat-first, gift-closes and offer of a lot. A gift closes on the last day that a pantry is open and the lot still has the
 * life that it asks for; of several pantries the latest counts. Always offer ≤ gift-closes ≤ eat-first. What is past its day
 * has them all in the past.
 * Units: ISO days, whole days. Errors: AssertionError when a day is none or a term is not whole and ≥ 0.
 */
export function threeDates({
  todayOn,
  remainingDays,
  pastDays = 0,
  pantries,
  offerDays = OFFER_DAYS,
  offerDaysWithoutPantry = OFFER_DAYS_WITHOUT_PANTRY,
}: {
  readonly todayOn: string;
  readonly remainingDays: number;
  readonly pastDays?: number;
  readonly pantries: readonly GiftTerms[];
  readonly offerDays?: number;
  readonly offerDaysWithoutPantry?: number;
}): ThreeDates {
  assertWhole(remainingDays, 'remainingDays');
  assertWhole(pastDays, 'pastDays');
  assert(remainingDays === 0 || pastDays === 0, 'what still keeps is not past its day');
  assertWhole(offerDays, 'offerDays');
  assertWhole(offerDaysWithoutPantry, 'offerDaysWithoutPantry');
  const eatFirstOn = addDays(todayOn, remainingDays - pastDays);
  const closes = pantries.flatMap((terms) => giftClosesOn(eatFirstOn, terms) ?? []).toSorted();
  const latest = closes.at(-1) ?? null;
  const offerOn =
    latest === null ? addDays(eatFirstOn, -offerDaysWithoutPantry) : addDays(latest, -offerDays);
  return { eatFirstOn, offerOn, giftClosesOn: latest };
}

/**
 * The last day that a pantry still takes something.
 * Units: ISO days; null when it is never open. Errors: AssertionError when a term is not whole and ≥ 0.
 */
export function giftClosesOn(eatFirstOn: string, terms: GiftTerms): string | null {
  assertWhole(terms.leastLifeDays, 'leastLifeDays');
  assertWhole(terms.transportDays, 'transportDays');
  const open = new Set(terms.openWeekdays);
  for (const weekday of open)
    assert(Number.isInteger(weekday) && weekday >= 0 && weekday <= 6, 'a week has seven days');
  const latest = addDays(eatFirstOn, -terms.leastLifeDays - terms.transportDays);
  const back = [0, 1, 2, 3, 4, 5, 6].find((days) => open.has(weekdayOf(addDays(latest, -days))));
  return back === undefined ? null : addDays(latest, -back);
}

/**
 * When a container wants eating, no finer than it is known: a year. The band is an estimate wherever anything about it is.
 * Units: ISO day in, a calendar year out. Errors: AssertionError when the day is none.
 */
export function eatFirstAsKnown(
  todayOn: string,
  { likelyDays, isEstimate }: Pick<KeepingLife, 'likelyDays' | 'isEstimate'>,
): { readonly year: number; readonly isEstimate: boolean } {
  return { year: yearIn(todayOn, likelyDays), isEstimate };
}

/**
 * The year in which a container is to be offered to others, where nobody has said yet which pantry would take it.
 * Units: ISO day in, a calendar year out, not before the day's own. Errors: AssertionError when the day is none.
 */
export function offerAsKnown(todayOn: string, { likelyDays }: Pick<KeepingLife, 'likelyDays'>): number {
  return yearIn(todayOn, Math.max(0, likelyDays - OFFER_DAYS_WITHOUT_PANTRY));
}

/**
 * The year in which a container likely wants eating, and the years that its band reaches from and to.
 * Units: ISO day in, calendar years out. Errors: AssertionError when the day is none.
 */
export function eatFirstYears(
  todayOn: string,
  { lowDays, likelyDays, highDays }: Pick<KeepingLife, 'lowDays' | 'likelyDays' | 'highDays'>,
): { readonly soonest: number; readonly likely: number; readonly latest: number } {
  return {
    soonest: yearIn(todayOn, lowDays),
    likely: yearIn(todayOn, likelyDays),
    latest: yearIn(todayOn, highDays),
  };
}

const yearIn = (todayOn: string, days: number): number => Number(addDays(todayOn, days).slice(0, 4));

import { addDays, assertWhole } from '@sheafbook/units';
import type { ThreeDates } from './three-dates.ts';

/** The dates of a lot's last months in the order in which they come. Units: none. Errors: none. */
export const NEAR_DATES = ['offer', 'gift-closes', 'eat-first'] as const;

/** One of `NEAR_DATES`. Units: none. Errors: none. */
export type NearDate = (typeof NEAR_DATES)[number];

/**
 * Which of its dates a lot comes near: eat-first as soon as its margin has begun and ever after, else the end of gifts, else
 * the offer, both only until they come; null where none is near.
 * Units: ISO days, whole days. Errors: AssertionError when a margin is not whole and ≥ 0.
 */
export function nearDateOf(
  { eatFirstOn, giftClosesOn, offerOn }: ThreeDates,
  terms: {
    readonly todayOn: string;
    readonly giftWindowDays: number;
    readonly eatFirstMarginDays: number;
  },
): NearDate | null {
  const { todayOn, giftWindowDays, eatFirstMarginDays } = terms;
  assertWhole(giftWindowDays, 'giftWindowDays');
  assertWhole(eatFirstMarginDays, 'eatFirstMarginDays');
  const comes = (on: string | null) => on !== null && todayOn <= on && on <= addDays(todayOn, giftWindowDays);
  if (eatFirstOn <= addDays(todayOn, eatFirstMarginDays)) return 'eat-first';
  if (comes(giftClosesOn)) return 'gift-closes';
  return comes(offerOn) ? 'offer' : null;
}

import { assert, assertWhole, compareText } from '@sheafbook/units';

/** A lot or container that is to be eaten. Units: whole grams, whole days to its eat-first. Errors: none by itself. */
export type RotationLot = { readonly code: string; readonly grams: number; readonly daysLeft: number };

/** What becomes of one of them at a steady pace. Units: whole grams. Errors: none. */
export type RotationOutcome = {
  readonly code: string;
  readonly eatenGrams: number;
  readonly atRiskGrams: number;
};

/**
 * Eats what ends first at a steady pace and says how much of each lot is not eaten in time. With no pace all is at risk.
 * Units: whole grams, grams a day; eaten grams are rounded down. Shape: in the order of eating: eat-first, then mass, then code.
 * Errors: AssertionError when a figure is not whole and ≥ 0 or the pace is below zero.
 */
export function eatInOrder(lots: readonly RotationLot[], gramsPerDay: number): RotationOutcome[] {
  assert(gramsPerDay >= 0, 'a pace is not below zero');
  let clockDays = 0;
  return lots.toSorted(byEndThenMass).map(({ code, grams, daysLeft }) => {
    assertWhole(grams, 'grams');
    assertWhole(daysLeft, 'daysLeft');
    const inTime = Math.max(0, daysLeft - clockDays) * gramsPerDay;
    const eatenGrams = Math.floor(Math.min(grams, inTime));
    if (gramsPerDay > 0) clockDays += Math.min(grams, inTime) / gramsPerDay;
    return { code, eatenGrams, atRiskGrams: grams - eatenGrams };
  });
}

const byEndThenMass = (a: RotationLot, b: RotationLot) =>
  a.daysLeft - b.daysLeft || a.grams - b.grams || compareText(a.code, b.code);

/**
 * The least steady pace that eats everything in time.
 * Units: grams a day, rounded up; null when something is past its day already. Errors: AssertionError as `eatInOrder`.
 */
export function paceThatEatsAll(lots: readonly RotationLot[]): number | null {
  let grams = 0;
  let pace = 0;
  for (const lot of lots.toSorted(byEndThenMass)) {
    assertWhole(lot.grams, 'grams');
    assertWhole(lot.daysLeft, 'daysLeft');
    if (lot.grams > 0 && lot.daysLeft === 0) return null;
    grams += lot.grams;
    if (lot.daysLeft > 0) pace = Math.max(pace, grams / lot.daysLeft);
  }
  return Math.ceil(pace);
}

/** One container in the queue of what to eat next. Units: whole days, whole grams. Errors: none by itself. */
export type QueueItem = {
  readonly code: string;
  readonly isOnHold: boolean;
  readonly isOpen: boolean;
  readonly daysLeft: number;
  readonly atRiskGrams: number;
  /** The only food of its kind that somebody with an allergy can eat. */
  readonly isAnEatersOnlyStock: boolean;
};

/**
 * What to eat next: what is open, then what ends first, then most at risk, leaving an allergic eater's only stock last.
 * What is on hold is not in it.
 * Units: none. Errors: none.
 */
export function rotationQueue<Item extends QueueItem>(items: readonly Item[]): Item[] {
  return items
    .filter(({ isOnHold }) => !isOnHold)
    .toSorted(
      (a, b) =>
        Number(b.isOpen) - Number(a.isOpen) ||
        a.daysLeft - b.daysLeft ||
        b.atRiskGrams - a.atRiskGrams ||
        Number(a.isAnEatersOnlyStock) - Number(b.isAnEatersOnlyStock) ||
        compareText(a.code, b.code),
    );
}

/** One container of common stock, of which nobody eats. Units: ISO days, whole grams. Errors: none by itself. */
export type StoreItem = {
  readonly code: string;
  readonly isOnHold: boolean;
  readonly offerOn: string;
  readonly giftClosesOn: string | null;
  readonly atRiskGrams: number;
};

/**
 * What the storehouse gives next: what is at risk and may be offered by now, first what closes first to gifts, then most at
 * risk. What no pantry takes comes last.
 * Units: ISO days. Errors: none. Source: job map 10.4.
 */
export function storeQueue<Item extends StoreItem>(items: readonly Item[], todayOn: string): Item[] {
  const closes = ({ giftClosesOn }: Item) => giftClosesOn ?? '9999';
  return items
    .filter((item) => !item.isOnHold && item.atRiskGrams > 0 && item.offerOn <= todayOn)
    .toSorted(
      (a, b) =>
        compareText(closes(a), closes(b)) || b.atRiskGrams - a.atRiskGrams || compareText(a.code, b.code),
    );
}

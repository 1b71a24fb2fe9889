import { assert } from '@sheafbook/units';
import { type KeptContainer, keepingLifeOf } from './keeping-life.ts';
import type { Pace, PlannedLot, PlannedOutcome } from './rotation-plan.ts';
import { judgeTreatment } from './treatment-fit.ts';

/** A planned container with what its life was reckoned from. Units: as `PlannedLot`. Errors: none by itself. */
export type KeptLot = PlannedLot & { readonly kept: KeptContainer; readonly needsMoistureTest: boolean };

/**
 * Each food eaten faster, or slower, than now.
 * Units: whole per cent of the pace; grams a day. Errors: AssertionError below zero.
 */
export function eatFaster(pace: Pace, percent: number): Pace {
  assert(percent >= 0, 'a pace is not below zero');
  return new Map([...pace].map(([foodCode, gramsPerDay]) => [foodCode, (gramsPerDay * percent) / 100]));
}

/**
 * Everything that would keep longer at another place is moved there; what would not stays where it is.
 * Units: tenths of a degree Celsius. Errors: as `keepingLifeOf`.
 */
export function moveWhereItHelps<Lot extends KeptLot>(
  lots: readonly Lot[],
  to: { readonly placeKey: string; readonly tenthsCelsius: number; readonly isLit: boolean | null },
): Lot[] {
  return lots.map((lot) => {
    const kept = { ...lot.kept, nowTenthsCelsius: to.tenthsCelsius, standsInLight: to.isLit };
    const { likelyDays } = keepingLifeOf(kept);
    return likelyDays > lot.daysLeft ? { ...lot, kept, placeKey: to.placeKey, daysLeft: likelyDays } : lot;
  });
}

/**
 * Everything that may be packed without oxygen is packed anew, in sealed metal with an absorber, where that keeps it longer.
 * What a container has aged so far it keeps. What is not allowed in such a pack, or is too damp or of unknown moisture where
 * a test is needed, stays as it is.
 * Units: none. Errors: as `keepingLifeOf`.
 */
export function repackWhereItHelps<Lot extends KeptLot>(lots: readonly Lot[]): Lot[] {
  return lots.map((lot) => {
    const kept: KeptContainer = {
      ...lot.kept,
      ...{ barrier: 'metal', isDark: true, treatment: 'oxygen-absorber', openedDaysAgo: null },
    };
    const { verdict } = judgeTreatment('oxygen-absorber', {
      ...{ keepingClass: kept.keepingClass, needsMoistureTest: lot.needsMoistureTest },
      ...{ moisturePercent: kept.moisturePercent, barrier: 'metal', grams: lot.grams },
    });
    if (verdict === 'refused' || lot.daysLeft === 0) return lot; // what is past its day no pack brings back
    const { likelyDays } = keepingLifeOf(kept);
    return likelyDays > lot.daysLeft ? { ...lot, kept, daysLeft: likelyDays } : lot;
  });
}

/**
 * Gives away the whole containers that would not be begun in time, while they still can be eaten. Nobody gives what is past its
 * day. The others are eaten as before, since what is not begun takes nobody's time.
 * Units: none. Errors: none.
 */
export function giveUnbegun<Lot extends PlannedLot>(
  lots: readonly Lot[],
  outcomes: readonly PlannedOutcome[],
): { readonly kept: Lot[]; readonly given: Lot[] } {
  const unbegun = new Set(outcomes.filter(({ eatenGrams }) => eatenGrams === 0).map(({ code }) => code));
  const isGiven = ({ code, daysLeft, grams }: Lot) => daysLeft > 0 && grams > 0 && unbegun.has(code);
  return { kept: lots.filter((lot) => !isGiven(lot)), given: lots.filter(isGiven) };
}

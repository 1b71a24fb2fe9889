import { type Actor, type Duty, hasDuty } from '../../platform/actor.ts';

/** Duties are given and taken back by a coordinator. Who holds which is for everyone to see. */
export const mayGiveDuties = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

export type Holder = { readonly personId: string; readonly householdId: string | null; readonly duty: Duty };
type Candidate = Omit<Holder, 'duty'>;

/** The reviewer reads what the treasurer wrote, so they are two people of two households (job map 1.1 and 2.1). */
export function areSeparate(candidate: Candidate, duty: Duty, holders: readonly Holder[]): boolean {
  const other = OPPOSITE[duty];
  return !holders.some((holder) => holder.duty === other && isNear(candidate, holder));
}

const OPPOSITE: Partial<Record<Duty, Duty>> = { reviewer: 'treasurer', treasurer: 'reviewer' };

/** The same person, or one of the same household. */
export const isNear = (candidate: Candidate, holder: Candidate) =>
  candidate.personId === holder.personId ||
  (candidate.householdId !== null && candidate.householdId === holder.householdId);

/**
 * A storehouse is never without a coordinator; and once it has had a treasurer, never without one, because somebody
 * answers for the money (job map 2.19). The other duties may stand empty. `leavers` are those who lay the duty down.
 */
export function needsSuccessor(leavers: readonly string[], duty: Duty, holders: readonly Holder[]): boolean {
  const isKept = duty === 'coordinator' || duty === 'treasurer';
  return isKept && !holders.some((holder) => holder.duty === duty && !leavers.includes(holder.personId));
}

import { type Actor, hasDuty } from '../../platform/actor.ts';

const keeps = (actor: Actor): boolean => hasDuty(actor, 'equipment_keeper', 'coordinator');

export const mayBook = (actor: Actor): boolean => keeps(actor) || actor.householdId !== null;

/** One's own household books for itself; the keeper for whoever asks by telephone. */
export const mayBookFor = (actor: Actor, householdId: string | null): boolean =>
  keeps(actor) || (householdId !== null && actor.householdId === householdId);

import type { Actor } from '../../platform/actor.ts';
import { mayKeepEquipment } from '../equipment/policy.ts';

export const mayBook = (actor: Actor): boolean => mayKeepEquipment(actor) || actor.householdId !== null;

/** One's own household books for itself; the keeper for whoever asks by telephone. */
export const mayBookFor = (actor: Actor, householdId: string | null): boolean =>
  mayKeepEquipment(actor) || (householdId !== null && actor.householdId === householdId);

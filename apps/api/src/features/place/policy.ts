import { type Actor, hasDuty } from '../../platform/actor.ts';

/** The store's places are kept by whoever keeps its stock; a household's own by itself alone (job map section 14). */
const mayKeepStore = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

export const mayKeepSomePlace = (actor: Actor): boolean => actor.householdId !== null || mayKeepStore(actor);

export const mayKeepPlace = (actor: Actor, householdId: string | null): boolean =>
  householdId === null ? mayKeepStore(actor) : householdId === actor.householdId;

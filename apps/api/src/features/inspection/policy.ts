import { type Actor, hasDuty } from '../../platform/actor.ts';

/** A household looks at its own; common stock is looked at by whoever packs or runs the store. */
export const mayInspect = (actor: Actor): boolean => actor.householdId !== null || mayInspectCommon(actor);

export const mayInspectCommon = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

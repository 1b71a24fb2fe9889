import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Pantries are spoken with by whoever runs the giving rounds (job map 1.1); everybody may read what they take. */
export const mayKeepPantries = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

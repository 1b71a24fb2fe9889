import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Giving rounds are run by the coordinator (job map 1.1), and the packing lead has the cans in hand. */
export const mayGive = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

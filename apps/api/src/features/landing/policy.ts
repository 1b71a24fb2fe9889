import { type Actor, hasDuty } from '../../platform/actor.ts';

/** The coordinator, or a packing lead as landing helper (job map section 2). */
export const mayEndLanding = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

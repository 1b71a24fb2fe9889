import { type Actor, hasDuty } from '../../platform/actor.ts';

/** The way of a bag names who got how much of it, which reviewer, coordinator and treasurer may know (job map 14). */
export const mayTrace = (actor: Actor): boolean => hasDuty(actor, 'reviewer', 'treasurer', 'coordinator');

import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Amounts and the reasons of a hardship are for treasurer and reviewer (job map 14). */
export const mayReadExceptions = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');

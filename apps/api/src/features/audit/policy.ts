import { type Actor, hasDuty } from '../../platform/actor.ts';

/** An audit prints counts and sums, never a household's figure. */
export const mayAudit = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer', 'coordinator');

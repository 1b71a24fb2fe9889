import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayEditStorehouse = (actor: Actor): boolean => hasDuty(actor, 'coordinator');
/** The rules move money, so the treasurer may change them too. */
export const mayChangeRules = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'treasurer');

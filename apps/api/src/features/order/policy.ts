import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayReopen = (actor: Actor): boolean => hasDuty(actor, 'coordinator');
export const mayAgreeToOrder = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'treasurer');
export const mayConfirmTerms = mayReopen;

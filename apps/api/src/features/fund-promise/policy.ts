import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayPromise = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'coordinator');
export const mayFulfil = (actor: Actor): boolean => hasDuty(actor, 'treasurer');
export const mayReadFund = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'coordinator', 'reviewer');

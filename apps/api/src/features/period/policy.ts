import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayClosePeriod = (actor: Actor): boolean => hasDuty(actor, 'treasurer');
export const mayReadDigest = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');
export const maySign = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer', 'coordinator');

import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayKeepBank = (actor: Actor): boolean => hasDuty(actor, 'treasurer');
export const mayReadBank = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');

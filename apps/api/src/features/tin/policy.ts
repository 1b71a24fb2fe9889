import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayCountTin = (actor: Actor): boolean => hasDuty(actor, 'treasurer');
export const mayReadTin = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');

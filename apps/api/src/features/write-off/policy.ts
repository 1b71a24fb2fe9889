import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayAskWriteOff = (actor: Actor): boolean => hasDuty(actor, 'treasurer');
export const mayAgreeToWriteOff = (actor: Actor): boolean => hasDuty(actor, 'coordinator');
export const mayReadWriteOffs = (actor: Actor): boolean =>
  hasDuty(actor, 'treasurer', 'coordinator', 'reviewer');

import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayReopen = (actor: Actor): boolean => hasDuty(actor, 'coordinator');
export const mayAgreeToOrder = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'treasurer');
/** The coordinator learns which deposits are out, not how much is (job map section 14). */
export const maySeeDepositAmounts = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');

import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayShareOut = (actor: Actor): boolean => hasDuty(actor, 'coordinator');
export const mayRecharge = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'treasurer');
export const mayGiveLateCredits = (actor: Actor): boolean => hasDuty(actor, 'treasurer');

/** What a household is charged is made of its shares, which these duties see (job map section 14). */
export const seesAllCharges = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'packing_lead', 'reviewer');

export const seesAllComparisons = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayFix = (actor: Actor): boolean => hasDuty(actor, 'coordinator');
/** Whoever these duties belong to sees what each household is promised; others see their own (job map section 14). */
export const maySeeAllotments = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'packing_lead', 'reviewer');
export const mayPreview = (actor: Actor): boolean => actor.householdId !== null;

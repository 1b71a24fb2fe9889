import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Duties add nothing here: who pledges is a household, its own or one that is helped. */
export const mayPledge = (actor: Actor): boolean => actor.householdId !== null;
/** Job map 14: these duties see what each household pledged; other members see sums over five households or more. */
export const maySeePledges = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'packing_lead', 'reviewer');

import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayHandOver = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

/** One's own food is fetched, and its hour chosen, without a duty. */
export const mayPlanFor = (actor: Actor, householdId: string): boolean =>
  mayHandOver(actor) || actor.householdId === householdId;

export const mayPickUp = (actor: Actor): boolean => mayHandOver(actor) || actor.householdId !== null;

/** Job map section 14, "share received". */
export const seesAllPickUps = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'packing_lead', 'reviewer');

export const mayTakeUncollected = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

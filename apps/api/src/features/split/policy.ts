import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayMakeSplits = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

/** Job map section 14, "share received": everyone else sees their own and how far apart the shares lie. */
export const seesAllShares = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'packing_lead', 'reviewer');

export const mayRerunSplits = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'reviewer');

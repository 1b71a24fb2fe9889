import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayEnterQuotes = (actor: Actor): boolean => hasDuty(actor, 'coordinator');
/** A comparison is made at what is pledged, so it is for those who may see that. */
export const mayCompareQuotes = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'packing_lead', 'reviewer');

import { type Actor, hasDuty } from '../../platform/actor.ts';

/** What a household has at home and eats next is its own to know (job map section 14). */
export const hasRotation = (actor: Actor): boolean => actor.householdId !== null;

/** Common stock is known to whoever keeps or counts it. */
export const maySeeStoreRotation = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'packing_lead', 'treasurer', 'reviewer');

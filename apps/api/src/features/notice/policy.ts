import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Whoever may tell everyone something, and take it back. */
export const mayWriteNotices = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

/** Whoever must know which households were reached by a hold (job map 12 and 14, "recall hit on household"). */
export const maySeeReach = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

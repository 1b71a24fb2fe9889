import { type Actor, hasDuty } from '../../platform/actor.ts';

/** The packing lead weighs containers, the treasurer knows what they cost. */
export const mayEditContainerKinds = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'packing_lead', 'treasurer');

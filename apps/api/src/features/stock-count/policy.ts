import { type Actor, hasDuty } from '../../platform/actor.ts';

export const maySeeCounts = (actor: Actor): boolean =>
  hasDuty(actor, 'reviewer', 'treasurer', 'coordinator', 'packing_lead');
export const mayCount = (actor: Actor): boolean => hasDuty(actor, 'reviewer', 'coordinator', 'packing_lead');
export const mayBookCount = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'coordinator');

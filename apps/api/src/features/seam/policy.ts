import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Whoever leads the packing or keeps the machines answers for what they close. */
export const mayCheckSeals = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'packing_lead', 'equipment_keeper');

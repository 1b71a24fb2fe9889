import { type Actor, hasDuty } from '../../platform/actor.ts';

/** What a household has in doubt is its own to read. */
export const hasContainers = (actor: Actor): boolean => actor.householdId !== null;

/** Whoever leads the packing or keeps the machines answers for what they close. */
export const mayCheckSeals = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'packing_lead', 'equipment_keeper');

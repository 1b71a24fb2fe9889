import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayEditContact = (actor: Actor): boolean => actor.householdId !== null;

/**
 * A duty whose tasks need a neighbour's telephone, such as a landing that is early. Each look names its purpose and is
 * shown to the household (job map 14). A reviewer and a member see it only where the household shows it to everyone.
 */
export const mayReadForTask = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'packing_lead', 'equipment_keeper');

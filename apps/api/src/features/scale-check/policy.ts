import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Job map 3.3, question 18, and 3.4, question 9: the keeper looks after scales and thermometers, the lead goes by them. */
export const mayCheckScale = (actor: Actor): boolean =>
  hasDuty(actor, 'equipment_keeper', 'packing_lead', 'coordinator');

import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Job map 3.3, question 18, and 3.4, question 9: the keeper looks after scales, the lead weighs on them. */
export const mayCheckScale = (actor: Actor): boolean =>
  hasDuty(actor, 'equipment_keeper', 'packing_lead', 'coordinator');

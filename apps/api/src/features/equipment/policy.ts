import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Job map 1.1: the keeper lends, takes back and looks after; a group without one has its coordinator do it. */
export const mayKeepEquipment = (actor: Actor): boolean => hasDuty(actor, 'equipment_keeper', 'coordinator');

/** Job map section 14, "loans current": others see that a thing is busy, and not with whom. */
export const seesLoans = (actor: Actor): boolean =>
  hasDuty(actor, 'equipment_keeper', 'coordinator', 'reviewer');

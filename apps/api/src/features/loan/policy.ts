import { type Actor, hasDuty } from '../../platform/actor.ts';

const keeps = (actor: Actor): boolean => hasDuty(actor, 'equipment_keeper', 'coordinator');

/** Whoever borrowed ticks the parts out and in without a keeper; money over the counter takes one. */
export const mayLend = (actor: Actor): boolean => keeps(actor) || actor.householdId !== null;
export const mayHandle = (actor: Actor, householdId: string | null): boolean =>
  keeps(actor) || (householdId !== null && actor.householdId === householdId);
/** Taking a deposit into the till, giving it back from there, and saying what damage costs. */
export const mayTakeMoney = keeps;

/** Job map section 14, "loans current". */
export const seesDesk = (actor: Actor): boolean =>
  hasDuty(actor, 'equipment_keeper', 'coordinator', 'reviewer');

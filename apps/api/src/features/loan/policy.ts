import type { Actor } from '../../platform/actor.ts';
import { mayKeepEquipment, seesLoans } from '../equipment/policy.ts';

/** Whoever borrowed ticks the parts out and in without a keeper; money over the counter takes one. */
export const mayLend = (actor: Actor): boolean => mayKeepEquipment(actor) || actor.householdId !== null;
export const mayHandle = (actor: Actor, householdId: string | null): boolean =>
  mayKeepEquipment(actor) || (householdId !== null && actor.householdId === householdId);
/** Taking a deposit into the till, giving it back from there, and saying what damage costs. */
export const mayTakeMoney = mayKeepEquipment;

export const seesDesk = seesLoans;

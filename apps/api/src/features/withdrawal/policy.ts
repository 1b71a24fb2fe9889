import { type Actor, hasDuty } from '../../platform/actor.ts';

/** A household withdraws itself, or a coordinator does it for one that can't. */
export const mayWithdraw = (actor: Actor): boolean => actor.householdId !== null || mayWithdrawAnother(actor);
export const mayWithdrawAnother = (actor: Actor): boolean => hasDuty(actor, 'coordinator');
/** Who took over how much is for those who see what each household is promised (job map section 14). */
export const maySeeWithdrawals = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'packing_lead', 'reviewer');
export const maySeeMoney = (actor: Actor, householdId: string): boolean =>
  actor.householdId === householdId || hasDuty(actor, 'treasurer', 'reviewer');

import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayReadBalances = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');
export const mayReadAccountOf = (actor: Actor, householdId: string): boolean =>
  actor.householdId === householdId || mayReadBalances(actor);

import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Coverage is a household's own; the coordinator sees sums over five households and more, and so may any member. */
export const hasCoverage = (actor: Actor): boolean => actor.householdId !== null;
export const maySeeTotals = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator') || actor.householdId !== null;

import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Hardship is told to the treasurer alone (job map 2.6). */
export const mayWaive = (actor: Actor): boolean => hasDuty(actor, 'treasurer');
export const hasDeposit = (actor: Actor): boolean => actor.householdId !== null;

import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayKeepMoney = (actor: Actor): boolean => hasDuty(actor, 'treasurer');
/** Amounts are for the treasurer and the reviewer; the coordinator sees yes or no (job map section 14). */
export const mayReadDeposits = (actor: Actor): boolean =>
  hasDuty(actor, 'treasurer', 'reviewer', 'coordinator');
export const mayReadAmounts = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');
export const mayPreviewYearEnd = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');

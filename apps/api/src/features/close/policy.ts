import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayReadClosing = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'reviewer');

export const mayClose = (actor: Actor): boolean => hasDuty(actor, 'treasurer');

/** Job map section 14, "deposit paid": the coordinator learns whether, not how much. */
export const seesDeposits = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');

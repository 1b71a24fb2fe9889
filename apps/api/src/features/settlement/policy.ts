import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Whoever led the day knows what it used up; whoever keeps the money may settle it too. */
export const maySettleSessions = (actor: Actor): boolean =>
  hasDuty(actor, 'packing_lead', 'coordinator', 'treasurer');
/** What each household is charged for a day (job map section 14). */
export const seesSettlements = (actor: Actor): boolean =>
  hasDuty(actor, 'packing_lead', 'coordinator', 'treasurer', 'reviewer');

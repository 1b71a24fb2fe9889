import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayPlanSessions = (actor: Actor): boolean => hasDuty(actor, 'packing_lead', 'coordinator');
/** What a household wants packed and when it stands at a line is its own, and that of whoever plans the day. */
export const mayJoinSessions = (actor: Actor): boolean => actor.householdId !== null;

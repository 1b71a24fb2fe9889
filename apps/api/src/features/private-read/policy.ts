import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Who looked at a household's private things is shown to that household. */
export const mayReadOwnLog = (actor: Actor): boolean => actor.householdId !== null;

/** The reviewer asks whether anyone looked where they had no need (job map 3.6, question 10). */
export const mayReviewLooks = (actor: Actor): boolean => hasDuty(actor, 'reviewer');

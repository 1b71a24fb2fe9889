import type { Actor } from '../../platform/actor.ts';

/** What the book knows of a household is for that household, or for its helper, to take along. */
export const mayTakeAlong = (actor: Actor): boolean => actor.householdId !== null;

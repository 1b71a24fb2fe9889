import type { Actor } from '../../platform/actor.ts';

/** A plan is its household's own: read and changed by whoever acts for it. No duty opens it. */
export const mayHavePlan = (actor: Actor): boolean => actor.householdId !== null;

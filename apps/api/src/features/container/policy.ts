import type { Actor } from '../../platform/actor.ts';

/** What stands at a household's own home is nobody else's to see or move (job map section 14). */
export const hasShelf = (actor: Actor): boolean => actor.householdId !== null;

import type { Actor } from '../../platform/actor.ts';

/** Who eats, how old they are and what they may not eat is their household's own. No duty opens it. */
export const mayHaveEaters = (actor: Actor): boolean => actor.householdId !== null;

import type { Actor } from '../../platform/actor.ts';

/** A kitchen is its household's own, and nobody else sees into it (job map section 14). */
export const hasKitchen = (actor: Actor): boolean => actor.householdId !== null;

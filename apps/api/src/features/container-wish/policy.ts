import type { Actor } from '../../platform/actor.ts';

export const mayWishContainers = (actor: Actor): boolean => actor.householdId !== null;

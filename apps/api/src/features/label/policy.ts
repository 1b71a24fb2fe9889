import type { Actor } from '../../platform/actor.ts';

/** A label tells what stands at a household's home: it is that household's alone. */
export const hasLabels = (actor: Actor): boolean => actor.householdId !== null;

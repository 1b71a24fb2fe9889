import type { Actor } from '../../platform/actor.ts';
import { mayInspectCommon } from '../inspection/policy.ts';

/** A household looks at its own lids; those of jars that stand in the store are looked at by whoever packs or runs it. */
export const mayLookAtLids = (actor: Actor): boolean => actor.householdId !== null || mayInspectCommon(actor);

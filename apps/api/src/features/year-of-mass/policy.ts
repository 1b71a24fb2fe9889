import type { Actor } from '../../platform/actor.ts';
import { maySeeStoreRotation } from '../rotation/policy.ts';

/** A household’s year of food is its own; the store’s is for whoever keeps or counts common stock. */
export const mayReadYearOf = (actor: Actor, of: 'household' | 'store'): boolean =>
  of === 'store' ? maySeeStoreRotation(actor) : actor.householdId !== null;

export const mayReadSomeYear = (actor: Actor): boolean =>
  mayReadYearOf(actor, 'household') || mayReadYearOf(actor, 'store');

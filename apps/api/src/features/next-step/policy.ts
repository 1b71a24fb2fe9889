import { type Actor, hasDuty } from '../../platform/actor.ts';
import { mayCheckSeals } from '../seam/policy.ts';

/** Job map section 14, "deposit paid": these learn at least whether; to everyone else nothing of it is said. */
export const seesWhoPaid = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'treasurer', 'reviewer');

/** Whoever leads the packing or keeps the machines says what becomes of containers in doubt. */
export const answersForSeals = mayCheckSeals;

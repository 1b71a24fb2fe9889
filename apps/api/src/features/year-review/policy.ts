import { type Actor, hasDuty } from '../../platform/actor.ts';
import { SIGNERS } from '../period/schema.ts';
import { mayReadBooks } from '../trial-balance/policy.ts';

/** Whoever signs a year may read what was signed. No household stands in it. */
export const mayReadYearReview = (actor: Actor): boolean => hasDuty(actor, ...SIGNERS);

/** An account in which one household alone stands tells its amount. */
export const seesAmountsOfYear = mayReadBooks;

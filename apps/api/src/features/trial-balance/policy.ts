import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayReadBooks = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'reviewer');
/** What a buy costs and what suppliers owe is no household's private matter. */
export const mayReadClearing = (actor: Actor): boolean =>
  hasDuty(actor, 'treasurer', 'reviewer', 'coordinator');

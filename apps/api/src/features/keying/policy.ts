import { type Actor, hasDuty } from '../../platform/actor.ts';

/** A keying of a household's says when it pledged or fetched: its own, and what these duties see of it anyway. */
export const seesAllKeyings = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'packing_lead', 'reviewer');

import { type Actor, type Duty, hasDuty } from '../../platform/actor.ts';

/** Stopping food is everybody's business who handles it; letting it go again takes both duties. */
export const mayHold = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

/** A household speaks for itself. */
export const mayAnswerRecall = (actor: Actor): boolean => actor.householdId !== null;

/** One's own or, for those who handle holds, the store's. */
export const mayDestroy = (actor: Actor): boolean => mayAnswerRecall(actor) || mayHold(actor);

/**
 * Whether two people together hold both duties that a release needs, packing lead and coordinator, one each
 * (job map section 2.17). A person who has both duties still needs the other.
 */
export const mayReleaseTogether = (asker: ReadonlySet<Duty>, agreer: ReadonlySet<Duty>): boolean =>
  (asker.has('packing_lead') && agreer.has('coordinator')) ||
  (asker.has('coordinator') && agreer.has('packing_lead'));

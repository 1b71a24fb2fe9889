import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Whoever lands bags or keeps claims takes their photos. Whoever may see the bag or the claim sees them: every member. */
export const mayAddPhotos = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'packing_lead', 'treasurer');

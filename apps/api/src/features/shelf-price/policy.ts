import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayNoteShelfPrices = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

/** No household stands in it; whoever signs a year reads what it says of savings. */
export const mayReadSavings = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'reviewer');

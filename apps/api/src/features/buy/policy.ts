import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayRunBuys = (actor: Actor): boolean => hasDuty(actor, 'coordinator');
/** Job map 14: these duties see what each household pledged; other members see sums over five households or more. */
export const maySeePledges = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'treasurer', 'packing_lead', 'reviewer');

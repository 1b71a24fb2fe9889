import { type Actor, hasDuty } from '../../platform/actor.ts';
import { mayHold } from '../hold/policy.ts';

/** The way of a bag names who got how much of it, which reviewer, coordinator and treasurer may know (job map 14). */
export const mayTrace = (actor: Actor): boolean => hasDuty(actor, 'reviewer', 'treasurer', 'coordinator');

/** How much of a way a reader sees: its own part, who got which share, or in a recall what became of every gram. */
export type Depth = 'own' | 'shares' | 'recall';

/** Shares are open to these four; what households did with theirs to those who handle holds, and in a recall alone. */
export function depthOf(actor: Actor, task: 'recall' | undefined): Depth {
  if (task === 'recall' && mayHold(actor)) return 'recall';
  return mayTrace(actor) || hasDuty(actor, 'packing_lead') ? 'shares' : 'own';
}

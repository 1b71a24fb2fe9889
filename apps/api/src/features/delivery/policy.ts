import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Whoever stands at the lorry: the coordinator, or a packing lead as landing helper. */
export const mayLand = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

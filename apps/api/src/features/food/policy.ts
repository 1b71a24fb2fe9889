import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Whoever plans buys or packs food may write down what a food is. */
export const mayEditFoods = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

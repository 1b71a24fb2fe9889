import { type Actor, hasDuty } from '../../platform/actor.ts';

/** As of container kinds: whoever buys them or pays for them knows the price. */
export const maySetSupplyPrices = (actor: Actor): boolean =>
  hasDuty(actor, 'coordinator', 'packing_lead', 'treasurer');

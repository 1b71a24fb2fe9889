import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Bags are numbered, weighed and judged by whoever lands them. */
export const mayHandleBags = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Whoever runs a line weighs what it fills. */
export const mayWeighTare = (actor: Actor): boolean => hasDuty(actor, 'packing_lead', 'coordinator');

import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayTendWork = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayCallOff = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

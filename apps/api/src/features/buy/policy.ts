import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayRunBuys = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

import { type Actor, hasDuty } from '../../platform/actor.ts';

/** A claim moves money between a buy and its supplier. */
export const mayKeepClaims = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'treasurer');

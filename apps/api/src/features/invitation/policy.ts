import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Invitations are made, listed and withdrawn by a coordinator. */
export const mayInvite = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

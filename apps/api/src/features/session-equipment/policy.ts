import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Whoever plans the day books what it needs. */
export const mayEquipSessions = (actor: Actor): boolean => hasDuty(actor, 'packing_lead', 'coordinator');

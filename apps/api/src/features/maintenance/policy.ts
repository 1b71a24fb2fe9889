import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayMaintain = (actor: Actor): boolean => hasDuty(actor, 'equipment_keeper', 'coordinator');

import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayClosePeriod = (actor: Actor): boolean => hasDuty(actor, 'treasurer');

import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayKeepInvoices = (actor: Actor): boolean => hasDuty(actor, 'treasurer', 'coordinator');

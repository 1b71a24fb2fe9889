import { type Actor, hasDuty } from '../../platform/actor.ts';

/** The treasurer may write down a carrier whose invoice has come. */
export const mayEditSuppliers = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'treasurer');

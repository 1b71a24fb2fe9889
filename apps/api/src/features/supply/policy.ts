import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Whoever packs keeps the shelf; whoever pays for it may, too. */
export const mayKeepSupplies = (actor: Actor): boolean =>
  hasDuty(actor, 'packing_lead', 'coordinator', 'treasurer');
/** The bank and the tin are the treasurer's. */
export const mayPayFromTill = (actor: Actor): boolean => hasDuty(actor, 'treasurer');

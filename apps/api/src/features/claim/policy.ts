import { type Actor, hasDuty } from '../../platform/actor.ts';

/** A claim moves money between a buy and its supplier. */
export const mayKeepClaims = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'treasurer');
/** Giving up a claim that nobody answered is the treasurer's, as giving up a debt is. */
export const mayWriteClaimsOff = (actor: Actor): boolean => hasDuty(actor, 'treasurer');
/** What suppliers are asked for is no household's private matter; what was answered is kept with the books. */
export const mayReadClaimHistory = (actor: Actor): boolean =>
  hasDuty(actor, 'treasurer', 'reviewer', 'coordinator');

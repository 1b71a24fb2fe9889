import { type Actor, hasDuty } from '../../platform/actor.ts';
import { seesDesk } from '../loan/policy.ts';
import { mayReadAmounts } from '../money/policy.ts';
import { mayWriteNotices } from '../notice/policy.ts';

/** Running the group is the coordinator’s to hand over, and the money part of it the treasurer’s (job map 2.19). */
export const mayHandOverDuties = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'treasurer');

/** Who acts for whom is the household’s to know, and the coordinator’s, who may end it. */
export const seesHelpers = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

export const seesAmounts = mayReadAmounts;
export const seesLent = seesDesk;

/** Whom to telephone is for whoever writes notices. */
export const seesUnreached = mayWriteNotices;

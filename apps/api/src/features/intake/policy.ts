import { type Actor, hasDuty } from '../../platform/actor.ts';

/** A household takes in what becomes its own; gifts to the store are taken in by whoever packs or runs it. */
export const mayTakeIn = (actor: Actor): boolean => actor.householdId !== null || mayTakeInCommon(actor);

export const mayTakeInCommon = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'packing_lead');

/** Who gave something is told to a coordinator who says what for. */
export const mayReadDonors = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

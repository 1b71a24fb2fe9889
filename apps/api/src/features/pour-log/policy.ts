import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Whoever runs a line writes its log, for every household at it. */
export const mayLogPours = (actor: Actor): boolean => hasDuty(actor, 'packing_lead', 'coordinator');
export const maySeeLog = (actor: Actor): boolean => hasDuty(actor, 'packing_lead', 'coordinator', 'reviewer');

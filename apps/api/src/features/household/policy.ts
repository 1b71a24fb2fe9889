import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Whether the actor acts for this household: as one of its own, or as its helper. */
export const isTheirs = (actor: Actor, householdId: string): boolean => actor.householdId === householdId;

export const mayFoundPaperHousehold = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

export const mayRename = (actor: Actor): boolean =>
  actor.householdId !== null || hasDuty(actor, 'coordinator');
export const mayRenameThis = (actor: Actor, householdId: string): boolean =>
  isTheirs(actor, householdId) || hasDuty(actor, 'coordinator');

import { type Actor, hasDuty } from '../../platform/actor.ts';

/** A helper can't name further helpers. */
export const mayNameHelpers = (actor: Actor): boolean =>
  (actor.householdId !== null && !actor.isHelping) || hasDuty(actor, 'coordinator');

type Subject = { readonly householdId: string; readonly hasLogin: boolean };

/** A household names its own helpers; the coordinator does it for one that has no login to do it with. */
export function mayNameHelpersOf(actor: Actor, { householdId, hasLogin }: Subject): boolean {
  const isOwn = actor.householdId === householdId && !actor.isHelping;
  return isOwn || (!hasLogin && hasDuty(actor, 'coordinator'));
}

/** Ending a right only takes away, so the coordinator may always do it, and the helper may step down. */
export function mayEndGrant(actor: Actor, grant: { householdId: string; personId: string }): boolean {
  const isOwn = actor.householdId === grant.householdId && !actor.isHelping;
  return isOwn || actor.personId === grant.personId || hasDuty(actor, 'coordinator');
}

export function mayListHelpersOf(actor: Actor, householdId: string): boolean {
  return actor.householdId === householdId || hasDuty(actor, 'coordinator');
}

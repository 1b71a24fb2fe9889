import { type Actor, hasDuty } from '../../platform/actor.ts';

/** A helper acts for a household, but doesn't take it out of the storehouse. */
export const mayAskToLeave = (actor: Actor): boolean =>
  (actor.householdId !== null && !actor.isHelping) || hasDuty(actor, 'coordinator');

type Subject = { readonly householdId: string; readonly hasLogin: boolean };

/** A household leaves by itself; the coordinator does it for one that has no login to do it with. */
export function mayTakeOut(actor: Actor, { householdId, hasLogin }: Subject): boolean {
  const isOwn = actor.householdId === householdId && !actor.isHelping;
  return isOwn || (!hasLogin && hasDuty(actor, 'coordinator'));
}

type Leaver = {
  readonly personId: string;
  readonly loginId: string | null;
  readonly householdId: string | null;
};

/** A person leaves by themselves; a household takes out one of its own who has no login. */
export function mayTakeOutPerson(actor: Actor, person: Leaver): boolean {
  if (actor.isHelping) return false;
  const isOfOwn = person.householdId !== null && actor.householdId === person.householdId;
  return actor.personId === person.personId || (person.loginId === null && isOfOwn);
}

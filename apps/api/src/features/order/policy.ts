import { type Actor, hasDuty } from '../../platform/actor.ts';

export const mayReopen = (actor: Actor): boolean => hasDuty(actor, 'coordinator');
export const mayAgreeToOrder = (actor: Actor): boolean => hasDuty(actor, 'coordinator', 'treasurer');
export const mayConfirmTerms = mayReopen;

type Consent = { readonly duty: string; readonly personId: string };

/** The duties whose agreement to an order is still to come. */
export const dutiesToAgree = (consents: readonly Consent[]) =>
  (['coordinator', 'treasurer'] as const).filter((duty) => !consents.some((given) => given.duty === duty));

/** The duty for which the actor may agree next; a person agrees once, whatever duties it holds. */
export function mayAgreeAs(actor: Actor, consents: readonly Consent[]) {
  if (consents.some((given) => given.personId === actor.personId)) return null;
  return dutiesToAgree(consents).find((duty) => actor.duties.has(duty)) ?? null;
}

import { type Actor, hasDuty } from '../../platform/actor.ts';

/** Common stock is offered by the coordinator; what a household has, by itself alone. */
export const mayOfferCommonStock = (actor: Actor): boolean => hasDuty(actor, 'coordinator');

export const mayOffer = (actor: Actor): boolean => actor.householdId !== null || mayOfferCommonStock(actor);
export const mayOfferOf = (actor: Actor, of: 'household' | 'store'): boolean =>
  of === 'store' ? mayOfferCommonStock(actor) : actor.householdId !== null;

export const isGiver = (actor: Actor, householdId: string | null): boolean =>
  householdId === null ? mayOfferCommonStock(actor) : householdId === actor.householdId;

/** What is offered to members goes to households. */
export const mayClaim = (actor: Actor): boolean => actor.householdId !== null;

import { massAccount } from '../mass-account.ts';
import { type MovementDraft, moveGrams } from '../movement-draft.ts';

/**
 * An owner's grams are poured from a bag into a container and stay its own.
 * Units: grams, net. Errors: AssertionError unless the amount is whole and positive.
 */
export function poured(event: {
  readonly lotId: string;
  readonly bagVesselId: string;
  readonly containerVesselId: string;
  readonly ownerId: string;
  readonly amountGrams: number;
}): MovementDraft[] {
  const from = massAccount(event.bagVesselId, event.ownerId);
  const to = massAccount(event.containerVesselId, event.ownerId);
  return [moveGrams({ lotId: event.lotId, from, to, amountGrams: event.amountGrams })];
}

/**
 * A household takes its grams out of a container into its kitchen, whose vessel has the household's own id.
 * Units: grams. Errors: AssertionError unless the amount is whole and positive.
 */
export function takenToKitchen(event: {
  readonly lotId: string;
  readonly containerVesselId: string;
  readonly householdId: string;
  readonly amountGrams: number;
}): MovementDraft[] {
  const from = massAccount(event.containerVesselId, event.householdId);
  const to = massAccount(event.householdId, event.householdId);
  return [moveGrams({ lotId: event.lotId, from, to, amountGrams: event.amountGrams })];
}

/**
 * An owner's grams leave a bag, a container or a kitchen for an outside vessel, which the caller names by its id.
 * Units: grams. Errors: none.
 */
export type Leaving = {
  readonly lotId: string;
  readonly fromVesselId: string;
  readonly outsideVesselId: string;
  readonly ownerId: string;
  readonly amountGrams: number;
};

/**
 * Grams are taken to eat. They keep their owner, so that a household's year adds up.
 * Units: grams. Errors: AssertionError unless the amount is whole and positive.
 */
export const takenToEat = (event: Leaving): MovementDraft[] => left(event);

/** Grams are thrown away. Units: grams. Errors: AssertionError unless the amount is whole and positive. */
export const discarded = (event: Leaving): MovementDraft[] => left(event);

/** Grams go on the compost. Units: grams. Errors: AssertionError unless the amount is whole and positive. */
export const composted = (event: Leaving): MovementDraft[] => left(event);

/** Grams are fed to animals. Units: grams. Errors: AssertionError unless the amount is whole and positive. */
export const fedToAnimals = (event: Leaving): MovementDraft[] => left(event);

/** Grams are spilled. Units: grams. Errors: AssertionError unless the amount is whole and positive. */
export const spilled = (event: Leaving): MovementDraft[] => left(event);

/** Grams are taken as a sample. Units: grams. Errors: AssertionError unless the amount is whole and positive. */
export const sampled = (event: Leaving): MovementDraft[] => left(event);

/** Grams are given away. Units: grams. Errors: AssertionError unless the amount is whole and positive. */
export const given = (event: Leaving): MovementDraft[] => left(event);

function left({ lotId, fromVesselId, outsideVesselId, ownerId, amountGrams }: Leaving): MovementDraft[] {
  const from = massAccount(fromVesselId, ownerId);
  const to = massAccount(outsideVesselId, ownerId);
  return [moveGrams({ lotId, from, to, amountGrams })];
}

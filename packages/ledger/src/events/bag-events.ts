import { assertWhole } from '@sheafbook/units';
import { massAccount } from '../mass-account.ts';
import { type MovementDraft, moveGrams } from '../movement-draft.ts';

/**
 * A numbered bag arrives: from the supplier's outside vessel into the bag, still nobody's.
 * Units: grams, net. Errors: AssertionError unless the amount is whole and positive.
 */
export function bagLanded(event: {
  readonly lotId: string;
  readonly supplierVesselId: string;
  readonly bagVesselId: string;
  readonly unassignedOwnerId: string;
  readonly amountGrams: number;
}): MovementDraft[] {
  const from = massAccount(event.supplierVesselId, event.unassignedOwnerId);
  const to = massAccount(event.bagVesselId, event.unassignedOwnerId);
  return [moveGrams({ lotId: event.lotId, from, to, amountGrams: event.amountGrams })];
}

/**
 * The weight that a bag was received with is put right, before it is split: the difference comes from the supplier,
 * or goes back to it. No movement when the two weights agree.
 * Units: grams, net. Errors: AssertionError when a weight is not whole and ≥ 0.
 */
export function bagReceiptCorrected(event: {
  readonly lotId: string;
  readonly supplierVesselId: string;
  readonly bagVesselId: string;
  readonly unassignedOwnerId: string;
  readonly bookedGrams: number;
  readonly weighedGrams: number;
}): MovementDraft[] {
  assertWhole(event.bookedGrams, 'bookedGrams');
  assertWhole(event.weighedGrams, 'weighedGrams');
  const moreGrams = event.weighedGrams - event.bookedGrams;
  if (moreGrams === 0) return [];
  const supplier = massAccount(event.supplierVesselId, event.unassignedOwnerId);
  const bag = massAccount(event.bagVesselId, event.unassignedOwnerId);
  return moreGrams > 0
    ? [moveGrams({ lotId: event.lotId, from: supplier, to: bag, amountGrams: moreGrams })]
    : [moveGrams({ lotId: event.lotId, from: bag, to: supplier, amountGrams: -moreGrams })];
}

/**
 * Grams are lost from a bag before they are anyone's: swept up, wet, sampled. From the bag to an outside vessel.
 * Units: grams. Errors: AssertionError unless the amount is whole and positive.
 */
export function bagLost(event: {
  readonly lotId: string;
  readonly bagVesselId: string;
  readonly outsideVesselId: string;
  readonly unassignedOwnerId: string;
  readonly amountGrams: number;
}): MovementDraft[] {
  const from = massAccount(event.bagVesselId, event.unassignedOwnerId);
  const to = massAccount(event.outsideVesselId, event.unassignedOwnerId);
  return [moveGrams({ lotId: event.lotId, from, to, amountGrams: event.amountGrams })];
}

/** Grams that become an owner's, or stop being so, inside a bag. Units: grams. Errors: none. */
export type ShareInBag = {
  readonly lotId: string;
  readonly bagVesselId: string;
  readonly unassignedOwnerId: string;
  readonly ownerId: string;
  readonly amountGrams: number;
};

/**
 * The split gives an owner, a household or common stock, grams of a bag. Nothing leaves the bag.
 * Units: grams. Errors: AssertionError unless the amount is whole and positive.
 */
export function shareAwarded(event: ShareInBag): MovementDraft[] {
  return ownerChanged({
    lotId: event.lotId,
    vesselId: event.bagVesselId,
    fromOwnerId: event.unassignedOwnerId,
    toOwnerId: event.ownerId,
    amountGrams: event.amountGrams,
  });
}

/**
 * A share in a bag becomes nobody's again.
 * Units: grams. Errors: AssertionError unless the amount is whole and positive.
 */
export function shareReturned(event: ShareInBag): MovementDraft[] {
  return ownerChanged({
    lotId: event.lotId,
    vesselId: event.bagVesselId,
    fromOwnerId: event.ownerId,
    toOwnerId: event.unassignedOwnerId,
    amountGrams: event.amountGrams,
  });
}

/**
 * A share that its household never fetched goes to common stock, by the group's rule.
 * Units: grams. Errors: AssertionError unless the amount is whole and positive.
 */
export function uncollectedTaken(event: {
  readonly lotId: string;
  readonly bagVesselId: string;
  readonly householdId: string;
  readonly commonOwnerId: string;
  readonly amountGrams: number;
}): MovementDraft[] {
  return ownerChanged({
    lotId: event.lotId,
    vesselId: event.bagVesselId,
    fromOwnerId: event.householdId,
    toOwnerId: event.commonOwnerId,
    amountGrams: event.amountGrams,
  });
}

/**
 * Grams change hands where they stand, in a bag or a container.
 * Units: grams. Errors: AssertionError unless the amount is whole and positive and the owners differ.
 */
export function ownerChanged(event: {
  readonly lotId: string;
  readonly vesselId: string;
  readonly fromOwnerId: string;
  readonly toOwnerId: string;
  readonly amountGrams: number;
}): MovementDraft[] {
  const from = massAccount(event.vesselId, event.fromOwnerId);
  const to = massAccount(event.vesselId, event.toOwnerId);
  return [moveGrams({ lotId: event.lotId, from, to, amountGrams: event.amountGrams })];
}

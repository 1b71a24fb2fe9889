import { splitByWeight } from '@sheafbook/sharing';
import { assert, assertWhole } from '@sheafbook/units';
import { massAccount } from '../mass-account.ts';
import { type MovementDraft, moveGrams } from '../movement-draft.ts';

/**
 * A vessel weighs other than the book says. The difference is borne by its owners in proportion to what each is booked
 * with, by largest remainder; what is missing goes to the outside vessel "unexplained", what is over comes from it.
 * Units: grams, net. Shape: owners in seat order, which settles ties; one movement for each owner with a difference.
 * Errors: AssertionError when a weight is not whole and ≥ 0, or something is weighed and nothing booked,
 *   unless one owner alone is named, who gets it.
 * Source: ledger-notes 6.9; Hamilton's method of largest remainders.
 */
export function reweighed(event: {
  readonly lotId: string;
  readonly vesselId: string;
  readonly unexplainedVesselId: string;
  readonly owners: readonly { readonly ownerId: string; readonly bookedGrams: number }[];
  readonly weighedGrams: number;
}): MovementDraft[] {
  assertWhole(event.weighedGrams, 'weighedGrams');
  for (const { bookedGrams } of event.owners) assertWhole(bookedGrams, 'bookedGrams');
  const bookedGrams = event.owners.reduce((sum, owner) => sum + owner.bookedGrams, 0);
  if (bookedGrams === event.weighedGrams) return [];
  const isOneOwner = event.owners.length === 1;
  assert(bookedGrams > 0 || isOneOwner, 'an empty vessel has no owner to bear a difference');

  const isLoss = event.weighedGrams < bookedGrams;
  const shares = splitByWeight(
    Math.abs(event.weighedGrams - bookedGrams),
    isOneOwner ? [1] : event.owners.map((owner) => owner.bookedGrams),
  );
  return event.owners.flatMap(({ ownerId }, position) => {
    const amountGrams = shares[position] ?? 0;
    if (amountGrams === 0) return [];
    const inside = massAccount(event.vesselId, ownerId);
    const outside = massAccount(event.unexplainedVesselId, ownerId);
    const [from, to] = isLoss ? [inside, outside] : [outside, inside];
    return [moveGrams({ lotId: event.lotId, from, to, amountGrams })];
  });
}

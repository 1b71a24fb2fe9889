import { splitByWeight } from '@sheafbook/sharing';
import { assert, assertWhole, sumOf } from '@sheafbook/units';
import { massAccount } from '../mass-account.ts';
import { type MovementDraft, moveGrams } from '../movement-draft.ts';

type Weighing = {
  readonly lotId: string;
  readonly vesselId: string;
  readonly unexplainedVesselId: string;
  readonly owners: readonly { readonly ownerId: string; readonly bookedGrams: number }[];
  readonly weighedGrams: number;
};

/**
 * A vessel weighs other than the book says. The difference is borne by its owners in proportion to what each is booked
 * with, by largest remainder; what is missing goes to the outside vessel "unexplained", what is over comes from it. What two
 * moisture readings explain of it goes to or comes from the outside vessel "moisture" first, shared by the same rule.
 * Units: grams, net; `moisture.grams` is below zero where the food dried. Shape: owners in seat order, which settles ties; one
 *   movement for each owner with a difference, by moisture and by no explanation.
 * Errors: AssertionError when a weight is not whole and ≥ 0, or something is weighed and nothing booked,
 *   unless one owner alone is named, who gets it; when moisture explains more than the difference, or the opposite of it.
 * Source: ledger-notes 6.9; Hamilton's method of largest remainders.
 */
export function reweighed(
  event: Weighing & {
    readonly moisture?: { readonly vesselId: string; readonly grams: number } | undefined;
  },
): MovementDraft[] {
  const { moisture, ...weighing } = event;
  if (!moisture || moisture.grams === 0) return differing(weighing);
  const bookedGrams = sumOf(event.owners.map((owner) => owner.bookedGrams));
  const [least, most] = [0, event.weighedGrams - bookedGrams].toSorted((a, b) => a - b) as [number, number];
  assert(
    moisture.grams >= least && moisture.grams <= most,
    'moisture explains part of the difference at most',
  );
  const byMoisture = differing({
    ...weighing,
    ...{ unexplainedVesselId: moisture.vesselId, weighedGrams: bookedGrams + moisture.grams },
  });
  const owners = event.owners.map(({ ownerId, bookedGrams: before }) => {
    const own = byMoisture.find(({ source, destination }) =>
      [source.ownerId, destination.ownerId].includes(ownerId),
    );
    return { ownerId, bookedGrams: before + Math.sign(moisture.grams) * (own?.amount ?? 0) };
  });
  return [...byMoisture, ...differing({ ...weighing, owners })];
}

function differing(event: Weighing): MovementDraft[] {
  assertWhole(event.weighedGrams, 'weighedGrams');
  for (const { bookedGrams } of event.owners) assertWhole(bookedGrams, 'bookedGrams');
  const bookedGrams = sumOf(event.owners.map((owner) => owner.bookedGrams));
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

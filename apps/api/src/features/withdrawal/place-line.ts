import type { AllotmentRow } from '@sheafbook/db/tables';
import { type PledgeTaker, placeWithdrawnAward, splitByWeight, type WaitingTaker } from '@sheafbook/sharing';
import type { WithdrawnLine } from './answer.ts';

/** Another pledger of the food: what its pledges on the line allow, in line units. Its promise is in the rows. */
export type LinePledger = {
  readonly householdId: string;
  readonly seat: number;
  readonly pledgeOrder: number;
  readonly leastUnits: number;
  readonly wantedUnits: number;
  readonly mostUnits: number;
  readonly stepUnits: number;
};

/**
 * Finds takers for a promise once the buy is ordered: those who are promised some of the food, in pledge order up to
 * their most; then those who pledged and got nothing, if what is left reaches their least; then common stock up to its
 * cap (job map 4.7). Grams go with the units, the last gram by largest remainder in the order of the takers.
 */
export function placeLine(at: {
  readonly own: AllotmentRow;
  readonly others: readonly AllotmentRow[];
  readonly pledgers: readonly LinePledger[];
  readonly commonOwnerId: string;
  readonly capUnits: number;
}): WithdrawnLine {
  const { own, others, pledgers, commonOwnerId, capUnits } = at;
  const promised = (ownerId: string) => others.find((row) => row.ownerId === ownerId)?.units ?? 0;
  const takers = pledgers
    .filter(({ householdId }) => promised(householdId) > 0)
    .map((pledger) => toTaker(pledger, promised(pledger.householdId)));
  const commonStock = {
    ownerId: commonOwnerId,
    roomUnits: Math.max(0, capUnits - promised(commonOwnerId)),
  };
  const noRoom = { ...commonStock, roomUnits: 0 };
  const asked = { withdrawnUnits: own.units, pledgers: takers };
  const { leftUnits: unasked } = placeWithdrawnAward({ ...asked, waitlist: [], commonStock: noRoom });
  const waiting = pledgers.filter(({ householdId }) => promised(householdId) === 0);
  const waitlist = listWaiting(waiting, unasked);
  const { placements, leftUnits } = placeWithdrawnAward({ ...asked, waitlist, commonStock });
  const parts = splitByWeight(own.grams, [...placements.map(({ units }) => units), leftUnits]);
  return {
    lineId: own.buyLineId,
    units: own.units,
    grams: own.grams,
    placements: placements.map((placement, position) => ({ ...placement, grams: parts[position] ?? 0 })),
    leftUnits,
    leftGrams: parts[placements.length] ?? 0,
  };
}

function toTaker(pledger: LinePledger, awardUnits: number): PledgeTaker {
  const { householdId: ownerId, seat, pledgeOrder, stepUnits } = pledger;
  // An earlier withdrawal fills a promise up to its most, and never beyond; a fill set by hand stays as it is.
  return {
    ownerId,
    seat,
    pledgeOrder,
    stepUnits,
    awardUnits,
    mostUnits: Math.max(awardUnits, pledger.mostUnits),
  };
}

/** Those whose least can be met from what is left when their turn comes. */
function listWaiting(pledgers: readonly LinePledger[], leftUnits: number): WaitingTaker[] {
  const waitlist: WaitingTaker[] = [];
  let left = leftUnits;
  for (const pledger of pledgers.toSorted((a, b) => a.pledgeOrder - b.pledgeOrder)) {
    const { householdId: ownerId, seat, pledgeOrder: waitOrder, wantedUnits, stepUnits } = pledger;
    const room = Math.min(left, wantedUnits);
    const units = room - (room % stepUnits);
    if (units === 0 || units < pledger.leastUnits) continue;
    waitlist.push({ ownerId, seat, waitOrder, wantedUnits, stepUnits });
    left -= units;
  }
  return waitlist;
}

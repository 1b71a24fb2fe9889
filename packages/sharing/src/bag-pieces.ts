import { assert, assertWhole } from '@sheafbook/units';
import { type BagKind, findMostGroups, type OwnerGroup } from './bag-pieces-groups.ts';
import { bagsAddingUpTo, findGroupsInPairs } from './bag-pieces-match.ts';

/**
 * What an owner is to get out of the bags. With `wholeBags` its promise was whole bags, and it gets them before the
 * others are cut. Units: grams, or any one unit of mass. Errors: none; `planBagPieces` checks.
 */
export type BagAllotment = {
  readonly ownerId: string;
  readonly seat: number;
  readonly units: number;
  readonly wholeBags?: boolean;
};

/** A piece of a bag. Units: as the allotments. Errors: none. */
export type BagPiece = { readonly ownerId: string; readonly units: number };

/** A bag by its position in the list that was given, from 0, and who gets what of it. Units: as asked. Errors: none. */
export type BagCut = {
  readonly position: number;
  readonly bagUnits: number;
  readonly pieces: readonly BagPiece[];
};

/**
 * A plan of pieces. `isFewest` says that no plan with the same whole bags needs fewer; it is false when there were too many
 * owners or sizes of bags to search them all. Units: as the allotments. Errors: none.
 */
export type BagPlan = {
  readonly bags: readonly BagCut[];
  readonly pieceCount: number;
  readonly isFewest: boolean;
};

/**
 * Plans who gets which piece of which bag with the fewest pieces. Owners promised whole bags get whole bags first, as
 * far as their allotment reaches. The rest are put into as many groups as possible whose allotments fill whole bags,
 * up to 16 owners by searching them all, beyond that in pairs; inside a group the owners fill its bags in turn.
 * Units: allotments and bags alike, whole. The bags may differ: use their booked net mass. The common stock is an owner
 * like any other.
 * Shape: one cut a bag in the order given, pieces in seat order. Pieces of a bag add up to the bag, pieces of an owner
 * to its allotment.
 * Ties: the group list that is smallest by seat; groups take the first bags of their sizes in that order.
 * Errors: AssertionError when a number is not whole, a bag is empty, a seat or owner comes twice, or the allotments do
 * not add up to the bags.
 */
export function planBagPieces(allotments: readonly BagAllotment[], bagUnits: readonly number[]): BagPlan {
  checkPlan(allotments, bagUnits);
  const owners = allotments
    .filter((allotment) => allotment.units > 0)
    .toSorted((a, b) => a.seat - b.seat)
    .map((allotment) => ({ ...allotment }));
  const cuts = bagUnits.map((units, position) => ({ position, bagUnits: units, pieces: [] as BagPiece[] }));
  const cutBags = giveWholeBags(owners, cuts);
  const open = owners.filter((owner) => owner.units > 0);
  const { groups, isFewest } = groupOwners(open, kindsOf(cutBags));
  let free = cutBags;
  for (const group of groups) {
    const bags = firstOfKinds(free, group.bagCounts, kindsOf(cutBags));
    free = free.filter((bag) => !bags.includes(bag));
    fillInTurn(
      group.owners.flatMap((position) => open[position] ?? []),
      bags,
    );
  }
  return { bags: cuts, pieceCount: cuts.reduce((sum, cut) => sum + cut.pieces.length, 0), isFewest };
}

type OpenCut = { readonly position: number; readonly bagUnits: number; readonly pieces: BagPiece[] };
type OpenOwner = { readonly ownerId: string; units: number; readonly wholeBags?: boolean };

/** Takes whole bags for those promised them, lessens what they still get, and returns the bags left to cut. */
function giveWholeBags(owners: readonly OpenOwner[], cuts: readonly OpenCut[]): OpenCut[] {
  let free = [...cuts];
  for (const owner of owners) {
    if (!owner.wholeBags) continue;
    const kinds = kindsOf(free);
    const counts = bagsAddingUpTo(owner.units, kinds) ?? largestThatFit(owner.units, kinds);
    const bags = firstOfKinds(free, counts, kinds);
    for (const bag of bags) bag.pieces.push({ ownerId: owner.ownerId, units: bag.bagUnits });
    owner.units -= bags.reduce((sum, bag) => sum + bag.bagUnits, 0);
    free = free.filter((bag) => !bags.includes(bag));
  }
  return free;
}

function largestThatFit(units: number, kinds: readonly BagKind[]): number[] {
  let leftUnits = units;
  return kinds.map(({ bagUnits, count }) => {
    const taken = Math.min(count, Math.floor(leftUnits / bagUnits));
    leftUnits -= taken * bagUnits;
    return taken;
  });
}

function groupOwners(owners: readonly OpenOwner[], kinds: readonly BagKind[]) {
  const ownerUnits = owners.map((owner) => owner.units);
  const searched: readonly OwnerGroup[] | undefined =
    owners.length === 0 ? [] : findMostGroups(ownerUnits, kinds);
  return {
    groups: searched ?? findGroupsInPairs(ownerUnits, kinds),
    isFewest: searched !== undefined,
  };
}

/** The sizes among some bags, the largest first. */
function kindsOf(bags: readonly OpenCut[]): BagKind[] {
  const counts = new Map<number, number>();
  for (const { bagUnits } of bags) counts.set(bagUnits, (counts.get(bagUnits) ?? 0) + 1);
  return [...counts]
    .map(([bagUnits, count]) => ({ bagUnits, count }))
    .toSorted((a, b) => b.bagUnits - a.bagUnits);
}

function firstOfKinds(
  free: readonly OpenCut[],
  counts: readonly number[],
  kinds: readonly BagKind[],
): OpenCut[] {
  return kinds
    .flatMap(({ bagUnits }, kind) =>
      free.filter((bag) => bag.bagUnits === bagUnits).slice(0, counts[kind] ?? 0),
    )
    .toSorted((a, b) => a.position - b.position);
}

function fillInTurn(owners: readonly OpenOwner[], bags: readonly OpenCut[]): void {
  const inTurn = owners.map((owner) => ({ ...owner }));
  for (const bag of bags) {
    let roomUnits = bag.bagUnits;
    for (const owner of inTurn) {
      const units = Math.min(owner.units, roomUnits);
      if (units === 0) continue;
      bag.pieces.push({ ownerId: owner.ownerId, units });
      owner.units -= units;
      roomUnits -= units;
    }
  }
}

function checkPlan(allotments: readonly BagAllotment[], bagUnits: readonly number[]): void {
  for (const { seat, units } of allotments) {
    assertWhole(seat, 'seat');
    assertWhole(units, 'units');
  }
  for (const units of bagUnits) {
    assertWhole(units, 'bagUnits');
    assert(units > 0, 'a bag must hold something');
  }
  const { length } = allotments;
  assert(new Set(allotments.map((allotment) => allotment.seat)).size === length, 'two owners have one seat');
  assert(
    new Set(allotments.map((allotment) => allotment.ownerId)).size === length,
    'an owner is listed twice',
  );
  const allottedUnits = allotments.reduce((sum, allotment) => sum + allotment.units, 0);
  const bagSum = bagUnits.reduce((sum, units) => sum + units, 0);
  assert(allottedUnits === bagSum, `${allottedUnits} allotted is not the ${bagSum} that the bags hold`);
}

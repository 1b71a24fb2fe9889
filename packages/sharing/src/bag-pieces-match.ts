import { type BagKind, findMostGroups, MOST_OWNERS_SEARCHED, type OwnerGroup } from './bag-pieces-groups.ts';

const MOST_TRIES = 2_000;

/**
 * How many bags of each kind add up to a mass exactly, larger bags first; undefined when none do or none was found
 * within a fixed number of tries, so that the same question always gets the same answer.
 * Units: the mass and the bags alike. Shape: one count a kind. Errors: none.
 */
export function bagsAddingUpTo(units: number, kinds: readonly BagKind[]): number[] | undefined {
  let tries = 0;
  const search = (leftUnits: number, position: number): number[] | undefined => {
    const kind = kinds[position];
    if (leftUnits === 0) return kinds.slice(position).map(() => 0);
    if (kind === undefined || tries >= MOST_TRIES) return undefined;
    for (let count = Math.min(kind.count, Math.floor(leftUnits / kind.bagUnits)); count >= 0; count -= 1) {
      tries += 1;
      const later = search(leftUnits - count * kind.bagUnits, position + 1);
      if (later) return [count, ...later];
    }
    return undefined;
  };
  return search(units, 0);
}

/**
 * Groups owners with bags when there are too many for the full search: owners who come out at whole bags by
 * themselves first, then pairs in seat order until few enough are left to search, then the rest in one group.
 * Units: owners and bags alike. Shape: as `findMostGroups`, groups in order of their first owner. Errors: none.
 */
export function findGroupsInPairs(ownerUnits: readonly number[], kinds: readonly BagKind[]): OwnerGroup[] {
  const groups: OwnerGroup[] = [];
  let owners = ownerUnits.map((_, position) => position);
  let left = kinds.map((kind) => ({ ...kind }));
  const tryGroup = (members: readonly number[]) => {
    const bagCounts = bagsAddingUpTo(sumUnits(ownerUnits, members), left);
    if (!bagCounts) return false;
    groups.push({ owners: members, bagCounts });
    owners = owners.filter((owner) => !members.includes(owner));
    left = takeBags(left, bagCounts);
    return true;
  };
  for (const owner of owners) tryGroup([owner]);
  for (const first of owners) {
    if (owners.length <= MOST_OWNERS_SEARCHED) break;
    if (!owners.includes(first)) continue;
    owners.filter((second) => second > first).some((second) => tryGroup([first, second]));
  }
  return [...groups, ...groupTheRest(ownerUnits, owners, left)].toSorted(
    (a, b) => (a.owners[0] ?? 0) - (b.owners[0] ?? 0),
  );
}

function groupTheRest(
  ownerUnits: readonly number[],
  owners: readonly number[],
  left: readonly BagKind[],
): OwnerGroup[] {
  if (owners.length === 0) return [];
  const restUnits = owners.map((owner) => ownerUnits[owner] ?? 0);
  const used = left.map((_, kind) => kind).filter((kind) => (left[kind]?.count ?? 0) > 0);
  const usedKinds = left.filter((kind) => kind.count > 0);
  const searched = findMostGroups(restUnits, usedKinds);
  if (!searched) return [{ owners, bagCounts: left.map((kind) => kind.count) }];
  return searched.map((group) => ({
    owners: group.owners.map((position) => owners[position] ?? 0),
    bagCounts: left.map((_, kind) => group.bagCounts[used.indexOf(kind)] ?? 0),
  }));
}

function takeBags(kinds: readonly BagKind[], bagCounts: readonly number[]): BagKind[] {
  return kinds.map((kind, position) => ({ ...kind, count: kind.count - (bagCounts[position] ?? 0) }));
}

function sumUnits(ownerUnits: readonly number[], members: readonly number[]): number {
  return members.reduce((sum, owner) => sum + (ownerUnits[owner] ?? 0), 0);
}

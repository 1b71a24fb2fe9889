/** Bags of one size. Units: `bagUnits` in the owners' unit. Errors: none. */
export type BagKind = { readonly bagUnits: number; readonly count: number };

/** Owners whose shares add up to whole bags: positions of owners, and how many bags of each kind. Units: none. Errors: none. */
export type OwnerGroup = { readonly owners: readonly number[]; readonly bagCounts: readonly number[] };

/** Beyond this many owners the search over all subsets is not tried. Units: owners. Errors: none. */
export const MOST_OWNERS_SEARCHED = 16;

const MOST_STATES = 2 ** 22;
const MOST_BAG_VECTORS = 2 ** 12;

/**
 * Splits owners and bags into as many groups as possible, each with shares that add up to its bags. A group of n owners
 * and b bags needs n + b − 1 pieces, so the most groups are the fewest cuts.
 *
 * Owners and bags are added one by one in every order; `best` of a set of owners and a set of bags is the most often
 * that the two sums can have met on the way. With one size of bag the bags need no tracking: the sums meet when the
 * shares are a multiple of it.
 *
 * Units: owners and bags alike, whole; all owners together equal all bags together.
 * Ties: the group list that is smallest by seat, then the larger bags to the earlier group.
 * Errors: none; undefined when there are too many owners or kinds to search.
 */
export function findMostGroups(
  ownerUnits: readonly number[],
  kinds: readonly BagKind[],
): OwnerGroup[] | undefined {
  const tracked = kinds.length === 1 ? [] : kinds;
  const vectorCount = tracked.reduce((product, kind) => product * (kind.count + 1), 1);
  const isTooLarge =
    ownerUnits.length > MOST_OWNERS_SEARCHED ||
    vectorCount > MOST_BAG_VECTORS ||
    vectorCount * 2 ** ownerUnits.length > MOST_STATES;
  if (isTooLarge) return undefined;
  const space = searchSpace(ownerUnits, tracked, kinds[0]?.bagUnits ?? 1);
  return readGroups(space, mostMeetings(space)).map(({ mask, vector }) => {
    const owners = ownerUnits.map((_, position) => position).filter((position) => mask & (1 << position));
    const bagCounts = tracked.length > 0 ? space.vectors[vector] : undefined;
    return { owners, bagCounts: bagCounts ?? [sumOfMask(space, mask) / (kinds[0]?.bagUnits ?? 1)] };
  });
}

type SearchSpace = {
  readonly ownerCount: number;
  readonly maskSums: Float64Array;
  /** How many bags of each kind, the first kind being the slowest digit. */
  readonly vectors: readonly (readonly number[])[];
  readonly vectorSums: Float64Array;
  readonly strides: readonly number[];
  readonly meets: (maskSum: number, vectorSum: number) => boolean;
};

type Group = { readonly mask: number; readonly vector: number };

function searchSpace(
  ownerUnits: readonly number[],
  tracked: readonly BagKind[],
  onlyBagUnits: number,
): SearchSpace {
  const maskSums = new Float64Array(2 ** ownerUnits.length);
  ownerUnits.forEach((units, position) => {
    const bit = 1 << position;
    for (let mask = bit; mask < bit << 1; mask += 1) maskSums[mask] = units + (maskSums[mask - bit] ?? 0);
  });
  const vectors = tracked.reduce<number[][]>(
    (shorter, kind) =>
      shorter.flatMap((vector) => Array.from({ length: kind.count + 1 }, (_, count) => [...vector, count])),
    [[]],
  );
  const vectorSums = Float64Array.from(vectors, (vector) =>
    vector.reduce((sum, count, kind) => sum + count * (tracked[kind]?.bagUnits ?? 0), 0),
  );
  const strides = tracked.map((_, kind) =>
    tracked.slice(kind + 1).reduce((product, later) => product * (later.count + 1), 1),
  );
  const meets =
    tracked.length === 0
      ? (maskSum: number) => maskSum % onlyBagUnits === 0
      : (maskSum: number, vectorSum: number) => maskSum === vectorSum;
  return { ownerCount: ownerUnits.length, maskSums, vectors, vectorSums, strides, meets };
}

function sumOfMask(space: SearchSpace, mask: number): number {
  return space.maskSums[mask] ?? 0;
}

function mostMeetings(space: SearchSpace): Uint8Array {
  const { maskSums, vectors, vectorSums, strides, meets } = space;
  const best = new Uint8Array(maskSums.length * vectors.length);
  for (let mask = 0; mask < maskSums.length; mask += 1) {
    for (let vector = 0; vector < vectors.length; vector += 1) {
      let most = 0;
      for (let bits = mask; bits !== 0; bits &= bits - 1) {
        most = Math.max(most, best[(mask ^ (bits & -bits)) * vectors.length + vector] ?? 0);
      }
      for (const [kind, stride] of strides.entries()) {
        if ((vectors[vector]?.[kind] ?? 0) === 0) continue;
        most = Math.max(most, best[mask * vectors.length + vector - stride] ?? 0);
      }
      const meetsHere = mask !== 0 && meets(maskSums[mask] ?? 0, vectorSums[vector] ?? 0);
      best[mask * vectors.length + vector] = most + (meetsHere ? 1 : 0);
    }
  }
  return best;
}

/** Reads the groups back, each time the seat-wise smallest one that still leaves the most groups for the rest. */
function readGroups(space: SearchSpace, best: Uint8Array): Group[] {
  const groups: Group[] = [];
  let left: Group = { mask: space.maskSums.length - 1, vector: space.vectors.length - 1 };
  while (left.mask !== 0) {
    const group = firstGroup(space, best, left);
    groups.push(group);
    left = { mask: left.mask ^ group.mask, vector: left.vector - group.vector };
  }
  return groups;
}

function firstGroup(space: SearchSpace, best: Uint8Array, left: Group): Group {
  const bestOf = ({ mask, vector }: Group) => best[mask * space.vectors.length + vector] ?? 0;
  const lowest = left.mask & -left.mask;
  const others = left.mask ^ lowest;
  let first: Group | undefined;
  for (let subset = others; ; subset = (subset - 1) & others) {
    const mask = subset | lowest;
    for (let vector = left.vector; vector >= 0; vector -= 1) {
      if (!space.meets(space.maskSums[mask] ?? 0, space.vectorSums[vector] ?? 0)) continue;
      if (!fitsIn(space, vector, left.vector)) continue;
      const rest = { mask: left.mask ^ mask, vector: left.vector - vector };
      if (bestOf(rest) !== bestOf(left) - 1) continue;
      if (!first || comesBefore(mask, first.mask)) first = { mask, vector };
    }
    if (subset === 0) return first ?? left;
  }
}

function fitsIn(space: SearchSpace, vector: number, larger: number): boolean {
  const available = space.vectors[larger] ?? [];
  return (space.vectors[vector] ?? []).every((count, kind) => count <= (available[kind] ?? 0));
}

/** Whether the owners of one mask, listed by seat, come before those of another as words do; a beginning comes first. */
function comesBefore(mask: number, other: number): boolean {
  if (mask === other) return false;
  const lowestDifference = (mask ^ other) & -(mask ^ other);
  const higher = ~((lowestDifference << 1) - 1);
  return mask & lowestDifference ? (other & higher) !== 0 : (mask & higher) === 0;
}

import { splitByWeight } from '@sheafbook/sharing';
import { assert, assertWhole, sumOf } from '@sheafbook/units';

/**
 * What a household puts into a run that is mixed. Units: seats count from 1; whole grams. Errors: none by itself.
 */
export type MixPart = { readonly householdId: string; readonly seat: number; readonly putInGrams: number };

/**
 * What a household has of a mixed run. What it put in is what is in its containers and what is left over for it, less what it
 * got from others; below zero it gave so much.
 * Units: containers; whole grams. Errors: none by itself.
 */
export type MixedShare = MixPart & {
  readonly containers: number;
  /** How many it would have filled by itself. */
  readonly aloneContainers: number;
  readonly leftGrams: number;
  readonly gotGrams: number;
};

/** A mixed run, its shares by seat. Units: containers; whole grams. Errors: none by itself. */
export type MixedRun = {
  readonly containers: number;
  readonly leftGrams: number;
  readonly shares: readonly MixedShare[];
};

/**
 * Shares out one run of food of one lot that several households put in: as many containers as it fills in all, and what is left
 * over, each by largest remainder of what was put in. So that each container has one owner, some grams change hands: they add
 * up to nothing, and nobody gives or gets more than one container holds.
 * Units: whole grams; containers. Ties: by seat.
 * Errors: AssertionError where nobody puts anything in, or a mass is not whole or not above zero.
 * Source: job map 7.7, with the largest remainders of section 4.
 */
export function shareMixedRun(parts: readonly MixPart[], gramsEach: number): MixedRun {
  assert(parts.length > 0, 'somebody puts something in');
  assertWhole(gramsEach, 'gramsEach');
  assert(gramsEach > 0, 'a container holds something');
  const bySeat = parts.toSorted((a, b) => a.seat - b.seat);
  const weights = bySeat.map(({ putInGrams }) => putInGrams);
  for (const grams of weights) assert(grams > 0, 'whoever mixes puts something in');
  const inAll = sumOf(weights);
  const containers = Math.floor(inAll / gramsEach);
  const leftGrams = inAll - containers * gramsEach;
  const counts = splitByWeight(containers, weights);
  const lefts = splitByWeight(leftGrams, weights);
  const shares = bySeat.map((part, at) => {
    const [count = 0, left = 0] = [counts[at], lefts[at]];
    return {
      ...part,
      containers: count,
      aloneContainers: Math.floor(part.putInGrams / gramsEach),
      leftGrams: left,
      gotGrams: count * gramsEach + left - part.putInGrams,
    };
  });
  return { containers, leftGrams, shares };
}

/**
 * What a household wants filled, as far as it says whether that may be mixed. `lots` are those of the food that it has in bags.
 * Units: containers; whole grams; lines and seats count from 1. Errors: none by itself.
 */
export type MixableWish = {
  readonly wishId: string;
  readonly householdId: string;
  readonly seat: number;
  readonly line: number;
  readonly foodId: string;
  readonly kindId: string;
  readonly treatment: string;
  readonly gramsEach: number;
  readonly containers: number;
  readonly mayMix: boolean;
  readonly lots: readonly { readonly lotId: string; readonly grams: number }[];
};

/** Wishes of one line that run as one, by the id of the first of them. Units: as `MixedRun`. Errors: none by itself. */
export type Mix = {
  readonly mixId: string;
  readonly line: number;
  readonly lotId: string;
  readonly gramsEach: number;
  readonly wishIds: readonly string[];
  readonly run: MixedRun;
};

/**
 * Which wishes run as one: those of two households or more that agreed to it, on one line, of one lot, kind, treatment and fill.
 * A household takes part where all that it has of the food is of that lot and this is all that it wants of it; so nobody need say
 * which grams are meant. It puts in all that it has where it wants as many containers as that fills, else what its containers take.
 * Units: as `MixableWish`. Shape: mixes and the wishes in each by seat. Errors: as `shareMixedRun`.
 */
export function findMixes(wishes: readonly MixableWish[]): Mix[] {
  const able = wishes.flatMap((wish) => {
    const [lot, ...others] = wish.lots.filter(({ grams }) => grams > 0);
    const isAll = !wishes.some((other) => other !== wish && isSameWant(other, wish));
    return wish.mayMix && lot && others.length === 0 && isAll ? [{ wish, lot }] : [];
  });
  const keyOf = ({ wish, lot }: (typeof able)[number]) =>
    [wish.line, lot.lotId, wish.kindId, wish.treatment, wish.gramsEach].join(' ');
  const bySeat = able.toSorted((a, b) => a.wish.seat - b.wish.seat);
  return [...new Set(bySeat.map(keyOf))].flatMap((key) => {
    const together = bySeat.filter((one) => keyOf(one) === key);
    const [first] = together;
    if (!first || together.length < 2) return [];
    const { wishId: mixId, line, gramsEach } = first.wish;
    const parts = together.map(({ wish, lot }) => ({
      householdId: wish.householdId,
      seat: wish.seat,
      putInGrams: putIn(wish, lot.grams),
    }));
    return [
      {
        ...{ mixId, line, gramsEach, lotId: first.lot.lotId },
        ...{ wishIds: together.map(({ wish }) => wish.wishId), run: shareMixedRun(parts, gramsEach) },
      },
    ];
  });
}

const isSameWant = (a: MixableWish, b: MixableWish): boolean =>
  a.householdId === b.householdId && a.foodId === b.foodId;

const putIn = ({ containers, gramsEach }: MixableWish, ownGrams: number): number =>
  containers >= Math.floor(ownGrams / gramsEach) ? ownGrams : containers * gramsEach;

/** What a household has in a bag of the lot. Units: whole grams; bags count from 1. Errors: none by itself. */
export type MixPiece = {
  readonly bagId: string;
  readonly bagNo: number;
  readonly householdId: string;
  readonly grams: number;
};

/** Grams of a bag that change their owner. Units: whole grams. Errors: none by itself. */
export type MixMove = {
  readonly bagId: string;
  readonly giverId: string;
  readonly takerId: string;
  readonly grams: number;
};

/**
 * In which bags the grams of a mixed run change hands: out of those in which the taker has something already, so that it fills
 * from few bags, then out of the giver's largest.
 * Units: whole grams. Ties: by seat, then by the bag's number. Shape: what all give is what all get.
 * Errors: AssertionError where a giver has less in bags than it gives.
 */
export function mixMoves(shares: readonly MixedShare[], pieces: readonly MixPiece[]): MixMove[] {
  const left = pieces.map((piece) => ({ ...piece }));
  const takers = shares
    .filter(({ gotGrams }) => gotGrams > 0)
    .map(({ householdId, gotGrams }) => ({ householdId, wants: gotGrams }));
  const moves: MixMove[] = [];
  for (const { householdId: giverId, gotGrams } of shares.filter((share) => share.gotGrams < 0)) {
    let gives = -gotGrams;
    for (const taker of takers) {
      const { householdId: takerId } = taker;
      const isTakers = ({ bagId }: MixPiece) =>
        pieces.some((other) => other.bagId === bagId && other.householdId === takerId);
      const own = left
        .filter(({ householdId }) => householdId === giverId)
        .toSorted(
          (a, b) => Number(isTakers(b)) - Number(isTakers(a)) || b.grams - a.grams || a.bagNo - b.bagNo,
        );
      for (const piece of own) {
        const grams = Math.min(gives, taker.wants, piece.grams);
        if (grams === 0) continue;
        moves.push({ bagId: piece.bagId, giverId, takerId, grams });
        piece.grams -= grams;
        taker.wants -= grams;
        gives -= grams;
      }
    }
    assert(gives === 0, 'a giver has in bags what it gives');
  }
  return moves;
}

import { assert, assertWhole } from '@sheafbook/units';

/**
 * A pledger of the same food who may take more: up to its most, in whole steps of its pledge (1 when left out).
 * Whoever has said no is left out by the caller. Units: grams, or any one unit of mass. Errors: none.
 */
export type PledgeTaker = {
  readonly ownerId: string;
  readonly seat: number;
  readonly pledgeOrder: number;
  readonly awardUnits: number;
  readonly mostUnits: number;
  readonly stepUnits?: number;
};

/** Someone on the waitlist for the food. Units: as the pledgers. Errors: none. */
export type WaitingTaker = {
  readonly ownerId: string;
  readonly seat: number;
  readonly waitOrder: number;
  readonly wantedUnits: number;
  readonly stepUnits?: number;
};

/** Who takes how much of a withdrawn award, and as what. Units: as the pledgers. Errors: none. */
export type WithdrawnPlacement = {
  readonly ownerId: string;
  readonly takenAs: 'pledger' | 'waitlist' | 'common-stock';
  readonly units: number;
};

/** Where a withdrawn award went; what nobody took stays with the one who withdrew. Units: as asked. Errors: none. */
export type WithdrawnAnswer = {
  readonly placements: readonly WithdrawnPlacement[];
  readonly leftUnits: number;
};

/**
 * Finds takers for what a household leaves behind after the order: the other pledgers of the food in pledge order up
 * to their most, then the waitlist in its order, then the common stock up to what it has room for.
 * Units: grams, or any one unit of mass. Shape: only takers of more than 0, in the order they were asked; placements +
 * left = withdrawn.
 * Ties: the lower seat is asked first.
 * Errors: AssertionError when a number is not whole and ≥ 0, a most is below its award, or a step is 0.
 */
export function placeWithdrawnAward(input: {
  readonly withdrawnUnits: number;
  readonly pledgers: readonly PledgeTaker[];
  readonly waitlist: readonly WaitingTaker[];
  readonly commonStock: { readonly ownerId: string; readonly roomUnits: number };
}): WithdrawnAnswer {
  assertWhole(input.withdrawnUnits, 'withdrawnUnits');
  const placements: WithdrawnPlacement[] = [];
  let leftUnits = input.withdrawnUnits;
  for (const { ownerId, takenAs, roomUnits, stepUnits } of inTurn(input)) {
    const room = Math.min(leftUnits, roomUnits);
    const units = room - (room % stepUnits);
    if (units > 0) placements.push({ ownerId, takenAs, units });
    leftUnits -= units;
  }
  return { placements, leftUnits };
}

/**
 * The awards of a food once a withdrawn award has found its takers, ready for `chargeLandedCost`: takers so pay goods
 * and by-weight freight on what they take, and whoever withdrew pays for what nobody took. The one who withdrew goes
 * on bearing its per-household part (`bearsHouseholdPart` stays true); a taker from the waitlist bears none.
 * Units: grams. Shape: the awards in their order, new takers after them.
 * Errors: AssertionError when the withdrawn award is not exactly what was placed and left.
 */
export function awardsAfterWithdrawal(
  awards: readonly { readonly ownerId: string; readonly grams: number }[],
  withdrawerId: string,
  answer: WithdrawnAnswer,
): { readonly ownerId: string; readonly grams: number }[] {
  const gramsOf = new Map(awards.map(({ ownerId, grams }) => [ownerId, grams]));
  const placedGrams = answer.placements.reduce((sum, placement) => sum + placement.units, 0);
  assert(
    gramsOf.get(withdrawerId) === placedGrams + answer.leftUnits,
    'what was placed and left must be the withdrawn award',
  );
  gramsOf.set(withdrawerId, answer.leftUnits);
  for (const { ownerId, units } of answer.placements) {
    gramsOf.set(ownerId, (gramsOf.get(ownerId) ?? 0) + units);
  }
  return [...gramsOf].map(([ownerId, grams]) => ({ ownerId, grams }));
}

type Turn = Omit<WithdrawnPlacement, 'units'> & { readonly roomUnits: number; readonly stepUnits: number };

function inTurn(input: Parameters<typeof placeWithdrawnAward>[0]): Turn[] {
  const pledgers = input.pledgers.toSorted((a, b) => a.pledgeOrder - b.pledgeOrder || a.seat - b.seat);
  const waitlist = input.waitlist.toSorted((a, b) => a.waitOrder - b.waitOrder || a.seat - b.seat);
  const turns: Turn[] = [
    ...pledgers.map(({ ownerId, awardUnits, mostUnits, stepUnits = 1 }) => ({
      ownerId,
      takenAs: 'pledger' as const,
      roomUnits: mostUnits - awardUnits,
      stepUnits,
    })),
    ...waitlist.map(({ ownerId, wantedUnits, stepUnits = 1 }) => ({
      ownerId,
      takenAs: 'waitlist' as const,
      roomUnits: wantedUnits,
      stepUnits,
    })),
    { ...input.commonStock, takenAs: 'common-stock', stepUnits: 1 },
  ];
  for (const turn of turns) {
    assertWhole(turn.roomUnits, `the room of ${turn.ownerId}`);
    assertWhole(turn.stepUnits, `the step of ${turn.ownerId}`);
    assert(turn.stepUnits > 0, `the step of ${turn.ownerId} must be at least 1`);
  }
  return turns;
}

import { assert, compareFractions, compareText, type Fraction } from '@sheafbook/units';

/** How many households are asked side by side. Units: households. Errors: none. Source: job map 2.15. */
export const ASKED_TOGETHER = 3;

/** How long a turn lasts where nobody says otherwise. Units: hours. Errors: none. Source: job map 2.15, a starter. */
export const STARTER_WINDOW_HOURS = 48;

/** What decides when a household is asked. Units: days covered, milliseconds since 1970. Errors: none. */
export type Asked = {
  readonly householdId: string;
  /** Somebody at its table may eat the food. */
  readonly isUsable: boolean;
  /** How long what it holds of this food group lasts; null where nobody knows. */
  readonly coverageDays: Fraction | null;
  /** When it last took something that was offered; null for never, which is longest ago. */
  readonly lastTookAt: number | null;
  readonly seat: number;
};

/**
 * Who is asked first: households that can use the food, the least covered first, those of whom it is not known last, then
 * whoever took something longest ago, then the lower seat; three at a time.
 * Units: none. Shape: each usable household in one group; the order given does not matter. Errors: none. Source: job map 2.15.
 */
export function firstRefusalGroups(households: readonly Asked[]): string[][] {
  const order = households.filter(({ isUsable }) => isUsable).toSorted(byNeed);
  const groups: string[][] = [];
  for (let first = 0; first < order.length; first += ASKED_TOGETHER)
    groups.push(order.slice(first, first + ASKED_TOGETHER).map(({ householdId }) => householdId));
  return groups;
}

function byNeed(a: Asked, b: Asked): number {
  const isKnown = Number(a.coverageDays === null) - Number(b.coverageDays === null);
  const days = a.coverageDays && b.coverageDays ? compareFractions(a.coverageDays, b.coverageDays) : 0;
  const took = Math.sign((a.lastTookAt ?? -Infinity) - (b.lastTookAt ?? -Infinity)) || 0; // never less never is no number
  return isKnown || days || took || a.seat - b.seat || compareText(a.householdId, b.householdId);
}

/** When a household alone with its group may take something. Half-open. Units: milliseconds since 1970. Errors: none. */
export type Turn = {
  readonly householdId: string;
  readonly groupNo: number;
  readonly fromAt: number;
  readonly untilAt: number;
};

/** What the turns of an offer follow from. Units: milliseconds since 1970; hours. Errors: none. */
export type TurnTerms = {
  readonly groups: readonly (readonly string[])[];
  readonly offeredAt: number;
  readonly closesAt: number;
  readonly windowHours: number;
  /** Who has let it pass, and when. */
  readonly passedAt: ReadonlyMap<string, number>;
};

/**
 * The turns of an offer: each group has its window, one after the other, cut off where the offer closes. A group that has
 * passed to the last household gives way to the next at once.
 * Units: milliseconds since 1970; hours. Shape: one turn a household; `openAt` is when it becomes everybody's.
 * Errors: AssertionError unless the offer closes after it was made and a window lasts. Source: job map 2.15.
 */
export function planTurns(terms: TurnTerms): { turns: Turn[]; openAt: number } {
  const { groups, offeredAt, closesAt, windowHours, passedAt } = terms;
  assert(offeredAt < closesAt, 'an offer closes after it was made');
  assert(windowHours > 0, 'a turn lasts');
  const turns: Turn[] = [];
  let fromAt = offeredAt;
  for (const [index, group] of groups.entries()) {
    const passes = group.flatMap((householdId) => passedAt.get(householdId) ?? []);
    const haveAllPassed = passes.length === group.length;
    const fullAt = Math.min(closesAt, fromAt + windowHours * 3_600_000);
    const untilAt = haveAllPassed ? Math.max(fromAt, Math.min(fullAt, Math.max(...passes))) : fullAt;
    for (const householdId of group) turns.push({ householdId, groupNo: index + 1, fromAt, untilAt });
    fromAt = untilAt;
  }
  return { turns, openAt: fromAt };
}

/** How an offer stands to a household. Units: none. Errors: none. */
export type OfferStanding = 'not-yet' | 'your-turn' | 'with-others' | 'for-all' | 'over';

/**
 * How an offer stands to a household at a moment: with its turn, or without one (null).
 * Units: milliseconds since 1970. Errors: none.
 */
export function offerStanding(
  turn: Pick<Turn, 'fromAt' | 'untilAt'> | null,
  offer: { readonly openAt: number; readonly closesAt: number },
  now: number,
): OfferStanding {
  if (now >= offer.closesAt) return 'over';
  if (now >= offer.openAt) return 'for-all';
  if (turn === null || now < turn.fromAt) return 'not-yet';
  return now < turn.untilAt ? 'your-turn' : 'with-others';
}

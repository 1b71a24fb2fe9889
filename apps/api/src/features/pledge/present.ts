import type { PledgeRow } from '@sheafbook/db/tables';
import type { UnitPrice } from '@sheafbook/sharing';
import type { BuyPledge } from './queries.ts';
import type { PledgedSum } from './sums.ts';

/** A household's own pledge, whole. Nobody else gets this shape: it holds the ceiling. */
export function presentOwnPledge({ pledge, ceiling }: { pledge: PledgeRow; ceiling: UnitPrice | null }) {
  return {
    id: pledge.pledgeId,
    buyId: pledge.buyId,
    buyLineId: pledge.buyLineId,
    householdId: pledge.householdId,
    leastGrams: pledge.leastGrams,
    wantedGrams: pledge.wantedGrams,
    mostGrams: pledge.mostGrams,
    wholeBags: pledge.wholeBags,
    ceilingMinorUnits: ceiling?.minorUnits ?? null,
    ceilingPerGrams: ceiling?.grams ?? null,
    substituteLineId: pledge.substituteLineId,
    asTyped: pledge.asTyped,
    pledgedAt: pledge.pledgedAt.toISOString(),
    rankedAt: pledge.rankedAt.toISOString(),
    enteredBy: pledge.enteredBy,
    isEnteredFor: pledge.isEnteredFor,
    isWithdrawn: pledge.withdrawnAt !== null,
    version: pledge.version,
  };
}

/** A sum of one line, or that it is held back because fewer than five other households are in it. */
function presentPledgedSum(sum: PledgedSum) {
  if (!sum.isShown) return { isShown: false as const };
  const { households, leastGrams, wantedGrams, mostGrams } = sum;
  return { isShown: true as const, households, leastGrams, wantedGrams, mostGrams };
}

export function presentPledges({ own, lines }: { own: readonly BuyPledge[]; lines: readonly PledgedSum[] }) {
  return {
    own: own.map((pledge) => presentOwnPledge({ pledge, ceiling: pledge.ceiling })),
    lines: lines.map((sum) => ({ buyLineId: sum.buyLineId, pledged: presentPledgedSum(sum) })),
  };
}

/** What coordinator, treasurer, packing lead and reviewer see of a household's pledge: masses, never a ceiling. */
export function presentHouseholdPledge(pledge: BuyPledge) {
  return {
    id: pledge.pledgeId,
    buyLineId: pledge.buyLineId,
    householdId: pledge.householdId,
    householdName: pledge.householdName,
    seat: pledge.seat,
    leastGrams: pledge.leastGrams,
    wantedGrams: pledge.wantedGrams,
    mostGrams: pledge.mostGrams,
    wholeBags: pledge.wholeBags,
    substituteLineId: pledge.substituteLineId,
    asTyped: pledge.asTyped,
    rankedAt: pledge.rankedAt.toISOString(),
    isEnteredFor: pledge.isEnteredFor,
  };
}

export const presentHouseholdPledges = (page: { rows: readonly BuyPledge[]; next: string | null }) => ({
  pledges: page.rows.map(presentHouseholdPledge),
  next: page.next,
});

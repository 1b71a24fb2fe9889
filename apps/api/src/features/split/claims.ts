import { carriesAfter, type SplitClaim } from '@sheafbook/sharing';
import { type Fraction, fraction, roundFraction } from '@sheafbook/units';

/** What an owner is promised of a line, and since when. Common stock has no pledge. */
export type Promised = {
  readonly ownerId: string;
  readonly seat: number;
  readonly grams: number;
  readonly wholeBags: boolean;
  readonly rankedAt: Date | null;
};

/** What an owner was awarded of a line in the rounds before. */
export type EarlierAward = {
  readonly ownerId: string;
  readonly awardGrams: number;
  readonly carryChangeGrams: number;
};

/** How much of the food's group an owner eats a day and holds. Private: it never leaves the split. */
export type OwnerNeed = { readonly dailyGrams: Fraction; readonly stockGrams: number };

/** What the rules read beyond the claims themselves. */
export type RuleFacts = {
  readonly needs: ReadonlyMap<string, OwnerNeed> | null;
  readonly carries: ReadonlyMap<string, number>;
};

/**
 * The claims that are still open: what was promised, less what earlier rounds have awarded. A carry counts in the
 * first round only, since that one has paid it back; what was awarded before stands in the stock already.
 */
export function openClaims(
  promised: readonly Promised[],
  earlier: readonly EarlierAward[],
  { needs, carries }: RuleFacts,
): SplitClaim[] {
  const awarded = new Map(earlier.map((award) => [award.ownerId, award.awardGrams]));
  const isFirstRound = earlier.length === 0;
  return inPledgeOrder(promised).map(({ ownerId, seat, grams }, pledgeOrder) => {
    const need = needs?.get(ownerId);
    return {
      ownerId,
      seat,
      claimUnits: Math.max(0, grams - (awarded.get(ownerId) ?? 0)),
      pledgeOrder,
      ...(need ? { dailyNeedUnits: need.dailyGrams, stockUnits: need.stockGrams } : {}),
      carryUnits: isFirstRound ? (carries.get(ownerId) ?? 0) : 0,
    };
  });
}

function inPledgeOrder(promised: readonly Promised[]): Promised[] {
  const time = ({ rankedAt }: Promised) => rankedAt?.getTime() ?? Number.POSITIVE_INFINITY;
  return promised.toSorted((a, b) => {
    const [first, second] = [time(a), time(b)];
    return first === second ? a.seat - b.seat : first - second;
  });
}

/**
 * The step that a round is rounded to: one bag where every claim is for whole bags and all bags weigh the same, so
 * that they stay whole (job map section 5.4), else one gram.
 */
export function stepOf(
  promised: readonly Promised[],
  claims: readonly SplitClaim[],
  bagGrams: readonly number[],
): number {
  const [firstGrams = 0] = bagGrams;
  const areBagsAlike = bagGrams.every((grams) => grams === firstGrams);
  const areAllWhole =
    promised.every((promise) => promise.wholeBags) &&
    claims.every((claim) => claim.claimUnits % Math.max(1, firstGrams) === 0);
  return promised.length > 0 && firstGrams > 0 && areBagsAlike && areAllWhole ? firstGrams : 1;
}

/**
 * What this round changes of each owner's carry, so that the rounds of one line together leave what a single split of
 * all that came would have left: the loss borne, less the proportional part of the whole loss.
 */
export function carryChanges(
  promised: readonly Promised[],
  earlier: readonly EarlierAward[],
  awards: readonly { readonly ownerId: string; readonly awardUnits: number }[],
): Map<string, number> {
  const before = new Map(earlier.map((award) => [award.ownerId, award]));
  const now = new Map(awards.map((award) => [award.ownerId, award.awardUnits]));
  const claims = inPledgeOrder(promised).map(({ ownerId, seat, grams }, pledgeOrder) => ({
    ownerId,
    seat,
    claimUnits: grams,
    pledgeOrder,
  }));
  const allAwards = promised.map(({ ownerId, grams }) => ({
    ownerId,
    awardUnits: Math.min(grams, (before.get(ownerId)?.awardGrams ?? 0) + (now.get(ownerId) ?? 0)),
  }));
  const after = carriesAfter({ awards: allAwards }, claims);
  return new Map(
    after.map(({ ownerId, carryUnits }) => [
      ownerId,
      carryUnits - (before.get(ownerId)?.carryChangeGrams ?? 0),
    ]),
  );
}

/** The least and the most that anyone got of what it claimed, to the nearest hundredth of a per cent. */
export function ratioRange(
  shares: readonly { readonly claimGrams: number; readonly awardGrams: number }[],
): { leastHundredthsOfPercent: number; mostHundredthsOfPercent: number } | null {
  const ratios = shares
    .filter((share) => share.claimGrams > 0)
    .map(({ claimGrams, awardGrams }) =>
      Number(roundFraction(fraction(BigInt(awardGrams) * 10_000n, claimGrams))),
    );
  if (ratios.length === 0) return null;
  return { leastHundredthsOfPercent: Math.min(...ratios), mostHundredthsOfPercent: Math.max(...ratios) };
}

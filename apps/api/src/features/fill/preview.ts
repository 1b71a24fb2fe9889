import { priceOfGrams } from '@sheafbook/sharing';
import type { DropReason } from './answer.ts';
import { estimateOf, type FillEstimate } from './estimate.ts';
import { type FillInputs, type FillPledgeFacts, sortPledges } from './inputs.ts';

/** A pledge as it would be; the rest follows from who makes it and when. */
export type ChangedPledge = Omit<FillPledgeFacts, 'pledgeId' | 'rankedAt'>;

/** Stands for a pledge that nobody has made yet. */
const NO_PLEDGE = '00000000-0000-7000-8000-000000000000';

/**
 * The same buy with one household's pledge on one line made or changed. Like the pledge itself, a change keeps its
 * place in the order unless it wants more or may take more (job map section 18).
 */
export function withPledge(inputs: FillInputs, changed: ChangedPledge, nowAt: string): FillInputs {
  const isSame = (pledge: FillPledgeFacts) =>
    pledge.householdId === changed.householdId && pledge.lineId === changed.lineId;
  const before = inputs.pledges.find(isSame);
  const keepsPlace =
    before && changed.wantedGrams <= before.wantedGrams && changed.mostGrams <= before.mostGrams;
  const pledge: FillPledgeFacts = {
    ...changed,
    pledgeId: before?.pledgeId ?? NO_PLEDGE,
    rankedAt: keepsPlace ? before.rankedAt : nowAt,
  };
  return {
    ...inputs,
    pledges: sortPledges([...inputs.pledges.filter((known) => !isSame(known)), pledge]),
  };
}

/** The same buy if every pledge wanted only its least, or all of its most. The bags still have to come out whole. */
export function withAllAt(inputs: FillInputs, amount: 'leastGrams' | 'mostGrams'): FillInputs {
  const pledges = inputs.pledges.map((pledge) => ({ ...pledge, wantedGrams: pledge[amount] }));
  return { ...inputs, pledges };
}

/**
 * What one pledge comes to in a fill. `landedMinorUnits` is its mass at the landed price (goods and by-weight freight);
 * `buyMinorUnits` the household's whole estimate over all its lines, by the group's own freight basis and levy.
 */
export type PledgeOutcome = {
  readonly lineId: string;
  readonly units: number;
  readonly grams: number;
  readonly dropped: DropReason | null;
  readonly landedMinorUnits: number;
  readonly buyMinorUnits: number;
};

export function outcomeOf(
  estimate: FillEstimate,
  { householdId, lineId }: Pick<ChangedPledge, 'householdId' | 'lineId'>,
): PledgeOutcome {
  const { fill, inputs } = estimate;
  const own = inputs.pledges.find((pledge) => pledge.householdId === householdId && pledge.lineId === lineId);
  const places = fill.lines.flatMap((line) =>
    line.pledges.filter((pledge) => pledge.pledgeId === own?.pledgeId).map((pledge) => ({ line, pledge })),
  );
  const place = places.find(({ pledge }) => pledge.units > 0) ?? places[0];
  const { units = 0, grams = 0, dropped = 'no-quote' } = place?.pledge ?? {};
  const price = place?.line.landedPrice;
  return {
    lineId: place?.line.lineId ?? lineId,
    units,
    grams,
    dropped,
    landedMinorUnits: price ? priceOfGrams(price, grams) : 0,
    buyMinorUnits: estimateOf(estimate, householdId),
  };
}

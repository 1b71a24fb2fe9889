import { type ChargedShare, splitByWeight } from '@sheafbook/sharing';

/** A household's part of one bag: what it was awarded, fetched and given up unfetched, and what the bag still has of it. */
export type Holding = {
  readonly householdId: string;
  readonly bagId: string;
  readonly bagCode: string;
  readonly bagNo: number;
  readonly lotId: string;
  readonly buyLineId: string;
  readonly pieceGrams: number;
  readonly collectedGrams: number;
  readonly takenGrams: number;
  readonly balanceGrams: number;
  readonly isHeld: boolean;
  /** Since when it can be fetched: the last split that gave it, or sharing out. */
  readonly sinceAt: Date;
};

/**
 * What of a holding still waits at the store. Fetching moves no grams, since a place is no account; pouring does. So it
 * is what was awarded and neither fetched nor taken as uncollected, and never more than the bag still has.
 */
export const waitingGrams = (holding: Holding): number =>
  Math.max(
    0,
    Math.min(holding.pieceGrams - holding.collectedGrams - holding.takenGrams, holding.balanceGrams),
  );

/** What a household bore on one cost line, late credits and recharges included. Units: minor units. */
export type BorneLine = { readonly costLine: string; readonly share: ChargedShare };

/** Grams of one lot that are taken back from a household. */
export type TakenLot = { readonly buyLineId: string; readonly lotId: string; readonly grams: number };

/**
 * What taken-back grams have cost their household: of its goods on each food, and of its freight by weight, the part
 * that falls on them by largest remainder. What it bore by value or per household stays with it, since the lorry came
 * for it all the same. One amount a food and one for freight. Units: minor units, grams.
 */
export function landedCostOf(
  taken: readonly TakenLot[],
  borne: readonly BorneLine[],
  awardedGrams: ReadonlyMap<string, number>,
): { readonly buyLineId: string | null; readonly minorUnits: number }[] {
  const takenOf = new Map<string, number>();
  for (const { buyLineId, grams } of taken) takenOf.set(buyLineId, (takenOf.get(buyLineId) ?? 0) + grams);
  const goods = [...takenOf].map(([buyLineId, grams]) => ({
    buyLineId,
    minorUnits: partOf(sumBorne(borne, `goods:${buyLineId}`), grams, awardedGrams.get(buyLineId) ?? 0),
  }));
  const takenGrams = [...takenOf.values()].reduce((sum, grams) => sum + grams, 0);
  const allGrams = [...awardedGrams.values()].reduce((sum, grams) => sum + grams, 0);
  const byWeight = sumBorne(borne, 'freight:by-weight') + sumBorne(borne, 'other:by-weight');
  return [...goods, { buyLineId: null, minorUnits: partOf(byWeight, takenGrams, allGrams) }];
}

function sumBorne(borne: readonly BorneLine[], costLine: string): number {
  return borne
    .filter((line) => line.costLine === costLine || line.costLine === `late:${costLine}`)
    .reduce((sum, line) => sum + line.share.minorUnits, 0);
}

function partOf(minorUnits: number, grams: number, ofGrams: number): number {
  if (minorUnits <= 0 || grams === 0 || ofGrams < grams) return 0;
  return splitByWeight(minorUnits, [grams, ofGrams - grams])[0] ?? 0;
}

import { type MovementDraft, reverse, sharedOut } from '@sheafbook/ledger';
import { type ChargedLine, splitByWeight } from '@sheafbook/sharing';
import { sumOf } from '@sheafbook/units';

/** Grams that common stock was awarded, by lot. */
export type CommonLot = { readonly buyLineId: string; readonly lotId: string; readonly grams: number };

/** What one lot of common stock bears or gets. Units: minor units, a credit below zero. */
export type LotAmount = { readonly causeId: string; readonly amountMinorUnits: number };

/** What a household bears or gets over all lines. Units: minor units, a credit below zero. */
export type HouseholdAmount = { readonly householdId: string; readonly amountMinorUnits: number };

/**
 * Common stock's part of each line by lot, since account 1400 is kept by lot: of a goods line by the grams of that
 * line's lots, of any other by the grams of all. Largest remainders, then the older lot.
 */
export function shareByLot(
  lines: readonly (ChargedLine & { readonly buyLineId: string | null })[],
  commonId: string,
  lots: readonly CommonLot[],
): LotAmount[] {
  const sums = new Map<string, number>();
  for (const line of lines) {
    const own = line.shares.find((share) => share.ownerId === commonId)?.minorUnits ?? 0;
    if (own === 0) continue;
    const ofLine = lots
      .filter((lot) => line.buyLineId === null || lot.buyLineId === line.buyLineId)
      .toSorted((a, b) => (a.lotId < b.lotId ? -1 : 1));
    const parts = splitByWeight(
      Math.abs(own),
      ofLine.map((lot) => lot.grams),
    );
    ofLine.forEach(({ lotId }, position) => {
      sums.set(lotId, (sums.get(lotId) ?? 0) + Math.sign(own) * (parts[position] ?? 0));
    });
  }
  return [...sums].map(([causeId, amountMinorUnits]) => ({ causeId, amountMinorUnits }));
}

/** What each household bears over all lines. */
export function sumByHousehold(lines: readonly ChargedLine[], commonId: string): HouseholdAmount[] {
  const ids = [...new Set(lines.flatMap((line) => line.shares.map((share) => share.ownerId)))];
  return ids
    .filter((ownerId) => ownerId !== commonId)
    .map((householdId) => ({
      householdId,
      amountMinorUnits: sumOf(
        lines.map((line) => line.shares.find((share) => share.ownerId === householdId)?.minorUnits ?? 0),
      ),
    }));
}

/** Charges what stands above zero and pays back what stands below, all against the buy's clearing account. */
export function chargeDrafts(charge: {
  readonly buyId: string;
  readonly households: readonly HouseholdAmount[];
  readonly common: readonly LotAmount[];
  readonly levyMinorUnits?: number;
}): MovementDraft[] {
  const { buyId, households, common, levyMinorUnits = 0 } = charge;
  return [
    ...sharedOut({ buyId, charges: above(households), commonStock: above(common), levyMinorUnits }),
    ...reverse(sharedOut({ buyId, charges: below(households), commonStock: below(common) })),
  ];
}

type Signed = { readonly amountMinorUnits: number };

const above = <Row extends Signed>(rows: readonly Row[]): Row[] =>
  rows.filter((row) => row.amountMinorUnits > 0);

const below = <Row extends Signed>(rows: readonly Row[]): Row[] =>
  rows
    .filter((row) => row.amountMinorUnits < 0)
    .map((row) => ({ ...row, amountMinorUnits: -row.amountMinorUnits }));

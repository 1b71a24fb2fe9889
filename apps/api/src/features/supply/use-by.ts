import type { Tx } from '@sheafbook/db';
import { lotsOnHand, type SpoilingSupply, type SupplyLot, spoilingBy } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import { listArrivals, type SupplyOnHand } from './queries.ts';

/** A supply with what is on hand of each arrival, the oldest first, and what of it is no good for a day. */
export type DatedSupply = SupplyOnHand & {
  readonly lots: readonly SupplyLot[];
  readonly spoiling: readonly SpoilingSupply[];
};

export async function withUseBys(
  tx: Tx,
  rows: readonly SupplyOnHand[],
  days: { readonly today: string; readonly onDay: string },
): Promise<DatedSupply[]> {
  const [first] = rows;
  if (!first) return [];
  const arrivals = await listArrivals(tx, first.supply.storehouseId);
  return rows.map((row) => {
    const came = arrivals.filter(({ supplyId }) => supplyId === row.supply.supplyId);
    const lots = lotsOnHand(came, row.onHandPieces);
    return { ...row, lots, spoiling: spoilingBy(lots, days) };
  });
}

/** What is there and good for the day: nobody should pack with the rest, so a plan does not count on it. */
export const goodPieces = ({ onHandPieces, spoiling }: DatedSupply): number =>
  onHandPieces - sumOf(spoiling.map(({ pieces }) => pieces));

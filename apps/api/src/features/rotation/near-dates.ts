import type { Tx } from '@sheafbook/db';
import type { FoodRow, PlaceRow } from '@sheafbook/db/tables';
import { type NearDate, nearDateOf } from '@sheafbook/keeping';
import type { Context } from '../../platform/context.ts';
import { todayOf } from '../../platform/today.ts';
import { listOfferedNow, listOut } from '../gift/queries.ts';
import { type Kept, loadKept } from '../keeping/use-cases.ts';
import { loadRules } from '../storehouse/queries.ts';
import { isUnfit } from './stock.ts';

/** Containers of one lot in one place that come near the same of their dates. */
export type NearLot = {
  readonly near: NearDate;
  readonly lotId: string;
  readonly food: FoodRow;
  readonly place: PlaceRow | null;
  readonly count: number;
};

/**
 * What of a household's, or with null of common stock, comes near its offer, the end of gifts or its eat-first. What is on
 * hold, found unfit or on its way to a pantry waits for nobody; what is offered already is only to be eaten.
 */
export async function listNearDates(
  tx: Tx,
  context: Context,
  householdId: string | null,
): Promise<NearLot[]> {
  const { storehouseId } = context.actor;
  const todayOn = todayOf(context);
  const kept = await loadKept(tx, storehouseId, { householdId }, todayOn);
  if (kept.length === 0) return [];
  const { giftWindowDays, eatFirstMarginDays } = await loadRules(tx, storehouseId);
  const near = kept.flatMap((row) => {
    if (row.keeping === null || row.isHeld || isUnfit(row)) return [];
    const date = nearDateOf(row.keeping.dates, { todayOn, giftWindowDays, eatFirstMarginDays });
    return date === null ? [] : [{ date, row }];
  });
  if (near.length === 0) return [];
  const offered = await listOfferedNow(tx, storehouseId, context.now());
  const out = await listOut(tx, storehouseId);
  return byLot(
    near.filter(({ date, row: { container } }) => {
      const { containerId } = container;
      return !out.has(containerId) && (date === 'eat-first' || !offered.has(containerId));
    }),
  );
}

function byLot(near: readonly { date: NearDate; row: Kept }[]): NearLot[] {
  const lots = new Map<string, NearLot>();
  for (const { date, row } of near) {
    const { food, place, container } = row;
    const key = `${date} ${container.lotId} ${place?.placeId ?? ''}`;
    const count = (lots.get(key)?.count ?? 0) + 1;
    lots.set(key, { near: date, lotId: container.lotId, food, place, count });
  }
  return [...lots.values()];
}

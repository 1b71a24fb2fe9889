import type { Tx } from '@sheafbook/db';
import type { PackingMixRow } from '@sheafbook/db/tables';
import { findMixes, type Mix, type MixedShare } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import { digestOf } from '../../platform/digest.ts';
import type { SlotOf, WishedPacking } from './queries.ts';
import { listBroughtLots, listOwnLots, listStandingMixes } from './queries-mixing.ts';

/** A mix as a day runs it: with the row that stands for it once its grams have changed hands, and what was seen of it. */
export type DayMix = Mix & { readonly posted: PackingMixRow | null; readonly seen: string };

/** A wish as it runs: mixed, where others agreed too, with as many containers as are its household's then. */
export type RunWish = WishedPacking & { readonly mix: DayMix | null };

/**
 * The wishes of a day as they run, and which of them run as one. Until the grams have changed hands it follows the bags and the
 * wishes; whoever has brought a bag of the lot to the line before that fills by itself, since that bag was counted as its own.
 */
export async function mixWishes(
  tx: Tx,
  { storehouseId, sessionId }: { storehouseId: string; sessionId: string },
  wishes: readonly WishedPacking[],
  slots: readonly SlotOf[],
): Promise<{ wishes: RunWish[]; mixes: DayMix[] }> {
  const able = wishes.filter(({ wish }) => wish.mayMix);
  if (able.length < 2) return { wishes: wishes.map((row) => ({ ...row, mix: null })), mixes: [] };
  const standing = (await listStandingMixes(tx, storehouseId, sessionId)).map(asPosted);
  const taken = new Set(standing.flatMap(({ wishIds }) => wishIds));
  const lots = await listOwnLots(tx, storehouseId, able);
  const brought = await listBroughtLots(tx, storehouseId, sessionId);
  const isBrought = (householdId: string, lotId: string) =>
    brought.some((bag) => bag.householdId === householdId && bag.lotId === lotId);
  const booked = slots.filter(({ slot }) => slot.state === 'booked');
  const lineOf = (householdId: string) =>
    booked.find(({ slot }) => slot.householdId === householdId)?.slot.line ?? 1;
  const found = findMixes(
    wishes.map(({ wish, household }) => {
      const own = lots.filter((lot) => lot.householdId === wish.householdId && lot.foodId === wish.foodId);
      const isFree =
        !taken.has(wish.packingWishId) && !own.some(({ lotId }) => isBrought(wish.householdId, lotId));
      return {
        ...{ wishId: wish.packingWishId, householdId: wish.householdId, seat: household.seat },
        ...{ line: lineOf(wish.householdId), foodId: wish.foodId, kindId: wish.containerKindId },
        ...{ treatment: wish.treatment, gramsEach: wish.gramsEach, containers: wish.containers },
        ...{ mayMix: wish.mayMix && isFree, lots: own },
      };
    }),
  ).map((mix) => ({ ...mix, posted: null, seen: seenOf(mix) }));
  const mixes = [...standing, ...found];
  return { mixes, wishes: wishes.map((row) => asRun(row, mixes)) };
}

function asRun(row: WishedPacking, mixes: readonly DayMix[]): RunWish {
  const mix = mixes.find(({ wishIds }) => wishIds.includes(row.wish.packingWishId)) ?? null;
  const share = mix?.run.shares.find(({ householdId }) => householdId === row.wish.householdId);
  return share ? { ...row, mix, wish: { ...row.wish, containers: share.containers } } : { ...row, mix };
}

/** What was booked counts as it was booked, whatever the bags hold since. */
function asPosted(row: PackingMixRow): DayMix {
  const shares = row.shares as MixedShare[];
  const mix = {
    ...{ mixId: row.wishIds[0] ?? '', line: row.line, lotId: row.lotId, gramsEach: row.gramsEach },
    wishIds: row.wishIds,
    run: {
      ...{ containers: sumOf(shares.map((share) => share.containers)), shares },
      leftGrams: sumOf(shares.map((share) => share.leftGrams)),
    },
  };
  return { ...mix, posted: row, seen: seenOf(mix) };
}

/** What somebody saw before they booked it: each household's figures, and no others are booked. */
const seenOf = ({ wishIds, lotId, run }: Pick<Mix, 'wishIds' | 'lotId' | 'run'>): string =>
  digestOf([wishIds, lotId, run]);

import type { Tx } from '@sheafbook/db';
import type { BuyRow } from '@sheafbook/db/tables';
import { type Missing, stageGuards } from '@sheafbook/ledger';
import { addDays } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listSeenBags, type SeenBag } from '../bag/queries.ts';
import { loadBuy, lockBuyForUpdate, moveStage, requireStage } from '../buy/queries.ts';
import { refuseUnmet } from '../buy/use-cases.ts';
import { listClaims } from '../claim/queries.ts';
import {
  listDeliveries,
  listOrderedBags,
  type OrderedBags,
  sumCountedBags,
  updateFinished,
} from '../delivery/queries.ts';
import { listOrderedFoods, listOrderHeads } from '../order/queries.ts';
import { loadRules } from '../storehouse/queries.ts';
import { type OrderedOutcome, proposeClaims } from './proposals.ts';

export { mayEndLanding } from './policy.ts';

/**
 * Ends the landing: every food that was ordered has its count, 0 included, and every counted bag its number. The
 * deliveries so far are finished by it; what comes later is a further part.
 */
export function landBuy(context: Context, buyId: string): Promise<BuyRow> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    requireStage(buy, 'ordered');
    refuseUnmet(context.actor, await listMissingToLand(tx, buy));
    await updateFinished(tx, storehouseId, { buyId, at: context.now() });
    return moveStage(tx, context, { buy, to: 'landed' });
  });
}

/** What keeps an ordered buy from being landed: foods without a count, and counted bags without a number. */
export async function listMissingToLand(tx: Tx, { storehouseId, buyId }: BuyRow): Promise<Missing[]> {
  const ordered = await listOrderedBags(tx, storehouseId, buyId);
  const counted = await sumCountedBags(tx, storehouseId, buyId);
  const bags = await listSeenBags(tx, storehouseId, { buyId });
  const sizes = [...counted].map(([bagOfferId, countedBags]) => ({
    bagOfferId,
    countedBags,
    numberedBags: bags.filter(({ bag }) => bag.bagOfferId === bagOfferId).length,
  }));
  return stageGuards({
    from: 'ordered',
    to: 'landed',
    facts: { lines: linesCounted(ordered, counted), sizes },
  });
}

/** A line is counted once each bag size that was ordered of it is. */
function linesCounted(ordered: readonly OrderedBags[], counted: ReadonlyMap<string, number>) {
  return [...new Set(ordered.map((bags) => bags.buyLineId))].map((lineId) => {
    const sizes = ordered.filter((bags) => bags.buyLineId === lineId);
    const isCounted = sizes.every((bags) => counted.has(bags.bagOfferId));
    const countedBags = sizes.reduce((sum, bags) => sum + (counted.get(bags.bagOfferId) ?? 0), 0);
    return { lineId, countedBags: isCounted ? countedBags : null };
  });
}

export type LandingSheet = Awaited<ReturnType<typeof lookAtLanding>>;

/** Everything on the landing sheet (job map 13, paper 4), with what is claimed, what could be, and by when. */
export function readLandingSheet(context: Context, buyId: string): Promise<LandingSheet> {
  return withTx(context, (tx) => lookAtLanding(tx, context, buyId), { isReadOnly: true });
}

/** The landing sheet inside the caller's transaction. */
export async function lookAtLanding(tx: Tx, context: Context, buyId: string) {
  const { storehouseId } = context.actor;
  const buy = await loadBuy(tx, storehouseId, buyId);
  const { claimWindowHours } = await loadRules(tx, storehouseId, buy.rulesVersion ?? undefined);
  const foods = await listOrderedFoods(tx, storehouseId, buyId);
  const counted = await sumCountedBags(tx, storehouseId, buyId);
  const ordered = inOrderOf(foods, await listOrderedBags(tx, storehouseId, buyId));
  const bags = await listSeenBags(tx, storehouseId, { buyId });
  const claims = await listClaims(tx, storehouseId, buyId);
  const deliveries = await listDeliveries(tx, storehouseId, { buyId });
  return {
    ...{ buy, claimWindowHours, foods, counted, ordered, bags, claims },
    orders: await listOrderHeads(tx, storehouseId, buyId),
    deliveries: deliveries.map((delivery) => {
      const claimByOn = lastClaimDay(delivery.arrivedOn, claimWindowHours);
      return { delivery, claimByOn, isClaimDayPast: claimByOn < todayOf(context) };
    }),
    proposedClaims: proposeClaims(listOutcomes({ ordered, counted, bags }), claims),
  };
}

/** In the buy's own order of foods. */
function inOrderOf(
  foods: readonly { line: { bagOfferId: string } }[],
  ordered: readonly OrderedBags[],
): OrderedBags[] {
  const positionOf = new Map(foods.map(({ line }, position) => [line.bagOfferId, position]));
  const position = ({ bagOfferId }: OrderedBags) => positionOf.get(bagOfferId) ?? foods.length;
  return ordered.toSorted((a, b) => position(a) - position(b) || (a.bagOfferId < b.bagOfferId ? -1 : 1));
}

/** What became of each bag size that has been counted; nothing can be claimed of the others yet. */
function listOutcomes(landing: {
  ordered: readonly OrderedBags[];
  counted: ReadonlyMap<string, number>;
  bags: readonly SeenBag[];
}): OrderedOutcome[] {
  return landing.ordered.flatMap((size) => {
    const countedBags = landing.counted.get(size.bagOfferId);
    if (countedBags === undefined) return [];
    const bags = landing.bags.filter(({ bag }) => bag.bagOfferId === size.bagOfferId);
    return [
      {
        ...size,
        orderedBags: size.bags,
        countedBags,
        bags: bags.map(({ bag, isOnHold }) => ({ ...bag, isOnHold })),
      },
    ];
  });
}

/**
 * The last day on which the claim window is open for sure. The hour of arrival is not written down, so 48 hours cover
 * the day of arrival and the next.
 */
const lastClaimDay = (arrivedOn: string, hours: number): string =>
  addDays(arrivedOn, Math.max(0, Math.floor(hours / 24) - 1));

import type { Tx } from '@sheafbook/db';
import type { BuyRow } from '@sheafbook/db/tables';
import { stageGuards } from '@sheafbook/ledger';
import { addDays } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listSeenBags } from '../bag/queries.ts';
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
import { withAllCounts } from '../delivery/use-cases.ts';
import { listOrderedFoods, listOrderHeads } from '../order/queries.ts';
import { loadRules } from '../storehouse/queries.ts';
import { proposeClaims } from './proposals.ts';

/**
 * Ends the landing: every food that was ordered has its count, 0 included, and every counted bag its number. The
 * deliveries so far are finished by it; what comes later is a further part.
 */
export function landBuy(context: Context, buyId: string): Promise<BuyRow> {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, storehouseId, buyId);
    requireStage(buy, 'ordered');
    const ordered = await listOrderedBags(tx, storehouseId, buyId);
    const counted = await sumCountedBags(tx, storehouseId, buyId);
    const lines = linesCounted(ordered, counted);
    refuseUnmet(context.actor, stageGuards({ from: 'ordered', to: 'landed', facts: { lines } }));
    await refuseUnnumbered(tx, buy, counted);
    await updateFinished(tx, storehouseId, { buyId, at: context.now() });
    return moveStage(tx, context, { buy, to: 'landed' });
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

async function refuseUnnumbered(
  tx: Tx,
  { storehouseId, buyId }: BuyRow,
  counted: ReadonlyMap<string, number>,
): Promise<void> {
  const bags = await listSeenBags(tx, storehouseId, { buyId });
  const open = [...counted].map(([bagOfferId, countedBags]) => ({
    bagOfferId,
    bags: countedBags - bags.filter(({ bag }) => bag.bagOfferId === bagOfferId).length,
  }));
  const missing = open.filter((size) => size.bags > 0);
  if (missing.length === 0) return;
  const words = 'A bag that was counted has no number yet.';
  throw new Problem('buy-guard-unmet', {
    detail: words,
    missing: [
      {
        code: 'bag-not-numbered',
        words,
        count: missing.reduce((sum, size) => sum + size.bags, 0),
        ids: missing.map((size) => size.bagOfferId),
      },
    ],
  });
}

export type LandingSheet = Awaited<ReturnType<typeof readLandingSheet>>;

/** Everything on the landing sheet (job map 13, paper 4), with what is claimed, what could be, and until when. */
export function readLandingSheet(context: Context, buyId: string) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const buy = await loadBuy(tx, storehouseId, buyId);
    const rules = await loadRules(tx, storehouseId, buy.rulesVersion ?? undefined);
    const ordered = await listOrderedBags(tx, storehouseId, buyId);
    const counted = await sumCountedBags(tx, storehouseId, buyId);
    const bags = await listSeenBags(tx, storehouseId, { buyId });
    const claims = await listClaims(tx, storehouseId, buyId);
    const deliveries = await listDeliveries(tx, storehouseId, { buyId });
    const today = todayOf(context);
    return {
      ...{ buy, ordered, counted, bags, claims },
      orders: await listOrderHeads(tx, storehouseId, buyId),
      foods: await listOrderedFoods(tx, storehouseId, buyId),
      claimWindowHours: rules.claimWindowHours,
      deliveries: (await withAllCounts(tx, storehouseId, deliveries)).map((whole) => {
        const claimUntilOn = claimDay(whole.delivery.arrivedOn, rules.claimWindowHours);
        return { ...whole, claimUntilOn, isClaimWindowOver: claimUntilOn < today };
      }),
      proposedClaims: proposeClaims(
        ordered
          .map((size) => ({
            ...size,
            orderedBags: size.bags,
            countedBags: counted.get(size.bagOfferId) ?? 0,
            bags: bags
              .filter(({ bag }) => bag.bagOfferId === size.bagOfferId)
              .map(({ bag, isOnHold }) => ({ ...bag, isOnHold })),
          }))
          .filter((size) => counted.has(size.bagOfferId)),
        claims,
      ),
    };
  });
}

/** The hour of arrival is not written down, so a window of 48 hours is sure to be open for two days, no longer. */
const claimDay = (arrivedOn: string, hours: number): string => addDays(arrivedOn, Math.floor(hours / 24));

import type { Tx } from '@sheafbook/db';
import type { BuyRow, DeliveryRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { refuseFutureDay } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadBuy, lockBuyForUpdate, requireStage } from '../buy/queries.ts';
import { apart } from '../keying/schema.ts';
import { keepKeying } from '../keying/use-cases.ts';
import { loadSupplier } from '../supplier/queries.ts';
import { presentDelivery } from './present.ts';
import {
  countNumberedBags,
  findLastPartNo,
  insertDelivery,
  listCounts,
  listDeliveries,
  listOfferedBags,
  listOrderedBags,
  loadDelivery,
  type OfferedBag,
  updateDelivery,
  upsertCounts,
} from './queries.ts';
import type { DeliveryCounts, DeliveryFacts } from './schema.ts';

/** Writes down that a lorry came. Each further one of the same buy is a further part of its delivery. */
export function addDelivery(context: Context, buyId: string, wish: DeliveryFacts) {
  const { pen, rest: facts } = apart(wish);
  const { storehouseId, personId } = context.actor;
  refuseFutureDay(context, { field: 'arrivedOn', on: facts.arrivedOn });
  return withBuy(context, buyId, async (tx, buy) => {
    await loadSupplier(tx, storehouseId, facts.supplierId);
    const ordered = await listOrderedBags(tx, storehouseId, buyId);
    if (!ordered.some((bags) => bags.supplierId === facts.supplierId))
      throw fieldProblem(
        'invalid-input',
        'supplierId',
        'Nothing of this buy was ordered from this supplier.',
      );
    const delivery = await insertDelivery(tx, {
      ...facts,
      storehouseId,
      buyId,
      partNo: (await findLastPartNo(tx, storehouseId, buyId)) + 1,
      enteredBy: personId,
      enteredAt: context.now(),
    });
    const subjectIds = [delivery.deliveryId];
    await keepKeying(tx, context, { what: 'delivery', subjectIds, buy, pen });
    return { delivery, counts: [] };
  });
}

/** Sets how many bags of each named size the lorry brought; 0 is a count. Sizes that are not named keep theirs. */
export function countBags(context: Context, deliveryId: string, wish: DeliveryCounts) {
  const { storehouseId } = context.actor;
  return withDelivery(context, deliveryId, async (tx, delivery, buy) => {
    await refuseStale(tx, delivery, wish.version);
    const bagOfferIds = wish.counts.map((count) => count.bagOfferId);
    if (new Set(bagOfferIds).size < bagOfferIds.length)
      throw fieldProblem('invalid-input', 'counts', 'A bag size is counted twice here.');
    await listBagsOfDelivery(tx, delivery, { bagOfferIds, fieldOf: (at) => `counts.${at}.bagOfferId` });
    const numbered = await countNumberedBags(tx, storehouseId, deliveryId);
    for (const [at, { bagOfferId, countedBags }] of wish.counts.entries())
      if (countedBags < (numbered.get(bagOfferId) ?? 0))
        throw fieldProblem(
          'does-not-add-up',
          `counts.${at}.countedBags`,
          `${numbered.get(bagOfferId)} bags of this size have a number already.`,
        );
    await upsertCounts(
      tx,
      wish.counts.map((count) => ({ ...count, storehouseId, deliveryId })),
    );
    await keepKeying(tx, context, { what: 'count', subjectIds: [deliveryId], buy, pen: wish });
    return withCounts(tx, await updateDelivery(tx, delivery));
  });
}

/** Ends a delivery: its counts stand, and what comes later is a further part. Every counted bag has its number by then. */
export function finishDelivery(context: Context, deliveryId: string, version: number) {
  return withDelivery(context, deliveryId, async (tx, delivery) => {
    await refuseStale(tx, delivery, version);
    const { counts } = await withCounts(tx, delivery);
    const numbered = await countNumberedBags(tx, delivery.storehouseId, deliveryId);
    const open = counts.filter((count) => count.countedBags !== (numbered.get(count.bagOfferId) ?? 0));
    if (counts.length === 0 || open.length > 0)
      throw new Problem('does-not-add-up', {
        detail: 'Count the bags and give each its number before the delivery is finished.',
        bagOfferIds: open.map((count) => count.bagOfferId),
      });
    return withCounts(tx, await updateDelivery(tx, delivery, { finishedAt: context.now() }));
  });
}

export function readDelivery(context: Context, deliveryId: string) {
  return withTx(context, async (tx) =>
    withCounts(tx, await loadDelivery(tx, context.actor.storehouseId, deliveryId)),
  );
}

export function readDeliveries(
  context: Context,
  buyId: string,
  page: { after?: number | undefined; limit: number },
) {
  const { storehouseId } = context.actor;
  const { after = 0, limit } = page;
  return withTx(context, async (tx) => {
    await loadBuy(tx, storehouseId, buyId);
    const rows = await listDeliveries(tx, storehouseId, { buyId, after, limit: limit + 1 });
    return withAllCounts(tx, storehouseId, rows);
  });
}

async function withAllCounts(tx: Tx, storehouseId: string, rows: readonly DeliveryRow[]) {
  const counts = await listCounts(
    tx,
    storehouseId,
    rows.map((row) => row.deliveryId),
  );
  return rows.map((delivery) => ({
    delivery,
    counts: counts.filter((count) => count.deliveryId === delivery.deliveryId),
  }));
}

async function withCounts(tx: Tx, delivery: DeliveryRow) {
  const { storehouseId, deliveryId } = delivery;
  return { delivery, counts: await listCounts(tx, storehouseId, [deliveryId]) };
}

/** While goods of a buy may arrive: until it is closed, so that a later part finds its place. */
export function requireLanding(buy: BuyRow): void {
  requireStage(buy, 'ordered', 'landed', 'shared-out');
}

/** Alone with the buy: counts and numbers are what the guards of its next stages read (ledger-notes 6.16). */
function withBuy<Result>(context: Context, buyId: string, work: (tx: Tx, buy: BuyRow) => Promise<Result>) {
  return withTx(context, async (tx) => {
    const buy = await lockBuyForUpdate(tx, context.actor.storehouseId, buyId);
    requireLanding(buy);
    return work(tx, buy);
  });
}

function withDelivery<Result>(
  context: Context,
  deliveryId: string,
  work: (tx: Tx, delivery: DeliveryRow, buy: BuyRow) => Promise<Result>,
) {
  return withTx(context, async (tx) => {
    const { delivery, buy } = await lockOpenDelivery(tx, context, deliveryId);
    return work(tx, delivery, buy);
  });
}

/** Locks a delivery's buy, then reads the delivery, which nobody can change from then on. */
export async function lockOpenDelivery(tx: Tx, { actor }: Context, deliveryId: string) {
  const { buyId } = await loadDelivery(tx, actor.storehouseId, deliveryId);
  const buy = await lockBuyForUpdate(tx, actor.storehouseId, buyId);
  requireLanding(buy);
  const delivery = await loadDelivery(tx, actor.storehouseId, deliveryId);
  if (delivery.finishedAt) throw new Problem('delivery-finished', { partNo: delivery.partNo });
  return { buy, delivery };
}

async function refuseStale(tx: Tx, delivery: DeliveryRow, version: number): Promise<void> {
  if (delivery.version !== version)
    throw new Problem('stale-version', { newer: presentDelivery(await withCounts(tx, delivery)) });
}

/**
 * The offered bags that a list names, each of this delivery's buy and supplier. A bag of another buy is refused by
 * name, since it is the likeliest mix-up when two buys land in one hall.
 */
export async function listBagsOfDelivery(
  tx: Tx,
  delivery: DeliveryRow,
  list: { bagOfferIds: readonly string[]; fieldOf: (at: number) => string },
): Promise<Map<string, OfferedBag>> {
  const offered = await listOfferedBags(tx, delivery.storehouseId, list.bagOfferIds);
  const ordered = await listOrderedBags(tx, delivery.storehouseId, delivery.buyId);
  const byId = new Map(offered.map((bag) => [bag.bagOfferId, bag]));
  for (const [at, bagOfferId] of list.bagOfferIds.entries()) {
    const bag = byId.get(bagOfferId);
    const field = list.fieldOf(at);
    if (!bag) throw fieldProblem('thing-not-found', field, 'There is no such bag size.');
    if (bag.buyId !== delivery.buyId)
      throw fieldProblem('bag-of-another-buy', field, 'This bag size belongs to another buy.');
    const isOrdered = ordered.some(
      (line) => line.buyLineId === bag.buyLineId && line.supplierId === delivery.supplierId,
    );
    if (bag.supplierId !== delivery.supplierId || !isOrdered)
      throw fieldProblem('invalid-input', field, 'This food was not ordered from this supplier.');
  }
  return byId;
}

import type { Tx } from '@sheafbook/db';
import {
  bagOffers,
  bags,
  type DeliveryCountRow,
  type DeliveryRow,
  deliveries,
  deliveryCounts,
  orderLines,
  quotes,
  supplierOrders,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, count, eq, gt, inArray, isNull, max, sql, sum } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, deliveryId: string) =>
  and(eq(deliveries.storehouseId, storehouseId), eq(deliveries.deliveryId, deliveryId));

export async function loadDelivery(tx: Tx, storehouseId: string, deliveryId: string): Promise<DeliveryRow> {
  const [row] = await tx.select().from(deliveries).where(isThis(storehouseId, deliveryId));
  if (!row) throw new Problem('thing-not-found', { thing: 'delivery' });
  return row;
}

/** In the order that they came; `after` is the part number that the page before ended with. */
export async function listDeliveries(
  tx: Tx,
  storehouseId: string,
  of: { buyId: string; after?: number; limit?: number },
): Promise<DeliveryRow[]> {
  const { buyId, after = 0, limit = Number.MAX_SAFE_INTEGER } = of;
  return tx
    .select()
    .from(deliveries)
    .where(
      and(
        eq(deliveries.storehouseId, storehouseId),
        eq(deliveries.buyId, buyId),
        gt(deliveries.partNo, after),
      ),
    )
    .orderBy(deliveries.partNo)
    .limit(limit);
}

export async function findLastPartNo(tx: Tx, storehouseId: string, buyId: string): Promise<number> {
  const [row] = await tx
    .select({ last: max(deliveries.partNo) })
    .from(deliveries)
    .where(and(eq(deliveries.storehouseId, storehouseId), eq(deliveries.buyId, buyId)));
  return row?.last ?? 0;
}

export async function insertDelivery(tx: Tx, delivery: typeof deliveries.$inferInsert): Promise<DeliveryRow> {
  const [row] = await tx.insert(deliveries).values(delivery).returning();
  assert(row, 'an insert returns its row');
  return row;
}

/** Every change of a delivery is made under its buy's lock, so the version only tells readers apart. */
export async function updateDelivery(
  tx: Tx,
  delivery: DeliveryRow,
  set: { finishedAt?: Date } = {},
): Promise<DeliveryRow> {
  const [row] = await tx
    .update(deliveries)
    .set({ ...set, version: delivery.version + 1 })
    .where(isThis(delivery.storehouseId, delivery.deliveryId))
    .returning();
  assert(row, 'the delivery was loaded under the lock of its buy');
  return row;
}

export async function updateFinished(
  tx: Tx,
  storehouseId: string,
  { buyId, at }: { buyId: string; at: Date },
): Promise<void> {
  await tx
    .update(deliveries)
    .set({ finishedAt: at, version: sql`${deliveries.version} + 1` })
    .where(
      and(
        eq(deliveries.storehouseId, storehouseId),
        eq(deliveries.buyId, buyId),
        isNull(deliveries.finishedAt),
      ),
    );
}

export async function listCounts(
  tx: Tx,
  storehouseId: string,
  deliveryIds: readonly string[],
): Promise<DeliveryCountRow[]> {
  return tx
    .select()
    .from(deliveryCounts)
    .where(
      and(
        eq(deliveryCounts.storehouseId, storehouseId),
        inArray(deliveryCounts.deliveryId, [...deliveryIds]),
      ),
    )
    .orderBy(asc(deliveryCounts.deliveryId), asc(deliveryCounts.bagOfferId));
}

export async function upsertCounts(
  tx: Tx,
  rows: readonly (typeof deliveryCounts.$inferInsert)[],
): Promise<void> {
  await tx
    .insert(deliveryCounts)
    .values([...rows])
    .onConflictDoUpdate({
      target: [deliveryCounts.storehouseId, deliveryCounts.deliveryId, deliveryCounts.bagOfferId],
      set: { countedBags: sql`excluded.counted_bags`, note: sql`excluded.note` },
    });
}

/** How many bags of each size have their number already, refused ones included. */
export async function countNumberedBags(
  tx: Tx,
  storehouseId: string,
  deliveryId: string,
): Promise<Map<string, number>> {
  const rows = await tx
    .select({ bagOfferId: bags.bagOfferId, numbered: count() })
    .from(bags)
    .where(and(eq(bags.storehouseId, storehouseId), eq(bags.deliveryId, deliveryId)))
    .groupBy(bags.bagOfferId);
  return new Map(rows.map((row) => [row.bagOfferId, row.numbered]));
}

/** A bag size as it was offered, with the buy and the supplier that it belongs to. */
export type OfferedBag = {
  readonly bagOfferId: string;
  readonly buyId: string;
  readonly buyLineId: string;
  readonly supplierId: string;
  readonly bagGrams: number;
  readonly bagLabel: string;
};

export async function listOfferedBags(
  tx: Tx,
  storehouseId: string,
  bagOfferIds: readonly string[],
): Promise<OfferedBag[]> {
  return tx
    .select({
      bagOfferId: bagOffers.bagOfferId,
      buyId: bagOffers.buyId,
      buyLineId: bagOffers.buyLineId,
      supplierId: quotes.supplierId,
      bagGrams: bagOffers.bagGrams,
      bagLabel: bagOffers.bagLabel,
    })
    .from(bagOffers)
    .innerJoin(quotes, joinOn(quotes, bagOffers, 'quoteId'))
    .where(and(eq(bagOffers.storehouseId, storehouseId), inArray(bagOffers.bagOfferId, [...bagOfferIds])));
}

/** What was ordered of each bag size, at which price, from whom. */
export type OrderedBags = {
  readonly orderNo: number;
  readonly supplierId: string;
  readonly buyLineId: string;
  readonly bagOfferId: string;
  readonly bagLabel: string;
  readonly bagGrams: number;
  readonly bags: number;
  readonly goodsMinorUnits: number;
  readonly orderedOn: string;
};

export async function listOrderedBags(tx: Tx, storehouseId: string, buyId: string): Promise<OrderedBags[]> {
  return tx
    .select({
      orderNo: supplierOrders.orderNo,
      supplierId: supplierOrders.supplierId,
      buyLineId: orderLines.buyLineId,
      bagOfferId: orderLines.bagOfferId,
      bagLabel: bagOffers.bagLabel,
      bagGrams: bagOffers.bagGrams,
      bags: orderLines.bags,
      goodsMinorUnits: orderLines.goodsMinorUnits,
      orderedOn: supplierOrders.orderedOn,
    })
    .from(supplierOrders)
    .innerJoin(orderLines, joinOn(orderLines, supplierOrders, 'supplierOrderId'))
    .innerJoin(bagOffers, joinOn(bagOffers, orderLines, 'bagOfferId'))
    .where(
      and(
        eq(supplierOrders.storehouseId, storehouseId),
        eq(supplierOrders.buyId, buyId),
        isNull(supplierOrders.cancelledAt),
      ),
    )
    .orderBy(supplierOrders.orderNo, orderLines.bagOfferId);
}

/** Bags counted of each size, over all parts of the delivery. */
export async function sumCountedBags(
  tx: Tx,
  storehouseId: string,
  buyId: string,
): Promise<Map<string, number>> {
  const rows = await tx
    .select({
      bagOfferId: deliveryCounts.bagOfferId,
      counted: sum(deliveryCounts.countedBags).mapWith(Number),
    })
    .from(deliveryCounts)
    .innerJoin(deliveries, joinOn(deliveries, deliveryCounts, 'deliveryId'))
    .where(and(eq(deliveryCounts.storehouseId, storehouseId), eq(deliveries.buyId, buyId)))
    .groupBy(deliveryCounts.bagOfferId);
  return new Map(rows.map((row) => [row.bagOfferId, row.counted]));
}

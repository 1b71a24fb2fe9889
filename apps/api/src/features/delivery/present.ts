import type { DeliveryCountRow, DeliveryRow } from '@sheafbook/db/tables';

export type CountedDelivery = { delivery: DeliveryRow; counts: readonly DeliveryCountRow[] };

export function presentDelivery({ delivery, counts }: CountedDelivery) {
  return {
    id: delivery.deliveryId,
    buyId: delivery.buyId,
    supplierId: delivery.supplierId,
    partNo: delivery.partNo,
    carrier: delivery.carrier,
    arrivedOn: delivery.arrivedOn,
    carrierNote: delivery.carrierNote,
    countedBy: delivery.countedBy,
    finishedAt: delivery.finishedAt?.toISOString() ?? null,
    version: delivery.version,
    counts: counts.map(({ bagOfferId, countedBags, note }) => ({ bagOfferId, countedBags, note })),
  };
}

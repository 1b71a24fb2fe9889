import type { SeenBag } from './queries.ts';

export function presentBag({ bag, supplierMark, harvestYear, isOnHold, leftGrams }: SeenBag) {
  return {
    id: bag.bagId,
    bagCode: bag.bagCode,
    bagNo: bag.bagNo,
    buyId: bag.buyId,
    buyLineId: bag.buyLineId,
    deliveryId: bag.deliveryId,
    bagOfferId: bag.bagOfferId,
    lotId: bag.lotId,
    supplierMark,
    harvestYear,
    declaredGrams: bag.declaredGrams,
    grossGrams: bag.grossGrams,
    tareGrams: bag.tareGrams,
    netGrams: bag.netGrams,
    leftGrams,
    condition: bag.condition,
    moistureTenthsPercent: bag.moistureTenthsPercent,
    decision: bag.decision,
    note: bag.note,
    isExemptFromWeighing: bag.isExemptFromWeighing,
    isOnHold,
    weighedAt: bag.weighedAt?.toISOString() ?? null,
    version: bag.version,
  };
}

export const presentBags = (seen: readonly SeenBag[]) => ({ bags: seen.map(presentBag) });

import type { BuyRow } from '@sheafbook/db/tables';
import type { LandingSheet } from './use-cases.ts';

export const presentLanded = ({ buyId, stage, version }: BuyRow) => ({ id: buyId, stage, version });

export function presentLandingSheet(sheet: LandingSheet) {
  return {
    buyId: sheet.buy.buyId,
    stage: sheet.buy.stage,
    claimWindowHours: sheet.claimWindowHours,
    orders: sheet.orders.map(({ order, supplier }) => ({
      orderNo: order.orderNo,
      supplierId: order.supplierId,
      supplier: supplier.name,
      orderedOn: order.orderedOn,
      isCancelled: order.cancelledAt !== null,
    })),
    deliveries: sheet.deliveries.map(({ delivery, claimByOn, isClaimDayPast }) => ({
      id: delivery.deliveryId,
      partNo: delivery.partNo,
      supplierId: delivery.supplierId,
      carrier: delivery.carrier,
      arrivedOn: delivery.arrivedOn,
      countedBy: delivery.countedBy,
      carrierNote: delivery.carrierNote,
      isFinished: delivery.finishedAt !== null,
      version: delivery.version,
      claimByOn,
      isClaimDayPast,
    })),
    lines: sheet.ordered.map((size) => presentSize(sheet, size)),
    claims: sheet.claims.map(({ claimId, supplierId, buyLineId, kind, minorUnits, state, because }) => ({
      ...{ id: claimId, supplierId, buyLineId, kind, minorUnits, state, because },
    })),
    proposedClaims: sheet.proposedClaims,
  };
}

/** One bag size of an order: what was ordered, what came, and each bag of it. */
function presentSize(sheet: LandingSheet, size: LandingSheet['ordered'][number]) {
  const food = sheet.foods.find(({ line }) => line.bagOfferId === size.bagOfferId)?.food;
  const countedBags = sheet.counted.get(size.bagOfferId) ?? null;
  const bags = sheet.bags.filter(({ bag }) => bag.bagOfferId === size.bagOfferId);
  return {
    buyLineId: size.buyLineId,
    food: food ? { foodCode: food.foodCode, nameEn: food.nameEn, nameEs: food.nameEs } : null,
    bagOfferId: size.bagOfferId,
    bagLabel: size.bagLabel,
    bagGrams: size.bagGrams,
    orderNo: size.orderNo,
    orderedBags: size.bags,
    countedBags,
    shortBags: countedBags === null ? null : Math.max(0, size.bags - countedBags),
    overBags: countedBags === null ? null : Math.max(0, countedBags - size.bags),
    netGrams: bags
      .filter(({ bag }) => bag.decision !== 'refused')
      .reduce((sum, { bag }) => sum + bag.netGrams, 0),
    bags: bags.map(({ bag, supplierMark, isOnHold }) => ({
      id: bag.bagId,
      bagCode: bag.bagCode,
      bagNo: bag.bagNo,
      supplierMark,
      declaredGrams: bag.declaredGrams,
      grossGrams: bag.grossGrams,
      tareGrams: bag.tareGrams,
      netGrams: bag.netGrams,
      condition: bag.condition,
      decision: bag.decision,
      note: bag.note,
      isOnHold,
    })),
  };
}

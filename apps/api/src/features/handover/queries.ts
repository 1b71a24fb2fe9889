import type { Tx } from '@sheafbook/db';
import { foods, offerContainers, offers, packingSessions, quotes, suppliers } from '@sheafbook/db/tables';
import { and, asc, desc, eq, gt, isNull, notInArray } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** Packing days that are still to come, run, or were not settled yet, the next one first. */
export function listOpenSessions(tx: Tx, storehouseId: string) {
  return tx
    .select()
    .from(packingSessions)
    .where(
      and(
        eq(packingSessions.storehouseId, storehouseId),
        notInArray(packingSessions.stage, ['settled', 'called-off']),
      ),
    )
    .orderBy(asc(packingSessions.startsAt), asc(packingSessions.packingSessionId));
}

/** Every supplier by name, with the terms of the last quote that it did not withdraw. */
export async function listSuppliersWithTerms(tx: Tx, storehouseId: string) {
  return tx
    .selectDistinctOn([suppliers.name, suppliers.supplierId], { supplier: suppliers, quote: quotes })
    .from(suppliers)
    .leftJoin(quotes, and(joinOn(quotes, suppliers, 'supplierId'), isNull(quotes.withdrawnAt)))
    .where(eq(suppliers.storehouseId, storehouseId))
    .orderBy(suppliers.name, suppliers.supplierId, desc(quotes.enteredAt), desc(quotes.quoteId));
}

/** What of common stock members are being offered at this moment, what closes first in front. */
export function listOpenStoreOffers(tx: Tx, storehouseId: string, now: Date) {
  return tx
    .selectDistinct({
      offerId: offers.offerId,
      closesAt: offers.closesAt,
      foodEn: foods.nameEn,
      foodEs: foods.nameEs,
    })
    .from(offers)
    .innerJoin(foods, joinOn(foods, offers, 'foodId'))
    .innerJoin(
      offerContainers,
      and(joinOn(offerContainers, offers, 'offerId'), isNull(offerContainers.endedAt)),
    )
    .where(and(eq(offers.storehouseId, storehouseId), isNull(offers.householdId), gt(offers.closesAt, now)))
    .orderBy(asc(offers.closesAt), asc(offers.offerId));
}

import type { Tx } from '@sheafbook/db';
import {
  bagOffers,
  buyLines,
  dutyGrants,
  foods,
  householdContacts,
  type OrderConsentRow,
  orderConsents,
  orderLines,
  persons,
  priceBreaks,
  quotes,
  type SupplierOrderRow,
  supplierOrders,
  suppliers,
} from '@sheafbook/db/tables';
import { and, asc, eq, inArray, isNull } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

export async function listOrderConsents(
  tx: Tx,
  storehouseId: string,
  buyId: string,
): Promise<OrderConsentRow[]> {
  return tx
    .select()
    .from(orderConsents)
    .where(and(eq(orderConsents.storehouseId, storehouseId), eq(orderConsents.buyId, buyId)))
    .orderBy(asc(orderConsents.duty));
}

export async function insertOrderConsent(tx: Tx, consent: typeof orderConsents.$inferInsert): Promise<void> {
  await tx.insert(orderConsents).values(consent);
}

export async function deleteOrderConsents(tx: Tx, storehouseId: string, buyId: string): Promise<void> {
  await tx
    .delete(orderConsents)
    .where(and(eq(orderConsents.storehouseId, storehouseId), eq(orderConsents.buyId, buyId)));
}

export async function insertSupplierOrders(
  tx: Tx,
  rows: readonly (typeof supplierOrders.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(supplierOrders).values([...rows]);
}

export async function insertOrderLines(
  tx: Tx,
  rows: readonly (typeof orderLines.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(orderLines).values([...rows]);
}

/** The orders of a buy, one a supplier's quote, in the order of their numbers. */
export async function listSupplierOrders(
  tx: Tx,
  storehouseId: string,
  buyId: string,
): Promise<SupplierOrderRow[]> {
  return tx
    .select()
    .from(supplierOrders)
    .where(and(eq(supplierOrders.storehouseId, storehouseId), eq(supplierOrders.buyId, buyId)))
    .orderBy(asc(supplierOrders.orderNo));
}

/** The heads of the order papers: each order with its supplier and quote. */
export async function listOrderHeads(tx: Tx, storehouseId: string, buyId: string) {
  return tx
    .select({ order: supplierOrders, supplier: suppliers, quote: quotes })
    .from(supplierOrders)
    .innerJoin(suppliers, joinOn(suppliers, supplierOrders, 'supplierId'))
    .innerJoin(quotes, joinOn(quotes, supplierOrders, 'quoteId'))
    .where(and(eq(supplierOrders.storehouseId, storehouseId), eq(supplierOrders.buyId, buyId)))
    .orderBy(asc(supplierOrders.orderNo));
}

/** The lines of the order papers, in the buy's own order of foods. */
export async function listOrderedFoods(tx: Tx, storehouseId: string, buyId: string) {
  return tx
    .select({ line: orderLines, offer: bagOffers, buyLine: buyLines, food: foods })
    .from(orderLines)
    .innerJoin(bagOffers, joinOn(bagOffers, orderLines, 'bagOfferId'))
    .innerJoin(buyLines, joinOn(buyLines, orderLines, 'buyLineId'))
    .innerJoin(foods, joinOn(foods, buyLines, 'foodId'))
    .where(and(eq(orderLines.storehouseId, storehouseId), eq(buyLines.buyId, buyId)))
    .orderBy(asc(buyLines.position), asc(bagOffers.bagSize));
}

/** Who coordinates, with the telephone of the household where it shows it to members; else the policy hides it. */
export async function listCoordinators(tx: Tx, storehouseId: string) {
  return tx
    .select({ name: persons.name, phone: householdContacts.phone })
    .from(dutyGrants)
    .innerJoin(persons, joinOn(persons, dutyGrants, 'personId'))
    .leftJoin(
      householdContacts,
      and(
        eq(householdContacts.storehouseId, persons.storehouseId),
        eq(householdContacts.householdId, persons.householdId),
        eq(householdContacts.shownToMembers, true),
      ),
    )
    .where(
      and(
        eq(dutyGrants.storehouseId, storehouseId),
        eq(dutyGrants.duty, 'coordinator'),
        isNull(dutyGrants.endedAt),
      ),
    )
    .orderBy(asc(dutyGrants.grantedAt));
}

/** Takes the price breaks of some bag offers away, and leaves the offers, which fixed bags stand on. */
export async function deletePriceBreaks(
  tx: Tx,
  storehouseId: string,
  offerIds: readonly string[],
): Promise<void> {
  await tx
    .delete(priceBreaks)
    .where(and(eq(priceBreaks.storehouseId, storehouseId), inArray(priceBreaks.bagOfferId, [...offerIds])));
}

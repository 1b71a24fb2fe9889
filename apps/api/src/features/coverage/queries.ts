import type { Tx } from '@sheafbook/db';
import {
  accounts,
  chargeLines,
  chargeShares,
  eaters,
  foods,
  held,
  heldInKitchen,
  householdGuidelines,
  householdPlans,
  households,
  lots,
  pickUpPieces,
  pickUps,
  sharePieces,
  shares,
  splits,
} from '@sheafbook/db/tables';
import { STOCK_KINDS } from '@sheafbook/ledger';
import { and, eq, gt, inArray, isNotNull, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

const grams = sql<number>`(${accounts.inflow} - ${accounts.outflow})`.mapWith(Number);

/** Every vessel with grams of these households in it, with its food; `isHeld` when a hold on it or a doubt of its seal stands. */
export async function listHoldings(tx: Tx, storehouseId: string, householdIds: readonly string[]) {
  return tx
    .select({
      householdId: accounts.ownerId,
      vesselId: accounts.vesselId,
      vesselKind: accounts.vesselKind,
      lotId: lots.lotId,
      food: foods,
      grams,
      isHeld: sql<boolean>`exists (select from ${held} where ${held.storehouseId} = ${accounts.storehouseId}
        and ${held.vesselId} = ${accounts.vesselId}) or (${accounts.vesselKind} = 'kitchen' and exists (
        select from ${heldInKitchen} where ${heldInKitchen.storehouseId} = ${accounts.storehouseId}
        and ${heldInKitchen.householdId} = ${accounts.vesselId} and ${heldInKitchen.lotId} = ${accounts.unitId}))`.mapWith(
        Boolean,
      ),
    })
    .from(accounts)
    .innerJoin(lots, joinOn(lots, accounts, 'lotId', 'unitId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        inArray(accounts.ownerId, [...householdIds]),
        eq(accounts.kind, 'mass'),
        inArray(accounts.vesselKind, [...STOCK_KINDS]),
        gt(accounts.inflow, accounts.outflow),
      ),
    )
    .orderBy(accounts.vesselId);
}

/** What splits that stand awarded in each bag, and what of it was fetched. */
export async function listAwardedAndFetched(tx: Tx, storehouseId: string, householdIds: readonly string[]) {
  const awarded = await tx
    .select({
      householdId: sharePieces.ownerId,
      bagId: sharePieces.bagId,
      grams: sql<number>`sum(${sharePieces.grams})`.mapWith(Number),
    })
    .from(sharePieces)
    .innerJoin(splits, and(joinOn(splits, sharePieces, 'splitId'), isNull(splits.undoneAt)))
    .where(and(eq(sharePieces.storehouseId, storehouseId), inArray(sharePieces.ownerId, [...householdIds])))
    .groupBy(sharePieces.ownerId, sharePieces.bagId);
  const fetched = await listFetched(tx, storehouseId, householdIds);
  return { awarded, fetched };
}

async function listFetched(tx: Tx, storehouseId: string, householdIds: readonly string[]) {
  return tx
    .select({
      householdId: pickUps.householdId,
      bagId: pickUpPieces.bagId,
      grams: sql<number>`sum(${pickUpPieces.grams})`.mapWith(Number),
    })
    .from(pickUpPieces)
    .innerJoin(
      pickUps,
      and(
        eq(pickUps.storehouseId, pickUpPieces.storehouseId),
        eq(pickUps.pickUpId, pickUpPieces.pickUpId),
        isNotNull(pickUps.collectedAt),
      ),
    )
    .where(and(eq(pickUpPieces.storehouseId, storehouseId), inArray(pickUps.householdId, [...householdIds])))
    .groupBy(pickUps.householdId, pickUpPieces.bagId);
}

/** Eaters of these households: one's own, or all in the task 'coverage-totals'. */
export async function listEatersOf(tx: Tx, storehouseId: string, householdIds: readonly string[]) {
  return tx
    .select()
    .from(eaters)
    .where(and(eq(eaters.storehouseId, storehouseId), inArray(eaters.householdId, [...householdIds])))
    .orderBy(eaters.eaterId);
}

export async function listPlansOf(tx: Tx, storehouseId: string, householdIds: readonly string[]) {
  const plans = await tx
    .select()
    .from(householdPlans)
    .where(
      and(
        eq(householdPlans.storehouseId, storehouseId),
        inArray(householdPlans.householdId, [...householdIds]),
      ),
    );
  const guidelines = await tx
    .select()
    .from(householdGuidelines)
    .where(
      and(
        eq(householdGuidelines.storehouseId, storehouseId),
        inArray(householdGuidelines.householdId, [...householdIds]),
      ),
    );
  return { plans, guidelines };
}

export async function listPresentHouseholdIds(tx: Tx, storehouseId: string): Promise<string[]> {
  const rows = await tx
    .select({ householdId: households.householdId })
    .from(households)
    .where(and(eq(households.storehouseId, storehouseId), isNull(households.leftOn)))
    .orderBy(households.seat);
  return rows.map((row) => row.householdId);
}

/** What a household was charged in each buy, by cost line. `buyLineId` names the food of a goods line. */
export async function listCharges(tx: Tx, storehouseId: string, householdId: string) {
  return tx
    .select({
      buyId: chargeLines.buyId,
      buyLineId: chargeLines.buyLineId,
      minorUnits: chargeShares.minorUnits,
    })
    .from(chargeShares)
    .innerJoin(chargeLines, joinOn(chargeLines, chargeShares, 'chargeLineId'))
    .where(and(eq(chargeShares.storehouseId, storehouseId), eq(chargeShares.ownerId, householdId)))
    .orderBy(chargeLines.chargeLineId);
}

/** What a household was awarded of each line of each buy, with the line's food. */
export async function listAwards(tx: Tx, storehouseId: string, householdId: string) {
  return tx
    .select({
      buyId: splits.buyId,
      buyLineId: splits.buyLineId,
      food: foods,
      grams: sql<number>`sum(${shares.awardGrams})`.mapWith(Number),
    })
    .from(shares)
    .innerJoin(splits, and(joinOn(splits, shares, 'splitId'), isNull(splits.undoneAt)))
    .innerJoin(
      foods,
      and(
        eq(foods.storehouseId, splits.storehouseId),
        sql`${foods.foodId} = (select l.food_id from book.buy_line l
          where l.storehouse_id = ${splits.storehouseId} and l.buy_line_id = ${splits.buyLineId})`,
      ),
    )
    .where(and(eq(shares.storehouseId, storehouseId), eq(shares.ownerId, householdId)))
    .groupBy(splits.buyId, splits.buyLineId, foods.storehouseId, foods.foodId)
    .orderBy(splits.buyLineId);
}

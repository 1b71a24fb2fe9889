import type { Tx } from '@sheafbook/db';
import {
  accounts,
  type EaterRow,
  eaters,
  foods,
  householdGuidelines,
  householdPlans,
  lots,
} from '@sheafbook/db/tables';
import { STOCK_KINDS } from '@sheafbook/ledger';
import { and, eq, inArray, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** Readable in the task 'need-first': what a rule reads, never shown. */
export async function listEatersOf(
  tx: Tx,
  storehouseId: string,
  householdIds: readonly string[],
): Promise<EaterRow[]> {
  return tx
    .select()
    .from(eaters)
    .where(and(eq(eaters.storehouseId, storehouseId), inArray(eaters.householdId, [...householdIds])))
    .orderBy(eaters.eaterId);
}

/** The households that reckon with their children a year older. */
export async function listYearAdders(
  tx: Tx,
  storehouseId: string,
  householdIds: readonly string[],
): Promise<Set<string>> {
  const rows = await tx
    .select({ householdId: householdPlans.householdId })
    .from(householdPlans)
    .where(
      and(
        eq(householdPlans.storehouseId, storehouseId),
        inArray(householdPlans.householdId, [...householdIds]),
        eq(householdPlans.addYear, true),
      ),
    );
  return new Set(rows.map((row) => row.householdId));
}

/** The households' own figures for a food group, where they have typed one in: grams for one adult and year. */
export async function listOwnGuidelines(
  tx: Tx,
  storehouseId: string,
  { householdIds, foodGroup }: { householdIds: readonly string[]; foodGroup: string },
): Promise<Map<string, number>> {
  const rows = await tx
    .select({ householdId: householdGuidelines.householdId, grams: householdGuidelines.gramsPerAdultYear })
    .from(householdGuidelines)
    .where(
      and(
        eq(householdGuidelines.storehouseId, storehouseId),
        inArray(householdGuidelines.householdId, [...householdIds]),
        eq(householdGuidelines.foodGroup, foodGroup),
      ),
    );
  return new Map(rows.map((row) => [row.householdId, row.grams]));
}

/** What households hold of a food group, in bags, containers and kitchens. */
export async function sumStockOf(
  tx: Tx,
  storehouseId: string,
  { householdIds, foodGroup }: { householdIds: readonly string[]; foodGroup: string },
): Promise<Map<string, number>> {
  const rows = await tx
    .select({
      ownerId: accounts.ownerId,
      grams: sql<number>`sum(${accounts.inflow} - ${accounts.outflow})`.mapWith(Number),
    })
    .from(accounts)
    .innerJoin(lots, joinOn(lots, accounts, 'lotId', 'unitId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.kind, 'mass'),
        inArray(accounts.vesselKind, [...STOCK_KINDS]),
        inArray(accounts.ownerId, [...householdIds]),
        eq(foods.foodGroup, foodGroup),
      ),
    )
    .groupBy(accounts.ownerId);
  return new Map(rows.flatMap((row) => (row.ownerId === null ? [] : [[row.ownerId, row.grams] as const])));
}

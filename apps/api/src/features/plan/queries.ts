import type { Tx } from '@sheafbook/db';
import {
  type HouseholdGuidelineRow,
  type HouseholdPlanRow,
  householdGuidelines,
  householdPlans,
} from '@sheafbook/db/tables';
import { and, eq } from 'drizzle-orm';

const isOf = (storehouseId: string, householdId: string) =>
  and(eq(householdPlans.storehouseId, storehouseId), eq(householdPlans.householdId, householdId));

/** Undefined while the household goes by the defaults. Another household's is invisible (ledger-notes 6.19). */
export async function findPlan(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<HouseholdPlanRow | undefined> {
  const [row] = await tx.select().from(householdPlans).where(isOf(storehouseId, householdId));
  return row;
}

export async function listGuidelines(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<HouseholdGuidelineRow[]> {
  return tx
    .select()
    .from(householdGuidelines)
    .where(
      and(
        eq(householdGuidelines.storehouseId, storehouseId),
        eq(householdGuidelines.householdId, householdId),
      ),
    )
    .orderBy(householdGuidelines.foodGroup);
}

/** Undefined when somebody entered the first one meanwhile. */
export async function insertPlan(
  tx: Tx,
  plan: typeof householdPlans.$inferInsert,
): Promise<HouseholdPlanRow | undefined> {
  const [row] = await tx.insert(householdPlans).values(plan).onConflictDoNothing().returning();
  return row;
}

/** Undefined when the version is no longer the one in the book. */
export async function updatePlan(
  tx: Tx,
  { version, ...plan }: HouseholdPlanRow,
): Promise<HouseholdPlanRow | undefined> {
  const { needBasis, targetDays, targetGroups, addYear } = plan;
  const [row] = await tx
    .update(householdPlans)
    .set({ needBasis, targetDays, targetGroups, addYear, version: version + 1 })
    .where(and(isOf(plan.storehouseId, plan.householdId), eq(householdPlans.version, version)))
    .returning();
  return row;
}

export async function deleteGuidelines(tx: Tx, storehouseId: string, householdId: string): Promise<void> {
  await tx
    .delete(householdGuidelines)
    .where(
      and(
        eq(householdGuidelines.storehouseId, storehouseId),
        eq(householdGuidelines.householdId, householdId),
      ),
    );
}

export async function insertGuidelines(tx: Tx, rows: readonly HouseholdGuidelineRow[]): Promise<void> {
  if (rows.length > 0) await tx.insert(householdGuidelines).values([...rows]);
}

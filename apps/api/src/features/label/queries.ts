import type { Tx } from '@sheafbook/db';
import {
  accounts,
  buyLines,
  buys,
  containerKinds,
  containers,
  foods,
  households,
  lots,
} from '@sheafbook/db/tables';
import { and, eq, inArray, sql } from 'drizzle-orm';

/** What stands on the label of each container: those named, or else all of a household that are not empty. */
export async function listToLabel(
  tx: Tx,
  storehouseId: string,
  wish: { householdId: string; codes: readonly string[] },
) {
  const { householdId, codes } = wish;
  return tx
    .select({
      container: containers,
      kind: containerKinds,
      food: foods,
      lot: lots,
      household: households,
      buyName: buys.name,
      grams: sql<number>`coalesce(${accounts.inflow} - ${accounts.outflow}, 0)`.mapWith(Number),
    })
    .from(containers)
    .innerJoin(
      containerKinds,
      and(
        eq(containerKinds.storehouseId, containers.storehouseId),
        eq(containerKinds.containerKindId, containers.containerKindId),
      ),
    )
    .innerJoin(lots, and(eq(lots.storehouseId, containers.storehouseId), eq(lots.lotId, containers.lotId)))
    .innerJoin(foods, and(eq(foods.storehouseId, lots.storehouseId), eq(foods.foodId, lots.foodId)))
    .leftJoin(
      buyLines,
      and(eq(buyLines.storehouseId, lots.storehouseId), eq(buyLines.buyLineId, lots.buyLineId)),
    )
    .leftJoin(buys, and(eq(buys.storehouseId, buyLines.storehouseId), eq(buys.buyId, buyLines.buyId)))
    .innerJoin(
      households,
      and(
        eq(households.storehouseId, containers.storehouseId),
        eq(households.householdId, containers.householdId),
      ),
    )
    .leftJoin(
      accounts,
      and(
        eq(accounts.storehouseId, containers.storehouseId),
        eq(accounts.vesselId, containers.containerId),
        eq(accounts.ownerId, containers.householdId),
      ),
    )
    .where(
      and(
        eq(containers.storehouseId, storehouseId),
        eq(containers.householdId, householdId),
        codes.length > 0
          ? inArray(containers.containerCode, [...codes])
          : sql`${accounts.inflow} > ${accounts.outflow}`,
      ),
    )
    .orderBy(containers.containerId);
}

export type ToLabel = Awaited<ReturnType<typeof listToLabel>>[number];

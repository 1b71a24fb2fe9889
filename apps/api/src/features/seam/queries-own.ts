import type { Tx } from '@sheafbook/db';
import {
  accounts,
  containers,
  foods,
  lots,
  packingPours,
  packingSessions,
  sealChecks,
  sealHolds,
} from '@sheafbook/db/tables';
import { and, asc, eq, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** A household's own containers that a failed seal put in doubt, with what was answered and what is in them still. */
export async function listOwnDoubts(tx: Tx, storehouseId: string, householdId: string) {
  return tx
    .select({
      hold: sealHolds,
      checkedAt: sealChecks.checkedAt,
      code: containers.containerCode,
      serial: packingPours.serial,
      food: { foodId: foods.foodId, nameEn: foods.nameEn, nameEs: foods.nameEs },
      session: { packingSessionId: packingSessions.packingSessionId, name: packingSessions.name },
      grams: sql<number>`coalesce(${accounts.inflow} - ${accounts.outflow}, 0)`.mapWith(Number),
    })
    .from(sealHolds)
    .innerJoin(sealChecks, joinOn(sealChecks, sealHolds, 'sealCheckId'))
    .innerJoin(packingSessions, joinOn(packingSessions, sealChecks, 'packingSessionId'))
    .innerJoin(containers, joinOn(containers, sealHolds, 'containerId'))
    .innerJoin(packingPours, joinOn(packingPours, sealHolds, 'containerId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
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
        eq(sealHolds.storehouseId, storehouseId),
        eq(containers.householdId, householdId),
        isNull(packingPours.undoneEntryId),
      ),
    )
    .orderBy(asc(sealHolds.sealCheckId), asc(packingPours.serial));
}
export type OwnDoubt = Awaited<ReturnType<typeof listOwnDoubts>>[number];

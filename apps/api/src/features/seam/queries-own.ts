import type { Tx } from '@sheafbook/db';
import {
  accounts,
  containers,
  foods,
  lineClosed,
  lots,
  packingSessions,
  sealChecks,
  sealHolds,
} from '@sheafbook/db/tables';
import { and, asc, eq, isNull } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { gramsLeft, ownAccount } from '../container/queries.ts';

/** A household's own containers that a failed seal put in doubt, with what was answered and what is in them still. */
export async function listOwnDoubts(tx: Tx, storehouseId: string, householdId: string) {
  return tx
    .select({
      hold: sealHolds,
      checkedAt: sealChecks.checkedAt,
      code: containers.containerCode,
      serial: lineClosed.serial,
      food: { foodId: foods.foodId, nameEn: foods.nameEn, nameEs: foods.nameEs },
      session: { packingSessionId: packingSessions.packingSessionId, name: packingSessions.name },
      grams: gramsLeft,
    })
    .from(sealHolds)
    .innerJoin(sealChecks, joinOn(sealChecks, sealHolds, 'sealCheckId'))
    .innerJoin(packingSessions, joinOn(packingSessions, sealChecks, 'packingSessionId'))
    .innerJoin(containers, joinOn(containers, sealHolds, 'containerId'))
    .innerJoin(lineClosed, joinOn(lineClosed, sealHolds, 'containerId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .leftJoin(accounts, ownAccount)
    .where(
      and(
        eq(sealHolds.storehouseId, storehouseId),
        eq(containers.householdId, householdId),
        isNull(lineClosed.undoneEntryId),
      ),
    )
    .orderBy(asc(sealHolds.sealCheckId), asc(lineClosed.serial));
}
export type OwnDoubt = Awaited<ReturnType<typeof listOwnDoubts>>[number];

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
import { joinOn } from '../../platform/join-on.ts';
import { gramsLeft, ownAccount } from '../container/queries.ts';

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
      grams: gramsLeft,
    })
    .from(containers)
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .leftJoin(buyLines, joinOn(buyLines, lots, 'buyLineId'))
    .leftJoin(buys, joinOn(buys, buyLines, 'buyId'))
    .innerJoin(households, joinOn(households, containers, 'householdId'))
    .leftJoin(accounts, ownAccount)
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

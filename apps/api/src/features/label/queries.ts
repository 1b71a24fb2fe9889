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
import { and, eq, inArray, type SQL, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { gramsLeft, ownAccount } from '../container/queries.ts';

/** What stands on the label of each container of a household: those named, or else all that are not empty. */
export const listToLabel = (
  tx: Tx,
  storehouseId: string,
  { householdId, codes }: { householdId: string; codes: readonly string[] },
) =>
  listToLabelOf(
    tx,
    storehouseId,
    and(
      eq(containers.householdId, householdId),
      codes.length > 0
        ? inArray(containers.containerCode, [...codes])
        : sql`${accounts.inflow} > ${accounts.outflow}`,
    ),
  );

/** What stands on the labels of the containers that are meant. */
export async function listToLabelOf(tx: Tx, storehouseId: string, meant: SQL | undefined) {
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
    .where(and(eq(containers.storehouseId, storehouseId), meant))
    .orderBy(containers.containerId);
}

export type ToLabel = Awaited<ReturnType<typeof listToLabelOf>>[number];

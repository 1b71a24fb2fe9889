import type { Tx } from '@sheafbook/db';
import { accounts, containers, households, lineClosed, packingWishes, reCans } from '@sheafbook/db/tables';
import { and, asc, eq, exists, inArray, isNotNull, isNull, notExists, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { listToLabelOf, type ToLabel } from '../label/queries.ts';

/** Nothing was ever in it, so that it is a label and no container yet. */
const isBlank = (tx: Tx) =>
  notExists(
    tx
      .select({ one: sql`1` })
      .from(accounts)
      .where(
        and(
          eq(accounts.storehouseId, containers.storehouseId),
          eq(accounts.vesselId, containers.containerId),
        ),
      ),
  );

/** The labels made ahead for households that want something packed on a day, which nobody has filled anything under. */
export function listBlank(
  tx: Tx,
  storehouseId: string,
  { sessionId, packedOn }: { sessionId: string; packedOn: string },
): Promise<ToLabel[]> {
  const wanting = tx
    .select({ one: sql`1` })
    .from(packingWishes)
    .where(
      and(
        eq(packingWishes.storehouseId, storehouseId),
        eq(packingWishes.packingSessionId, sessionId),
        eq(packingWishes.householdId, containers.householdId),
      ),
    );
  return listToLabelOf(
    tx,
    storehouseId,
    and(eq(containers.packedOn, packedOn), exists(wanting), isBlank(tx)),
  );
}

/** The codes that a session filled and emptied again by taking the pour back: spent, with nothing behind them. */
export function listSpent(tx: Tx, storehouseId: string, sessionId: string) {
  return tx
    .select({ container: containers, household: households })
    .from(lineClosed)
    .innerJoin(containers, joinOn(containers, lineClosed, 'containerId'))
    .innerJoin(households, joinOn(households, lineClosed, 'householdId'))
    .where(
      and(
        eq(lineClosed.storehouseId, storehouseId),
        eq(lineClosed.packingSessionId, sessionId),
        isNotNull(lineClosed.undoneEntryId),
      ),
    )
    .orderBy(asc(lineClosed.line), asc(lineClosed.serial));
}
export type Spent = Awaited<ReturnType<typeof listSpent>>[number];

/** The containers of some codes, whoever's they are, locked in a fixed order, with whether their codes are spent. */
export async function lockByCodes(tx: Tx, storehouseId: string, codes: readonly string[]) {
  const hasEnded = exists(
    tx
      .select({ one: sql`1` })
      .from(reCans)
      .where(
        and(
          eq(reCans.storehouseId, storehouseId),
          eq(reCans.oldContainerId, containers.containerId),
          isNull(reCans.undoneEntryId),
        ),
      ),
  );
  return tx
    .select({
      container: containers,
      isBlank: sql<boolean>`${isBlank(tx)}`,
      hasEnded: sql<boolean>`${hasEnded}`,
    })
    .from(containers)
    .where(and(eq(containers.storehouseId, storehouseId), inArray(containers.containerCode, [...codes])))
    .orderBy(containers.containerId)
    .for('update');
}
export type ByCode = Awaited<ReturnType<typeof lockByCodes>>[number];

import type { Tx } from '@sheafbook/db';
import {
  households,
  type SessionCostRow,
  type SessionSettlementRow,
  sessionCosts,
  sessionSettlements,
  sessionShares,
} from '@sheafbook/db/tables';
import { and, asc, eq, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** The settlement of a session that stands; one that was taken back stands no more. */
export async function findSettlement(
  tx: Tx,
  storehouseId: string,
  sessionId: string,
): Promise<SessionSettlementRow | undefined> {
  const [row] = await tx
    .select()
    .from(sessionSettlements)
    .where(
      and(
        eq(sessionSettlements.storehouseId, storehouseId),
        eq(sessionSettlements.packingSessionId, sessionId),
        isNull(sessionSettlements.undoneAt),
      ),
    );
  return row;
}

export async function listCostsOfSettlement(
  tx: Tx,
  storehouseId: string,
  settlementId: string,
): Promise<SessionCostRow[]> {
  return tx
    .select()
    .from(sessionCosts)
    .where(
      and(eq(sessionCosts.storehouseId, storehouseId), eq(sessionCosts.sessionSettlementId, settlementId)),
    )
    .orderBy(asc(sessionCosts.position));
}

/** The parts of each cost by seat; of one household alone where one is named. */
export async function listSharesOfSettlement(
  tx: Tx,
  storehouseId: string,
  of: { settlementId: string; householdId?: string | undefined },
) {
  return tx
    .select({ share: sessionShares, household: households })
    .from(sessionShares)
    .innerJoin(households, joinOn(households, sessionShares, 'householdId'))
    .where(
      and(
        eq(sessionShares.storehouseId, storehouseId),
        eq(sessionShares.sessionSettlementId, of.settlementId),
        of.householdId === undefined ? undefined : eq(sessionShares.householdId, of.householdId),
      ),
    )
    .orderBy(asc(sessionShares.position), asc(households.seat));
}

/** By how many containers each cost is shared in all. */
export async function sumContainersOfCosts(tx: Tx, storehouseId: string, settlementId: string) {
  const rows = await tx
    .select({
      position: sessionShares.position,
      containers: sql<number>`sum(${sessionShares.containers})`.mapWith(Number),
    })
    .from(sessionShares)
    .where(
      and(eq(sessionShares.storehouseId, storehouseId), eq(sessionShares.sessionSettlementId, settlementId)),
    )
    .groupBy(sessionShares.position);
  return new Map(rows.map(({ position, containers }) => [position, containers]));
}

export async function insertSettlement(
  tx: Tx,
  row: typeof sessionSettlements.$inferInsert,
  costs: readonly (typeof sessionCosts.$inferInsert)[],
  shares: readonly (typeof sessionShares.$inferInsert)[],
): Promise<void> {
  await tx.insert(sessionSettlements).values(row);
  if (costs.length > 0) await tx.insert(sessionCosts).values([...costs]);
  if (shares.length > 0) await tx.insert(sessionShares).values([...shares]);
}

export async function markSettlementUndone(
  tx: Tx,
  { storehouseId, sessionSettlementId }: SessionSettlementRow,
  undone: { undoneAt: Date; undoneEntryId: string | null },
): Promise<void> {
  await tx
    .update(sessionSettlements)
    .set(undone)
    .where(
      and(
        eq(sessionSettlements.storehouseId, storehouseId),
        eq(sessionSettlements.sessionSettlementId, sessionSettlementId),
      ),
    );
}

/** From here the session's clearing account stays at nothing after every entry. */
export async function closeClearing(tx: Tx, storehouseId: string, sessionId: string): Promise<void> {
  await tx.execute(sql`select book.close_account(account_id) from book.account
    where storehouse_id = ${storehouseId} and kind = 'session_clearing' and cause_id = ${sessionId}`);
}

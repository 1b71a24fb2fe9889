import type { Tx } from '@sheafbook/db';
import { households, lidChecks, packingSessions } from '@sheafbook/db/tables';
import type { LidSaying, Outcome } from '@sheafbook/keeping';
import { and, eq, sql } from 'drizzle-orm';
import { isOneOf } from '../../platform/is-one-of.ts';

/** When a jar was closed last, and what was said of its lid and found on it last. */
export type Closed = {
  readonly containerId: string;
  readonly householdId: string | null;
  readonly sessionId: string | null;
  readonly closedAt: Date;
  readonly isInStore: boolean;
  readonly said: { readonly says: LidSaying; readonly closedAt: Date; readonly checkedAt: Date } | null;
  readonly lastLook: { readonly inspectedAt: Date; readonly outcome: Outcome } | null;
};

/** The shut jars packed since a day: a household's own and common stock, and with `isStore` what others have standing in the store. */
export async function listClosings(
  tx: Tx,
  storehouseId: string,
  { sinceOn, isStore }: { sinceOn: string; isStore: boolean },
): Promise<Closed[]> {
  const rows = await tx.execute<{
    container_id: string;
    household_id: string | null;
    packing_session_id: string | null;
    closed_at: string;
    is_in_store: boolean;
    says: LidSaying | null;
    said_of: string | null;
    checked_at: string | null;
    looked_at: string | null;
    outcome: Outcome | null;
  }>(sql`select * from book.list_lids(${storehouseId}, ${sinceOn}, ${isStore})`);
  return rows.map((row) => ({
    ...{ containerId: row.container_id, householdId: row.household_id },
    ...{ sessionId: row.packing_session_id, isInStore: row.is_in_store },
    closedAt: new Date(row.closed_at),
    said:
      row.says && row.said_of && row.checked_at
        ? { says: row.says, closedAt: new Date(row.said_of), checkedAt: new Date(row.checked_at) }
        : null,
    lastLook:
      row.looked_at && row.outcome ? { inspectedAt: new Date(row.looked_at), outcome: row.outcome } : null,
  }));
}

/** The names of households by their ids. */
export async function listHouseholdNames(
  tx: Tx,
  storehouseId: string,
  householdIds: readonly string[],
): Promise<Map<string, string>> {
  const rows = await tx
    .select({ id: households.householdId, name: households.name })
    .from(households)
    .where(and(eq(households.storehouseId, storehouseId), isOneOf(households.householdId, householdIds)));
  return new Map(rows.map(({ id, name }) => [id, name]));
}

/** The names of packing days by their ids. */
export async function listSessionNames(
  tx: Tx,
  storehouseId: string,
  sessionIds: readonly string[],
): Promise<Map<string, string>> {
  const rows = await tx
    .select({ id: packingSessions.packingSessionId, name: packingSessions.name })
    .from(packingSessions)
    .where(
      and(
        eq(packingSessions.storehouseId, storehouseId),
        isOneOf(packingSessions.packingSessionId, sessionIds),
      ),
    );
  return new Map(rows.map(({ id, name }) => [id, name]));
}

export async function insertLidChecks(
  tx: Tx,
  rows: readonly (typeof lidChecks.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(lidChecks).values([...rows]);
}

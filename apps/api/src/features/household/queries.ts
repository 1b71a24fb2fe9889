import type { Tx } from '@sheafbook/db';
import { codeCounters, type HouseholdRow, households, owners } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, sql } from 'drizzle-orm';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, householdId: string) =>
  and(eq(households.storehouseId, storehouseId), eq(households.householdId, householdId));

/** Takes the next number of a counter of the storehouse; the row stays locked until the transaction ends. */
export async function takeNumber(
  tx: Tx,
  storehouseId: string,
  counter: 'bag' | 'container' | 'order' | 'seat',
): Promise<number> {
  const [row] = await tx
    .update(codeCounters)
    .set({ lastNumber: sql`${codeCounters.lastNumber} + 1` })
    .where(and(eq(codeCounters.storehouseId, storehouseId), eq(codeCounters.counter, counter)))
    .returning({ number: codeCounters.lastNumber });
  assert(row, 'a storehouse is founded with its counters');
  return row.number;
}

export async function insertHousehold(
  tx: Tx,
  household: { storehouseId: string; householdId: string; seat: number; name: string; joinedOn: string },
) {
  const { storehouseId, householdId } = household;
  await tx.insert(owners).values({ storehouseId, ownerId: householdId, kind: 'household' });
  const [row] = await tx.insert(households).values(household).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function hasHouseholdNamed(tx: Tx, storehouseId: string, name: string): Promise<boolean> {
  const rows = await tx
    .select({ householdId: households.householdId })
    .from(households)
    .where(and(eq(households.storehouseId, storehouseId), eq(households.name, name)));
  return rows.length > 0;
}

export async function loadHousehold(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<HouseholdRow> {
  const [row] = await tx.select().from(households).where(isThis(storehouseId, householdId));
  if (!row) throw new Problem('thing-not-found', { thing: 'household' });
  return row;
}

/** One that has not left. */
export async function loadPresentHousehold(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<HouseholdRow> {
  const household = await loadHousehold(tx, storehouseId, householdId);
  if (household.leftOn !== null) throw new Problem('household-has-left', { seat: household.seat });
  return household;
}

import type { Tx } from '@sheafbook/db';
import { codeCounters, households, owners } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, sql } from 'drizzle-orm';

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

import type { Tx } from '@sheafbook/db';
import { type DepositAskRow, depositAsks } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq, inArray } from 'drizzle-orm';

const ofBuy = (storehouseId: string, buyId: string) =>
  and(eq(depositAsks.storehouseId, storehouseId), eq(depositAsks.buyId, buyId));

/** The deposits asked for a buy. */
export async function listDepositAsks(tx: Tx, storehouseId: string, buyId: string): Promise<DepositAskRow[]> {
  return tx
    .select()
    .from(depositAsks)
    .where(ofBuy(storehouseId, buyId))
    .orderBy(asc(depositAsks.householdId));
}

export async function findDepositAsk(
  tx: Tx,
  storehouseId: string,
  { buyId, householdId }: { buyId: string; householdId: string },
): Promise<DepositAskRow | undefined> {
  const [ask] = await tx
    .select()
    .from(depositAsks)
    .where(and(ofBuy(storehouseId, buyId), eq(depositAsks.householdId, householdId)));
  return ask;
}

export async function insertDepositAsks(
  tx: Tx,
  rows: readonly (typeof depositAsks.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(depositAsks).values([...rows]);
}

export async function updateDepositAsk(
  tx: Tx,
  ask: DepositAskRow,
  change: Partial<typeof depositAsks.$inferInsert>,
): Promise<DepositAskRow> {
  const [row] = await tx
    .update(depositAsks)
    .set(change)
    .where(and(ofBuy(ask.storehouseId, ask.buyId), eq(depositAsks.householdId, ask.householdId)))
    .returning();
  assert(row, 'the ask was read before, under the lock of its buy');
  return row;
}

export async function deleteDepositAsks(
  tx: Tx,
  storehouseId: string,
  { buyId, householdIds }: { buyId: string; householdIds: readonly string[] },
): Promise<void> {
  await tx
    .delete(depositAsks)
    .where(and(ofBuy(storehouseId, buyId), inArray(depositAsks.householdId, [...householdIds])));
}

/** Takes back every ask of a buy that is open again. */
export async function deleteAllDepositAsks(tx: Tx, storehouseId: string, buyId: string): Promise<void> {
  await tx.delete(depositAsks).where(ofBuy(storehouseId, buyId));
}

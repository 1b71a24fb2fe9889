import type { Tx } from '@sheafbook/db';
import { buys, households } from '@sheafbook/db/tables';
import { and, eq, isNull } from 'drizzle-orm';

// Asked here by themselves: the features of buys and households write notices, so this one can't lean on them.

export async function findBuyName(tx: Tx, storehouseId: string, buyId: string): Promise<string | undefined> {
  const [row] = await tx
    .select({ name: buys.name })
    .from(buys)
    .where(and(eq(buys.storehouseId, storehouseId), eq(buys.buyId, buyId)));
  return row?.name;
}

export async function findPresentHousehold(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<string | undefined> {
  const [row] = await tx
    .select({ name: households.name })
    .from(households)
    .where(
      and(
        eq(households.storehouseId, storehouseId),
        eq(households.householdId, householdId),
        isNull(households.leftOn),
      ),
    );
  return row?.name;
}

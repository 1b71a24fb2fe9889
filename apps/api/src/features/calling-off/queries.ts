import type { Tx } from '@sheafbook/db';
import { bags, supplierOrders } from '@sheafbook/db/tables';
import { and, eq, isNull, ne, sql } from 'drizzle-orm';

/** What a household left with a buy, by how it stands: still held, or kept by the buy for a withdrawal's harm. */
export type DepositAtStake = {
  readonly householdId: string;
  readonly heldMinorUnits: number;
  readonly keptMinorUnits: number;
};

/**
 * Every household with money in a buy's deposits. What was kept moved from the deposit to the buy's clearing account;
 * a reversal of that moved it back and takes it off again.
 */
export async function listDepositsAtStake(
  tx: Tx,
  storehouseId: string,
  buyId: string,
): Promise<DepositAtStake[]> {
  const rows = await tx.execute<{ household_id: string; held: string; kept: string }>(sql`
    select d.owner_id as household_id, d.outflow - d.inflow as held, coalesce(k.kept, 0) as kept
    from book.account d
    left join lateral (
      select sum(case when m.destination_id = d.account_id then m.amount else -m.amount end) as kept
      from book.account c join book.movement m on m.storehouse_id = c.storehouse_id
        and ((m.source_id = c.account_id and m.destination_id = d.account_id)
          or (m.source_id = d.account_id and m.destination_id = c.account_id))
      where c.storehouse_id = d.storehouse_id and c.kind = 'buy_clearing' and c.cause_id = d.cause_id) k on true
    where d.storehouse_id = ${storehouseId} and d.kind = 'buy_deposit' and d.cause_id = ${buyId}
    order by d.owner_id`);
  return rows
    .map((row) => ({
      householdId: row.household_id,
      heldMinorUnits: Number(row.held),
      keptMinorUnits: Number(row.kept),
    }))
    .filter((row) => row.heldMinorUnits > 0 || row.keptMinorUnits > 0);
}

export async function countBagsKept(tx: Tx, storehouseId: string, buyId: string): Promise<number> {
  const [row] = await tx
    .select({ count: sql`count(*)`.mapWith(Number) })
    .from(bags)
    .where(and(eq(bags.storehouseId, storehouseId), eq(bags.buyId, buyId), ne(bags.decision, 'refused')));
  return row?.count ?? 0;
}

export async function updateOrdersCancelled(
  tx: Tx,
  storehouseId: string,
  cancelled: { buyId: string; at: Date; note: string },
): Promise<void> {
  await tx
    .update(supplierOrders)
    .set({ cancelledAt: cancelled.at, cancellationNote: cancelled.note })
    .where(
      and(
        eq(supplierOrders.storehouseId, storehouseId),
        eq(supplierOrders.buyId, cancelled.buyId),
        isNull(supplierOrders.cancelledAt),
      ),
    );
}

/** Closes a buy's clearing and deposit accounts for good; from here every entry must leave them at zero. */
export async function closeAccountsOfBuy(tx: Tx, storehouseId: string, buyId: string): Promise<void> {
  await tx.execute(sql`select book.close_account(account_id) from book.account
    where storehouse_id = ${storehouseId} and cause_id = ${buyId} and kind in ('buy_clearing', 'buy_deposit')`);
}

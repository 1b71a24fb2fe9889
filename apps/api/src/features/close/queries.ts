import type { Tx } from '@sheafbook/db';
import { accounts, claims } from '@sheafbook/db/tables';
import { and, asc, eq, inArray, sql } from 'drizzle-orm';

export async function listOpenClaimIds(tx: Tx, storehouseId: string, buyId: string): Promise<string[]> {
  const rows = await tx
    .select({ claimId: claims.claimId })
    .from(claims)
    .where(and(eq(claims.storehouseId, storehouseId), eq(claims.buyId, buyId), eq(claims.state, 'open')))
    .orderBy(asc(claims.claimId));
  return rows.map((row) => row.claimId);
}

/** Grams in the bags of a buy that are nobody's yet: not split, or on hold. */
export async function sumUnassignedGrams(tx: Tx, storehouseId: string, buyId: string): Promise<number> {
  const [row] = await tx.execute<{ grams: string }>(sql`
    select coalesce(sum(a.inflow - a.outflow), 0) as grams from book.bag b
    join book.account a on a.storehouse_id = b.storehouse_id and a.vessel_id = b.bag_id and a.kind = 'mass'
    join book.owner o on o.storehouse_id = a.storehouse_id and o.owner_id = a.owner_id and o.kind = 'unassigned'
    where b.storehouse_id = ${storehouseId} and b.buy_id = ${buyId}`);
  return Number(row?.grams ?? 0);
}

/** The accounts that end with a buy: its clearing account and the deposits on it. */
export async function listAccountsToClose(tx: Tx, storehouseId: string, buyId: string): Promise<string[]> {
  const rows = await tx
    .select({ accountId: accounts.accountId })
    .from(accounts)
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.causeId, buyId),
        inArray(accounts.kind, ['buy_clearing', 'buy_deposit']),
      ),
    )
    .orderBy(asc(accounts.accountId));
  return rows.map((row) => row.accountId);
}

/** From here the account stays at nothing after every entry (ledger-notes 6.2). */
export async function updateAccountClosed(tx: Tx, accountId: string): Promise<void> {
  await tx.execute(sql`select book.close_account(${accountId}::uuid)`);
}

import type { Tx } from '@sheafbook/db';
import { type AllotmentRow, allotments, type WithdrawalRow, withdrawals } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq, inArray } from 'drizzle-orm';
import type { WithdrawalAnswer } from './answer.ts';

export type Withdrawal = Omit<WithdrawalRow, 'answer'> & { readonly answer: WithdrawalAnswer };

export async function insertWithdrawal(
  tx: Tx,
  withdrawal: typeof withdrawals.$inferInsert,
): Promise<Withdrawal> {
  const [row] = await tx.insert(withdrawals).values(withdrawal).returning();
  assert(row, 'an insert returns its row');
  return { ...row, answer: row.answer as WithdrawalAnswer };
}

/** Who withdrew from a buy, in the order of their going. */
export async function listWithdrawals(tx: Tx, storehouseId: string, buyId: string): Promise<Withdrawal[]> {
  const rows = await tx
    .select()
    .from(withdrawals)
    .where(and(eq(withdrawals.storehouseId, storehouseId), eq(withdrawals.buyId, buyId)))
    .orderBy(asc(withdrawals.withdrawnAt), asc(withdrawals.withdrawalId));
  return rows.map((row) => ({ ...row, answer: row.answer as WithdrawalAnswer }));
}

/**
 * The households that withdrew once the buy was ordered. They bear their part of what is shared by household though
 * nothing may be promised to them any more.
 */
export async function listWithdrawnHouseholds(
  tx: Tx,
  storehouseId: string,
  buyId: string,
): Promise<string[]> {
  const rows = await tx
    .select({ householdId: withdrawals.householdId })
    .from(withdrawals)
    .where(
      and(
        eq(withdrawals.storehouseId, storehouseId),
        eq(withdrawals.buyId, buyId),
        inArray(withdrawals.stageThen, ['ordered', 'landed']),
      ),
    )
    .orderBy(asc(withdrawals.withdrawnAt));
  return rows.map((row) => row.householdId);
}

export async function updateAllotment(
  tx: Tx,
  row: AllotmentRow,
  change: { units: number; grams: number },
): Promise<void> {
  await tx
    .update(allotments)
    .set(change)
    .where(
      and(
        eq(allotments.storehouseId, row.storehouseId),
        eq(allotments.buyLineId, row.buyLineId),
        eq(allotments.ownerId, row.ownerId),
      ),
    );
}

/** Makes room for a promise to somebody who was left out before. */
export async function deleteAllotment(tx: Tx, row: AllotmentRow): Promise<void> {
  await tx
    .delete(allotments)
    .where(
      and(
        eq(allotments.storehouseId, row.storehouseId),
        eq(allotments.buyLineId, row.buyLineId),
        eq(allotments.ownerId, row.ownerId),
      ),
    );
}

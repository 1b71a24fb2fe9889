import type { Tx } from '@sheafbook/db';
import {
  type AllotmentRow,
  allotments,
  type BuyRow,
  buys,
  type FillRow,
  type FixedBagsRow,
  fillInputs,
  fills,
  fixedBags,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq } from 'drizzle-orm';
import type { BuyFill } from './answer.ts';
import type { FillInputs } from './inputs.ts';

export type { BuyFill, FillInputs };

export async function insertFill(tx: Tx, fill: typeof fills.$inferInsert): Promise<void> {
  await tx.insert(fills).values(fill);
}

export async function insertFillInputs(tx: Tx, inputs: typeof fillInputs.$inferInsert): Promise<void> {
  await tx.insert(fillInputs).values(inputs);
}

/** A stored fill with its answer as it was written. */
export async function loadFill(
  tx: Tx,
  storehouseId: string,
  fillId: string,
): Promise<FillRow & { readonly answer: BuyFill }> {
  const [fill] = await tx
    .select()
    .from(fills)
    .where(and(eq(fills.storehouseId, storehouseId), eq(fills.fillId, fillId)));
  assert(fill, 'a fixed buy names its fill');
  return { ...fill, answer: fill.answer as BuyFill };
}

/** The frozen inputs of a fill. They hold every ceiling: only inside a transaction of the task 'fill' or 'review'. */
export async function loadFillInputs(tx: Tx, storehouseId: string, fillId: string): Promise<FillInputs> {
  const [row] = await tx
    .select()
    .from(fillInputs)
    .where(and(eq(fillInputs.storehouseId, storehouseId), eq(fillInputs.fillId, fillId)));
  assert(row, 'a fill keeps its inputs, and this transaction has a task that may read them');
  return row.inputs as FillInputs;
}

/** A fixed buy that is filled anew because somebody withdrew names the new fill. */
export async function updateBuyFill(tx: Tx, buy: BuyRow, fillId: string): Promise<BuyRow> {
  const [row] = await tx
    .update(buys)
    .set({ fillId, version: buy.version + 1 })
    .where(and(eq(buys.storehouseId, buy.storehouseId), eq(buys.buyId, buy.buyId)))
    .returning();
  assert(row, 'the buy was locked before');
  return row;
}

export async function insertFixedBags(
  tx: Tx,
  rows: readonly (typeof fixedBags.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(fixedBags).values([...rows]);
}

export async function deleteFixedBags(tx: Tx, storehouseId: string, buyId: string): Promise<void> {
  await tx.delete(fixedBags).where(and(eq(fixedBags.storehouseId, storehouseId), eq(fixedBags.buyId, buyId)));
}

/** The bags that a buy was fixed with. */
export async function listFixedBags(tx: Tx, storehouseId: string, buyId: string): Promise<FixedBagsRow[]> {
  return tx
    .select()
    .from(fixedBags)
    .where(and(eq(fixedBags.storehouseId, storehouseId), eq(fixedBags.buyId, buyId)))
    .orderBy(asc(fixedBags.buyLineId), asc(fixedBags.bagOfferId));
}

export async function insertAllotments(
  tx: Tx,
  rows: readonly (typeof allotments.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(allotments).values([...rows]);
}

export async function deleteAllotments(tx: Tx, storehouseId: string, buyId: string): Promise<void> {
  await tx
    .delete(allotments)
    .where(and(eq(allotments.storehouseId, storehouseId), eq(allotments.buyId, buyId)));
}

/** What every owner is promised of a buy now, withdrawals after the order counted. */
export async function listAllotments(tx: Tx, storehouseId: string, buyId: string): Promise<AllotmentRow[]> {
  return tx
    .select()
    .from(allotments)
    .where(and(eq(allotments.storehouseId, storehouseId), eq(allotments.buyId, buyId)))
    .orderBy(asc(allotments.buyLineId), asc(allotments.ownerId));
}

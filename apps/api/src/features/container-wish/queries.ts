import type { Tx } from '@sheafbook/db';
import {
  allotments,
  buyLines,
  containerKinds,
  containerWishes,
  foods,
  shares,
  splits,
} from '@sheafbook/db/tables';
import { and, eq, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

type OwnLine = { storehouseId: string; buyId: string; buyLineId: string; householdId: string };

export async function loadLineWithFood(
  tx: Tx,
  { storehouseId, buyId, buyLineId }: Omit<OwnLine, 'householdId'>,
) {
  const [row] = await tx
    .select({ line: buyLines, food: foods })
    .from(buyLines)
    .innerJoin(foods, joinOn(foods, buyLines, 'foodId'))
    .where(
      and(
        eq(buyLines.storehouseId, storehouseId),
        eq(buyLines.buyId, buyId),
        eq(buyLines.buyLineId, buyLineId),
      ),
    );
  if (!row) throw new Problem('thing-not-found', { thing: 'line' });
  return row;
}

export async function deleteWishes(tx: Tx, { storehouseId, buyLineId, householdId }: OwnLine): Promise<void> {
  await tx
    .delete(containerWishes)
    .where(
      and(
        eq(containerWishes.storehouseId, storehouseId),
        eq(containerWishes.buyLineId, buyLineId),
        eq(containerWishes.householdId, householdId),
      ),
    );
}

export async function insertWishes(
  tx: Tx,
  rows: readonly (typeof containerWishes.$inferInsert)[],
): Promise<void> {
  if (rows.length > 0) await tx.insert(containerWishes).values([...rows]);
}

export async function listWishes(tx: Tx, { storehouseId, buyLineId, householdId }: OwnLine) {
  return tx
    .select({ wish: containerWishes, kind: containerKinds })
    .from(containerWishes)
    .innerJoin(containerKinds, joinOn(containerKinds, containerWishes, 'containerKindId'))
    .where(
      and(
        eq(containerWishes.storehouseId, storehouseId),
        eq(containerWishes.buyLineId, buyLineId),
        eq(containerWishes.householdId, householdId),
      ),
    )
    .orderBy(containerWishes.position);
}

/** What splits that stand have awarded the household of a line; null before any split. */
export async function sumAwardedGrams(tx: Tx, { storehouseId, buyLineId, householdId }: OwnLine) {
  const [row] = await tx
    .select({
      grams: sql<number | null>`sum(${shares.awardGrams})`.mapWith(Number),
      rows: sql`count(*)`.mapWith(Number),
    })
    .from(shares)
    .innerJoin(splits, and(joinOn(splits, shares, 'splitId'), isNull(splits.undoneAt)))
    .where(
      and(
        eq(shares.storehouseId, storehouseId),
        eq(splits.buyLineId, buyLineId),
        eq(shares.ownerId, householdId),
      ),
    );
  return row && row.rows > 0 ? (row.grams ?? 0) : null;
}

/** What the fixed fill promises the household of a line; null before it is fixed. */
export async function findAllottedGrams(tx: Tx, { storehouseId, buyLineId, householdId }: OwnLine) {
  const [row] = await tx
    .select({ grams: allotments.grams })
    .from(allotments)
    .where(
      and(
        eq(allotments.storehouseId, storehouseId),
        eq(allotments.buyLineId, buyLineId),
        eq(allotments.ownerId, householdId),
      ),
    );
  return row?.grams ?? null;
}

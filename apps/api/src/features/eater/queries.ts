import type { Tx } from '@sheafbook/db';
import { type EaterRow, eaters, foods } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, gt, inArray } from 'drizzle-orm';

const isThis = (storehouseId: string, householdId: string, eaterId: string) =>
  and(
    eq(eaters.storehouseId, storehouseId),
    eq(eaters.householdId, householdId),
    eq(eaters.eaterId, eaterId),
  );

/** All eaters of a household, in the order they were entered. A neighbour's are invisible (ledger-notes 6.19). */
export function listEaters(
  tx: Tx,
  storehouseId: string,
  householdId: string,
  page?: { after: string | undefined; limit: number },
): Promise<EaterRow[]> {
  const query = tx
    .select()
    .from(eaters)
    .where(
      and(
        eq(eaters.storehouseId, storehouseId),
        eq(eaters.householdId, householdId),
        page?.after === undefined ? undefined : gt(eaters.eaterId, page.after),
      ),
    )
    .orderBy(eaters.eaterId);
  return page ? query.limit(page.limit + 1) : query;
}

export async function findEater(
  tx: Tx,
  storehouseId: string,
  householdId: string,
  eaterId: string,
): Promise<EaterRow | undefined> {
  const [row] = await tx
    .select()
    .from(eaters)
    .where(isThis(storehouseId, householdId, eaterId));
  return row;
}

export async function insertEater(tx: Tx, eater: typeof eaters.$inferInsert): Promise<EaterRow> {
  const [row] = await tx.insert(eaters).values(eater).returning();
  assert(row, 'an insert returns its row');
  return row;
}

/** Undefined when there is none of this version. */
export async function updateEater(tx: Tx, { version, ...eater }: EaterRow): Promise<EaterRow | undefined> {
  const { storehouseId, householdId, eaterId, ...facts } = eater;
  const [row] = await tx
    .update(eaters)
    .set({ ...facts, version: version + 1 })
    .where(and(isThis(storehouseId, householdId, eaterId), eq(eaters.version, version)))
    .returning();
  return row;
}

/** False when there is none of this version. */
export async function deleteEater(
  tx: Tx,
  eater: Pick<EaterRow, 'storehouseId' | 'householdId' | 'eaterId' | 'version'>,
): Promise<boolean> {
  const gone = await tx
    .delete(eaters)
    .where(
      and(isThis(eater.storehouseId, eater.householdId, eater.eaterId), eq(eaters.version, eater.version)),
    )
    .returning({ eaterId: eaters.eaterId });
  return gone.length > 0;
}

/** Which of these codes are foods of the storehouse. */
export async function listKnownFoodCodes(
  tx: Tx,
  storehouseId: string,
  codes: readonly string[],
): Promise<string[]> {
  const rows = await tx
    .select({ code: foods.foodCode })
    .from(foods)
    .where(and(eq(foods.storehouseId, storehouseId), inArray(foods.foodCode, [...codes])));
  return rows.map((row) => row.code);
}

import type { Tx } from '@sheafbook/db';
import { codeCounters, type HouseholdRow, households, owners } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, eq, gt, sql } from 'drizzle-orm';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, householdId: string) =>
  and(eq(households.storehouseId, storehouseId), eq(households.householdId, householdId));

type Counter = 'bag' | 'container' | 'equipment' | 'order' | 'paper' | 'seat';

/** Takes the next number of a counter of the storehouse; the row stays locked until the transaction ends. */
export async function takeNumber(tx: Tx, storehouseId: string, counter: Counter): Promise<number> {
  const [number] = await takeNumbers(tx, storehouseId, { counter, count: 1 });
  assert(number !== undefined, 'one number was asked for');
  return number;
}

/** Takes the next few numbers of a counter at once, in their order. */
export async function takeNumbers(
  tx: Tx,
  storehouseId: string,
  { counter, count }: { counter: Counter; count: number },
): Promise<number[]> {
  const [row] = await tx
    .update(codeCounters)
    .set({ lastNumber: sql`${codeCounters.lastNumber} + ${count}::bigint` })
    .where(and(eq(codeCounters.storehouseId, storehouseId), eq(codeCounters.counter, counter)))
    .returning({ last: codeCounters.lastNumber });
  assert(row, 'a storehouse is founded with its counters');
  const { last } = row;
  return Array.from({ length: count }, (_, position) => last - count + 1 + position);
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

/** Many at once, for a group that comes from its spreadsheets. */
export async function insertHouseholds(
  tx: Tx,
  rows: readonly (typeof households.$inferInsert)[],
): Promise<void> {
  await tx.insert(owners).values(
    rows.map(({ storehouseId, householdId }) => ({
      storehouseId,
      ownerId: householdId,
      kind: 'household',
    })),
  );
  await tx.insert(households).values([...rows]);
}

/** The number that a counter gave last; it gives no other until this transaction ends. */
export async function lockLastNumber(tx: Tx, storehouseId: string, counter: Counter): Promise<number> {
  const [row] = await tx
    .select({ last: codeCounters.lastNumber })
    .from(codeCounters)
    .where(and(eq(codeCounters.storehouseId, storehouseId), eq(codeCounters.counter, counter)))
    .for('update');
  assert(row, 'a storehouse is founded with its counters');
  return row.last;
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
  return refuseLeft(await loadHousehold(tx, storehouseId, householdId));
}

/** Alone with it: nothing new can be tied to the household meanwhile, because that takes a lock on its row too. */
export async function lockPresentHousehold(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<HouseholdRow> {
  const [row] = await tx.select().from(households).where(isThis(storehouseId, householdId)).for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'household' });
  return refuseLeft(row);
}

function refuseLeft(household: HouseholdRow): HouseholdRow {
  if (household.leftOn !== null) throw new Problem('household-has-left', { seat: household.seat });
  return household;
}

/** In the order of seats; `after` is the seat that the page before ended with. */
export function listHouseholds(
  tx: Tx,
  storehouseId: string,
  page: { after: number | undefined; limit: number },
): Promise<HouseholdRow[]> {
  return tx
    .select()
    .from(households)
    .where(and(eq(households.storehouseId, storehouseId), gt(households.seat, page.after ?? 0)))
    .orderBy(households.seat)
    .limit(page.limit + 1);
}

export async function updateName(tx: Tx, household: HouseholdRow, name: string): Promise<HouseholdRow> {
  const [row] = await tx
    .update(households)
    .set({ name, version: household.version + 1 })
    .where(isThis(household.storehouseId, household.householdId))
    .returning();
  assert(row, 'the household was locked before');
  return row;
}

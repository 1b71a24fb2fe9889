import type { Tx } from '@sheafbook/db';
import { accounts, bags, lots, type PackingMixRow, packingBags, packingMixes } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq, gt, isNull, sql } from 'drizzle-orm';
import { isOneOf } from '../../platform/is-one-of.ts';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import type { WishedPacking } from './queries.ts';

/** What households have in bags of the foods that they want packed, lot by lot. */
export async function listOwnLots(tx: Tx, storehouseId: string, of: readonly WishedPacking[]) {
  const grams = sql<number>`sum(${accounts.inflow} - ${accounts.outflow})`.mapWith(Number);
  return tx
    .select({ householdId: sql<string>`${accounts.ownerId}`, foodId: lots.foodId, lotId: lots.lotId, grams })
    .from(accounts)
    .innerJoin(bags, joinOn(bags, accounts, 'bagId', 'vesselId'))
    .innerJoin(lots, joinOn(lots, accounts, 'lotId', 'unitId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        isOneOf(
          accounts.ownerId,
          of.map(({ wish }) => wish.householdId),
        ),
        isOneOf(
          lots.foodId,
          of.map(({ wish }) => wish.foodId),
        ),
        gt(accounts.inflow, accounts.outflow),
      ),
    )
    .groupBy(accounts.ownerId, lots.foodId, lots.lotId)
    .orderBy(accounts.ownerId, lots.lotId);
}

/** What some households have of a lot in each bag, with the buy that each bag came by. */
export async function listPieces(
  tx: Tx,
  storehouseId: string,
  { lotId, householdIds }: { lotId: string; householdIds: readonly string[] },
) {
  const grams = sql<number>`${accounts.inflow} - ${accounts.outflow}`.mapWith(Number);
  const { bagId, bagNo, buyId } = bags;
  return tx
    .select({ bagId, bagNo, buyId, householdId: sql<string>`${accounts.ownerId}`, grams })
    .from(accounts)
    .innerJoin(bags, joinOn(bags, accounts, 'bagId', 'vesselId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.unitId, lotId),
        isOneOf(accounts.ownerId, householdIds),
        gt(accounts.inflow, accounts.outflow),
      ),
    )
    .orderBy(asc(bagNo), asc(bagId));
}

/** Whose bags of which lots stand at a session. */
export async function listBroughtLots(tx: Tx, storehouseId: string, sessionId: string) {
  return tx
    .selectDistinct({ householdId: packingBags.householdId, lotId: bags.lotId })
    .from(packingBags)
    .innerJoin(bags, joinOn(bags, packingBags, 'bagId'))
    .where(and(eq(packingBags.storehouseId, storehouseId), eq(packingBags.packingSessionId, sessionId)));
}

/** The mixes of a session whose grams changed hands and were not given back, in the order in which that was booked. */
export async function listStandingMixes(
  tx: Tx,
  storehouseId: string,
  sessionId: string,
): Promise<PackingMixRow[]> {
  return tx
    .select()
    .from(packingMixes)
    .where(
      and(
        eq(packingMixes.storehouseId, storehouseId),
        eq(packingMixes.packingSessionId, sessionId),
        isNull(packingMixes.undoneEntryId),
      ),
    )
    .orderBy(asc(packingMixes.packingMixId));
}

export async function insertMix(tx: Tx, row: typeof packingMixes.$inferInsert): Promise<PackingMixRow> {
  const [inserted] = await tx.insert(packingMixes).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

/** A mix of this session, alone with its row. */
export async function lockMix(
  tx: Tx,
  storehouseId: string,
  { sessionId, packingMixId }: { sessionId: string; packingMixId: string },
): Promise<PackingMixRow> {
  const [row] = await tx
    .select()
    .from(packingMixes)
    .where(
      and(
        eq(packingMixes.storehouseId, storehouseId),
        eq(packingMixes.packingSessionId, sessionId),
        eq(packingMixes.packingMixId, packingMixId),
      ),
    )
    .for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'mixed run' });
  return row;
}

export async function markMixUndone(
  tx: Tx,
  { storehouseId, packingMixId }: PackingMixRow,
  undoneEntryId: string,
): Promise<void> {
  await tx
    .update(packingMixes)
    .set({ undoneEntryId })
    .where(and(eq(packingMixes.storehouseId, storehouseId), eq(packingMixes.packingMixId, packingMixId)));
}

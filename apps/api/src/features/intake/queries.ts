import type { Tx } from '@sheafbook/db';
import { donorReadings, foods, type IntakeRow, intakeDonors, intakes, lots } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, desc, eq, isNull } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

export async function insertIntake(tx: Tx, row: typeof intakes.$inferInsert): Promise<IntakeRow> {
  const [inserted] = await tx.insert(intakes).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

/** Nothing is read back: who gave it is read for a purpose only. */
export async function insertDonor(tx: Tx, row: typeof intakeDonors.$inferInsert): Promise<void> {
  await tx.insert(intakeDonors).values(row);
}

/** What was taken in by a household, or for common stock (null), the newest first. */
export async function listIntakes(tx: Tx, storehouseId: string, householdId: string | null) {
  const isTheirs = householdId === null ? isNull(intakes.householdId) : eq(intakes.householdId, householdId);
  return tx
    .select({ intake: intakes, lot: lots, food: foods })
    .from(intakes)
    .innerJoin(lots, joinOn(lots, intakes, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .where(and(eq(intakes.storehouseId, storehouseId), isTheirs))
    .orderBy(desc(intakes.takenAt), desc(intakes.lotId));
}
export type TakenIn = Awaited<ReturnType<typeof listIntakes>>[number];

/** Who gave a lot of common stock, as the task in hand lets it be read. */
export async function loadDonor(tx: Tx, storehouseId: string, lotId: string): Promise<string> {
  const [row] = await tx
    .select({ donor: intakeDonors.donor })
    .from(intakeDonors)
    .where(
      and(
        eq(intakeDonors.storehouseId, storehouseId),
        eq(intakeDonors.lotId, lotId),
        isNull(intakeDonors.householdId),
      ),
    );
  if (!row) throw new Problem('thing-not-found', { thing: 'intake' });
  return row.donor;
}

export async function insertDonorReading(tx: Tx, row: typeof donorReadings.$inferInsert): Promise<void> {
  await tx.insert(donorReadings).values(row);
}

import type { Tx } from '@sheafbook/db';
import { type BuyRow, buys, pickUps, pledges } from '@sheafbook/db/tables';
import { and, asc, eq, gte, inArray, isNotNull, isNull, notInArray, or } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

const ENDED = ['closed', 'called-off'];

/** The buys that still have a stage to go. */
export async function listOpenBuys(tx: Tx, storehouseId: string): Promise<BuyRow[]> {
  return tx
    .select()
    .from(buys)
    .where(and(eq(buys.storehouseId, storehouseId), notInArray(buys.stage, ENDED)))
    .orderBy(asc(buys.buyId));
}

export async function listBuysById(
  tx: Tx,
  storehouseId: string,
  buyIds: readonly string[],
): Promise<BuyRow[]> {
  return tx
    .select()
    .from(buys)
    .where(and(eq(buys.storehouseId, storehouseId), inArray(buys.buyId, [...buyIds])));
}

/** The buys in which a household has a standing pledge. */
export async function listPledgedBuyIds(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<Set<string>> {
  const rows = await tx
    .selectDistinct({ buyId: pledges.buyId })
    .from(pledges)
    .where(
      and(
        eq(pledges.storehouseId, storehouseId),
        eq(pledges.householdId, householdId),
        isNull(pledges.withdrawnAt),
      ),
    );
  return new Set(rows.map((row) => row.buyId));
}

/** Appointments that have not taken place: all of open buys, and of ended ones those whose hour is still to come. */
export async function listAppointments(tx: Tx, storehouseId: string, now: Date) {
  return tx
    .select({ pickUp: pickUps, buy: buys })
    .from(pickUps)
    .innerJoin(buys, joinOn(buys, pickUps, 'buyId'))
    .where(
      and(
        eq(pickUps.storehouseId, storehouseId),
        isNull(pickUps.collectedAt),
        isNotNull(pickUps.startsAt),
        or(notInArray(buys.stage, ENDED), gte(pickUps.endsAt, now)),
      ),
    )
    .orderBy(asc(pickUps.startsAt), asc(pickUps.pickUpId));
}
export type Appointment = Awaited<ReturnType<typeof listAppointments>>[number];

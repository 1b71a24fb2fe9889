import type { Tx } from '@sheafbook/db';
import { type HoldRow, heldInKitchen, holds, holdVessels } from '@sheafbook/db/tables';
import { and, eq, inArray, isNull, notInArray, sql } from 'drizzle-orm';
import { lockBook } from '../../platform/lock-book.ts';

const reachOf = ({ storehouseId, holdId }: HoldRow) =>
  sql`select r.vessel_id from book.list_reach(${storehouseId}, ${holdId}) r`;

/**
 * Writes down which bags and containers a hold reaches, and how many those are. They are locked first, bags before
 * containers, and then the book: whatever was about to leave one has left it, and what waits finds the hold.
 */
export async function insertReach(tx: Tx, hold: HoldRow): Promise<number> {
  await tx.execute(sql`select b.bag_id from book.bag b where b.storehouse_id = ${hold.storehouseId}
    and b.bag_id in (${reachOf(hold)}) order by b.bag_id for update`);
  await tx.execute(sql`select c.container_id from book.container c where c.storehouse_id = ${hold.storehouseId}
    and c.container_id in (${reachOf(hold)}) order by c.container_id for update`);
  await lockBook(tx);
  await tx.execute(sql`insert into book.hold_vessel (storehouse_id, hold_id, vessel_id, reached_at)
    select ${hold.storehouseId}, ${hold.holdId}, r.vessel_id, ${hold.heldAt.toISOString()}::timestamptz
    from (${reachOf(hold)}) r on conflict do nothing`);
  return tx.$count(holdVessels, isOf(hold.storehouseId, [hold.holdId]));
}

/** The containers that somebody chose, before what was poured out of them is added. */
export async function insertChosen(tx: Tx, hold: HoldRow, vesselIds: readonly string[]): Promise<void> {
  const { storehouseId, holdId, heldAt: reachedAt } = hold;
  const chosen = [...new Set(vesselIds)];
  await tx
    .insert(holdVessels)
    .values(chosen.map((vesselId) => ({ storehouseId, holdId, vesselId, reachedAt })));
}

const isOf = (storehouseId: string, holdIds: readonly string[]) =>
  and(eq(holdVessels.storehouseId, storehouseId), inArray(holdVessels.holdId, [...holdIds]));

/** Lets go of everything that these holds still have. */
export async function endVesselsOf(tx: Tx, storehouseId: string, holdIds: readonly string[], at: Date) {
  if (holdIds.length === 0) return;
  await tx
    .update(holdVessels)
    .set({ endedAt: notBefore(at) })
    .where(and(isOf(storehouseId, holdIds), isNull(holdVessels.endedAt)));
}

const notBefore = (at: Date) => sql`greatest(${holdVessels.reachedAt}, ${at.toISOString()}::timestamptz)`;

/**
 * Takes what was emptied for good, thrown away or gone back, out of its holds, and ends those that have no gram left to
 * hold. Nobody releases them: `released_by` stays empty, and nothing of it may ever be used. A hold of a supplier's mark, a
 * delivery, a food or a place stays, since more of it may come.
 */
export async function endHoldsOfEmpty(
  tx: Tx,
  { storehouseId, vesselIds }: { storehouseId: string; vesselIds: readonly string[] },
  end: { finding: string; at: Date },
): Promise<void> {
  const ended = await tx
    .update(holdVessels)
    .set({ endedAt: notBefore(end.at) })
    .where(
      and(
        eq(holdVessels.storehouseId, storehouseId),
        inArray(holdVessels.vesselId, [...vesselIds]),
        isNull(holdVessels.endedAt),
      ),
    )
    .returning({ holdId: holdVessels.holdId });
  await endHoldsWithNothing(
    tx,
    { storehouseId, holdIds: [...new Set(ended.map(({ holdId }) => holdId))] },
    end,
  );
}

/** Every hold that stands on some lots in a household's kitchen: one lot there may have come out of several. */
export async function listHoldsOfKitchen(
  tx: Tx,
  of: { storehouseId: string; householdId: string; lotIds: readonly string[] },
): Promise<string[]> {
  const rows = await tx
    .selectDistinct({ holdId: heldInKitchen.holdId })
    .from(heldInKitchen)
    .where(
      and(
        eq(heldInKitchen.storehouseId, of.storehouseId),
        eq(heldInKitchen.householdId, of.householdId),
        inArray(heldInKitchen.lotId, [...of.lotIds]),
      ),
    );
  return rows.map(({ holdId }) => holdId);
}

/** Ends those of these holds that have no gram left to hold, neither where they reached nor in a kitchen that it went to. */
export async function endHoldsWithNothing(
  tx: Tx,
  { storehouseId, holdIds }: { storehouseId: string; holdIds: readonly string[] },
  end: { finding: string; at: Date },
): Promise<void> {
  if (holdIds.length === 0) return;
  const over = await tx
    .update(holds)
    .set({ finding: end.finding, releasedAt: end.at })
    .where(
      and(
        eq(holds.storehouseId, storehouseId),
        inArray(holds.holdId, [...holdIds]),
        isNull(holds.releasedAt),
        notInArray(holds.scope, ['mark', 'delivery', 'food', 'place']),
        sql`not exists (select from book.hold_vessel v join book.account a on a.storehouse_id = v.storehouse_id
          and a.vessel_id = v.vessel_id and a.inflow > a.outflow where v.storehouse_id = ${holds.storehouseId}
          and v.hold_id = ${holds.holdId} and v.ended_at is null)`,
        sql`not exists (select from book.held_in_kitchen k join book.account a on a.storehouse_id = k.storehouse_id
          and a.vessel_id = k.household_id and a.unit_id = k.lot_id and a.inflow > a.outflow
          where k.storehouse_id = ${holds.storehouseId} and k.hold_id = ${holds.holdId})`,
      ),
    )
    .returning({ holdId: holds.holdId });
  const overIds = over.map(({ holdId }) => holdId);
  await endVesselsOf(tx, storehouseId, overIds, end.at);
}

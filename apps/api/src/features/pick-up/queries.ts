import type { Tx } from '@sheafbook/db';
import { bags, households, type PickUpRow, pickUpPieces, pickUps } from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq, inArray, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import type { Holding } from './holdings.ts';

const isThis = (storehouseId: string, pickUpId: string) =>
  and(eq(pickUps.storehouseId, storehouseId), eq(pickUps.pickUpId, pickUpId));

export async function insertPickUp(tx: Tx, row: typeof pickUps.$inferInsert): Promise<PickUpRow> {
  const [inserted] = await tx.insert(pickUps).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

export async function loadPickUp(tx: Tx, storehouseId: string, pickUpId: string): Promise<PickUpRow> {
  const [row] = await tx.select().from(pickUps).where(isThis(storehouseId, pickUpId));
  if (!row) throw new Problem('thing-not-found', { thing: 'pick-up' });
  return row;
}

export async function lockPickUp(tx: Tx, storehouseId: string, pickUpId: string): Promise<PickUpRow> {
  const [row] = await tx.select().from(pickUps).where(isThis(storehouseId, pickUpId)).for('update');
  if (!row) throw new Problem('thing-not-found', { thing: 'pick-up' });
  return row;
}

export async function updatePickUp(
  tx: Tx,
  pickUp: PickUpRow,
  set: Partial<Pick<PickUpRow, 'startsAt' | 'endsAt' | 'signedBy' | 'handedOverBy' | 'collectedAt'>>,
): Promise<PickUpRow> {
  const [row] = await tx
    .update(pickUps)
    .set({ ...set, version: pickUp.version + 1 })
    .where(isThis(pickUp.storehouseId, pickUp.pickUpId))
    .returning();
  assert(row, 'the pick-up was locked before');
  return row;
}

export async function insertPickUpPieces(tx: Tx, rows: (typeof pickUpPieces.$inferInsert)[]): Promise<void> {
  await tx.insert(pickUpPieces).values(rows);
}

/** Pick-ups with their household and what was fetched, the next window first, those without a window last. */
export async function listPickUps(
  tx: Tx,
  storehouseId: string,
  of: { buyId?: string; householdId?: string; pickUpId?: string },
) {
  const rows = await tx
    .select({ pickUp: pickUps, seat: households.seat, name: households.name })
    .from(pickUps)
    .innerJoin(households, joinOn(households, pickUps, 'householdId'))
    .where(
      and(
        eq(pickUps.storehouseId, storehouseId),
        of.buyId === undefined ? undefined : eq(pickUps.buyId, of.buyId),
        of.householdId === undefined ? undefined : eq(pickUps.householdId, of.householdId),
        of.pickUpId === undefined ? undefined : eq(pickUps.pickUpId, of.pickUpId),
      ),
    )
    .orderBy(sql`${pickUps.startsAt} asc nulls last`, asc(pickUps.pickUpId));
  const pieces = await listPieces(
    tx,
    storehouseId,
    rows.map((row) => row.pickUp.pickUpId),
  );
  return rows.map((row) => ({
    ...row,
    pieces: pieces.filter((piece) => piece.pickUpId === row.pickUp.pickUpId),
  }));
}

async function listPieces(tx: Tx, storehouseId: string, pickUpIds: readonly string[]) {
  return tx
    .select({
      pickUpId: pickUpPieces.pickUpId,
      bagId: pickUpPieces.bagId,
      bagCode: bags.bagCode,
      bagNo: bags.bagNo,
      grams: pickUpPieces.grams,
    })
    .from(pickUpPieces)
    .innerJoin(bags, joinOn(bags, pickUpPieces, 'bagId'))
    .where(and(eq(pickUpPieces.storehouseId, storehouseId), inArray(pickUpPieces.pickUpId, [...pickUpIds])))
    .orderBy(asc(bags.bagNo));
}

/** Every household's parts of the bags of a buy, in seat and bag order. */
export async function listHoldings(tx: Tx, storehouseId: string, buyId: string): Promise<Holding[]> {
  const rows = await tx.execute<{
    owner_id: string;
    bag_id: string;
    bag_code: string;
    bag_no: number;
    lot_id: string;
    buy_line_id: string;
    piece_grams: string;
    collected_grams: string;
    taken_grams: string;
    balance_grams: string;
    is_held: boolean;
    since_at: string;
  }>(sql`
    with p as (select sp.storehouse_id, sp.owner_id, sp.bag_id, sum(sp.grams) as grams, max(s.made_at) as made_at
      from book.share_piece sp
      join book.split s on s.storehouse_id = sp.storehouse_id and s.split_id = sp.split_id and s.undone_at is null
      where sp.storehouse_id = ${storehouseId} and s.buy_id = ${buyId}
      group by sp.storehouse_id, sp.owner_id, sp.bag_id)
    select p.owner_id, p.bag_id, b.bag_code, b.bag_no, b.lot_id, b.buy_line_id, p.grams as piece_grams,
      coalesce((select sum(pp.grams) from book.pick_up_piece pp join book.pick_up u on u.storehouse_id = pp.storehouse_id
        and u.pick_up_id = pp.pick_up_id where pp.storehouse_id = p.storehouse_id and pp.bag_id = p.bag_id
        and u.household_id = p.owner_id), 0) as collected_grams,
      coalesce((select sum(m.amount) from book.account a
        join book.movement m on m.storehouse_id = a.storehouse_id and m.source_id = a.account_id
        join book.entry e on e.storehouse_id = m.storehouse_id and e.entry_id = m.entry_id and e.what = 'uncollected-taken'
        where a.storehouse_id = p.storehouse_id and a.vessel_id = p.bag_id and a.owner_id = p.owner_id
          and a.unit_id = b.lot_id and not exists (select from book.entry r where r.storehouse_id = e.storehouse_id
            and r.reverses_id = e.entry_id)), 0) as taken_grams,
      coalesce((select a.inflow - a.outflow from book.account a where a.storehouse_id = p.storehouse_id
        and a.vessel_id = p.bag_id and a.owner_id = p.owner_id and a.unit_id = b.lot_id), 0) as balance_grams,
      exists (select from book.held h where h.storehouse_id = p.storehouse_id and h.vessel_id = p.bag_id) as is_held,
      greatest(p.made_at, (select max(m.moved_at) from book.stage_move m where m.storehouse_id = p.storehouse_id
        and m.buy_id = b.buy_id and m.to_stage = 'shared-out')) as since_at
    from p join book.bag b on b.storehouse_id = p.storehouse_id and b.bag_id = p.bag_id
    join book.household h on h.storehouse_id = p.storehouse_id and h.household_id = p.owner_id
    order by h.seat, b.buy_line_id, b.bag_no`);
  return rows.map((row) => ({
    householdId: row.owner_id,
    bagId: row.bag_id,
    bagCode: row.bag_code,
    bagNo: row.bag_no,
    lotId: row.lot_id,
    buyLineId: row.buy_line_id,
    pieceGrams: Number(row.piece_grams),
    collectedGrams: Number(row.collected_grams),
    takenGrams: Number(row.taken_grams),
    balanceGrams: Number(row.balance_grams),
    isHeld: row.is_held,
    sinceAt: new Date(row.since_at),
  }));
}

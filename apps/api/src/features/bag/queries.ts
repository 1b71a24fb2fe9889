import type { Tx } from '@sheafbook/db';
import {
  accounts,
  type BagRow,
  bags,
  buyLines,
  entries,
  held,
  households,
  type LotRow,
  lots,
  type MoistureChangeRow,
  moistureChanges,
  owners,
  units,
  vessels,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, gt, inArray, max, ne, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, bagId: string) =>
  and(eq(bags.storehouseId, storehouseId), eq(bags.bagId, bagId));

const left = sql<number>`${accounts.inflow} - ${accounts.outflow}`.mapWith(Number);

/** A bag that a split may take from, and what of it is still nobody's. In grams. */
export type BagToSplit = {
  readonly bagId: string;
  readonly bagCode: string;
  readonly bagNo: number;
  readonly bagOfferId: string;
  readonly deliveryId: string;
  readonly lotId: string;
  readonly declaredGrams: number;
  readonly netGrams: number;
  readonly unassignedGrams: number;
  readonly isWeighedOrExempted: boolean;
};

/** The accepted bags of a line that are not on hold and still hold grams of nobody, by number. */
export async function listBagsToSplit(
  tx: Tx,
  storehouseId: string,
  buyLineId: string,
): Promise<BagToSplit[]> {
  const rows = await tx
    .select({ bag: bags, unassignedGrams: left })
    .from(bags)
    .innerJoin(
      accounts,
      and(
        eq(accounts.storehouseId, bags.storehouseId),
        eq(accounts.vesselId, bags.bagId),
        eq(accounts.unitId, bags.lotId),
      ),
    )
    .innerJoin(
      owners,
      and(
        eq(owners.storehouseId, accounts.storehouseId),
        eq(owners.ownerId, accounts.ownerId),
        eq(owners.kind, 'unassigned'),
      ),
    )
    .where(
      and(
        eq(bags.storehouseId, storehouseId),
        eq(bags.buyLineId, buyLineId),
        ne(bags.decision, 'refused'),
        sql`not exists (select from ${held} where ${held.storehouseId} = ${bags.storehouseId}
          and ${held.vesselId} = ${bags.bagId})`,
        gt(accounts.inflow, accounts.outflow),
      ),
    )
    .orderBy(bags.bagNo);
  return rows.map(({ bag, unassignedGrams }) => ({
    bagId: bag.bagId,
    bagCode: bag.bagCode,
    bagNo: bag.bagNo,
    bagOfferId: bag.bagOfferId,
    deliveryId: bag.deliveryId,
    lotId: bag.lotId,
    declaredGrams: bag.declaredGrams,
    netGrams: bag.netGrams,
    unassignedGrams,
    isWeighedOrExempted: bag.weighedAt !== null || bag.isExemptFromWeighing,
  }));
}

/** Grams of one owner in a bag. */
export type BagContent = {
  readonly ownerId: string;
  readonly kind: 'household' | 'common' | 'unassigned';
  readonly grams: number;
};

/** What a bag holds by owner: households by seat, then common stock, then nobody. */
export async function listContents(
  tx: Tx,
  storehouseId: string,
  bag: { bagId: string; lotId: string },
): Promise<BagContent[]> {
  const rows = await tx
    .select({ ownerId: owners.ownerId, kind: owners.kind, grams: left })
    .from(accounts)
    .innerJoin(owners, joinOn(owners, accounts, 'ownerId'))
    .leftJoin(households, joinOn(households, owners, 'householdId', 'ownerId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.vesselId, bag.bagId),
        eq(accounts.unitId, bag.lotId),
        gt(accounts.inflow, accounts.outflow),
      ),
    )
    .orderBy(sql`${households.seat} asc nulls last`, asc(owners.kind));
  return rows.map((row) => ({ ...row, kind: row.kind as BagContent['kind'] }));
}

export async function findLastBagNo(tx: Tx, storehouseId: string, buyLineId: string): Promise<number> {
  const [row] = await tx
    .select({ last: max(bags.bagNo) })
    .from(bags)
    .where(and(eq(bags.storehouseId, storehouseId), eq(bags.buyLineId, buyLineId)));
  return row?.last ?? 0;
}

export async function listLotsOfLines(
  tx: Tx,
  storehouseId: string,
  buyLineIds: readonly string[],
): Promise<LotRow[]> {
  return tx
    .select()
    .from(lots)
    .where(and(eq(lots.storehouseId, storehouseId), inArray(lots.buyLineId, [...buyLineIds])));
}

/** A lot is a unit of the ledger too, under the same id. */
export async function insertLot(tx: Tx, lot: typeof lots.$inferInsert): Promise<LotRow> {
  await tx.insert(units).values({ storehouseId: lot.storehouseId, unitId: lot.lotId, kind: 'lot' });
  const [row] = await tx.insert(lots).values(lot).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function updateHarvestYear(tx: Tx, lot: LotRow, harvestYear: number): Promise<LotRow> {
  const [row] = await tx
    .update(lots)
    .set({ harvestYear })
    .where(and(eq(lots.storehouseId, lot.storehouseId), eq(lots.lotId, lot.lotId)))
    .returning();
  assert(row, 'the lot was read under the lock of its buy');
  return row;
}

/** A bag is a vessel of the ledger too, under the same id. */
export async function insertBags(tx: Tx, rows: readonly (typeof bags.$inferInsert)[]): Promise<BagRow[]> {
  await tx
    .insert(vessels)
    .values(rows.map(({ storehouseId, bagId }) => ({ storehouseId, vesselId: bagId, kind: 'bag' })));
  return tx
    .insert(bags)
    .values([...rows])
    .returning();
}

export async function updateBag(
  tx: Tx,
  bag: BagRow,
  set: Partial<
    Pick<
      BagRow,
      | 'grossGrams'
      | 'tareGrams'
      | 'netGrams'
      | 'condition'
      | 'moistureTenthsPercent'
      | 'decision'
      | 'note'
      | 'isExemptFromWeighing'
      | 'weighedAt'
    >
  >,
): Promise<BagRow> {
  const [row] = await tx
    .update(bags)
    .set({ ...set, version: bag.version + 1 })
    .where(isThis(bag.storehouseId, bag.bagId))
    .returning();
  assert(row, 'the bag was locked before');
  return row;
}

/** A bag as people look at it: with its lot's mark, whether it is on hold, and what is left in it. */
export type SeenBag = {
  readonly bag: BagRow;
  readonly supplierMark: string;
  readonly harvestYear: number | null;
  readonly isOnHold: boolean;
  readonly leftGrams: number;
};

/** By line and number; `after` is the bag that the page before ended with. */
export async function listSeenBags(
  tx: Tx,
  storehouseId: string,
  of: {
    buyId?: string | undefined;
    bagIds?: readonly string[] | undefined;
    after?: string | undefined;
    limit?: number;
  },
): Promise<SeenBag[]> {
  const { buyId, bagIds, after, limit = Number.MAX_SAFE_INTEGER } = of;
  return tx
    .select({
      bag: bags,
      supplierMark: lots.supplierMark,
      harvestYear: lots.harvestYear,
      isOnHold: sql<boolean>`exists (select from book.held h where h.storehouse_id = ${bags.storehouseId}
        and h.vessel_id = ${bags.bagId})`,
      leftGrams: sql`(select coalesce(sum(a.inflow - a.outflow), 0) from book.account a
        where a.storehouse_id = ${bags.storehouseId} and a.vessel_id = ${bags.bagId})`.mapWith(Number),
    })
    .from(bags)
    .innerJoin(lots, joinOn(lots, bags, 'lotId'))
    .innerJoin(buyLines, joinOn(buyLines, bags, 'buyLineId'))
    .where(
      and(
        eq(bags.storehouseId, storehouseId),
        buyId === undefined ? undefined : eq(bags.buyId, buyId),
        bagIds === undefined ? undefined : inArray(bags.bagId, [...bagIds]),
        after === undefined ? undefined : standsAfter(storehouseId, after),
      ),
    )
    .orderBy(buyLines.position, bags.bagNo)
    .limit(limit);
}

const standsAfter = (storehouseId: string, bagId: string) =>
  sql`(${buyLines.position}, ${bags.bagNo}) > (select l.position, b.bag_no from book.bag b
    join book.buy_line l on l.storehouse_id = b.storehouse_id and l.buy_line_id = b.buy_line_id
    where b.storehouse_id = ${storehouseId} and b.bag_id = ${bagId})`;

export async function loadSeenBag(tx: Tx, storehouseId: string, bagId: string): Promise<SeenBag> {
  const [seen] = await listSeenBags(tx, storehouseId, { bagIds: [bagId] });
  if (!seen) throw new Problem('thing-not-found', { thing: 'bag' });
  return seen;
}

/** Entries that brought a bag its mass or put it right, and that nobody has undone; the newest first. */
export async function listReceipts(tx: Tx, storehouseId: string, bagId: string) {
  const undone = sql`exists (select from book.entry r where r.storehouse_id = ${entries.storehouseId}
    and r.reverses_id = ${entries.entryId})`;
  return tx
    .select({ entryId: entries.entryId, entryNo: entries.entryNo, what: entries.what })
    .from(entries)
    .where(
      and(
        eq(entries.storehouseId, storehouseId),
        eq(entries.subjectId, bagId),
        inArray(entries.what, ['bag-landed', 'bag-weighed']),
        sql`not ${undone}`,
      ),
    )
    .orderBy(desc(entries.entryNo));
}

/** Keeps the two readings behind what an entry booked as moisture. */
export async function noteMoisture(
  tx: Tx,
  { storehouseId, bagId }: Pick<BagRow, 'storehouseId' | 'bagId'>,
  {
    entryId,
    wasTenths,
    isTenths,
    bookedGrams,
    weighedGrams,
  }: Omit<MoistureChangeRow, 'storehouseId' | 'bagId'>,
): Promise<void> {
  await tx
    .insert(moistureChanges)
    .values({ storehouseId, bagId, entryId, wasTenths, isTenths, bookedGrams, weighedGrams });
}

/** How moist a bag is by its last reading; its version stays, since the weighing that read it has raised it. */
export async function updateMoisture(
  tx: Tx,
  { storehouseId, bagId }: Pick<BagRow, 'storehouseId' | 'bagId'>,
  moistureTenthsPercent: number,
): Promise<void> {
  await tx
    .update(bags)
    .set({ moistureTenthsPercent })
    .where(and(eq(bags.storehouseId, storehouseId), eq(bags.bagId, bagId)));
}

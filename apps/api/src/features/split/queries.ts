import type { Tx } from '@sheafbook/db';
import {
  bags,
  entries,
  foods,
  households,
  type SplitRow,
  sharePieces,
  shares,
  splitInputs,
  splits,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, inArray, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import { type HouseOwners, loadHouseOwners } from '../storehouse/queries.ts';
import type { EarlierAward, Promised } from './claims.ts';

/** Whoever may own a part of a buy, by seat, households that have left too. Common stock stands after the last. */
export type SharingOwners = HouseOwners & {
  readonly seatOf: (ownerId: string) => number;
  readonly nameOf: (ownerId: string) => string;
};

export async function loadSharingOwners(tx: Tx, storehouseId: string): Promise<SharingOwners> {
  const house = await loadHouseOwners(tx, storehouseId);
  const rows = await tx
    .select({ householdId: households.householdId, seat: households.seat, name: households.name })
    .from(households)
    .where(eq(households.storehouseId, storehouseId));
  const known = new Map(rows.map((household) => [household.householdId, household]));
  const lastSeat = Math.max(0, ...rows.map(({ seat }) => seat));
  return {
    ...house,
    seatOf: (ownerId) => known.get(ownerId)?.seat ?? lastSeat + 1,
    nameOf: (ownerId) => known.get(ownerId)?.name ?? '',
  };
}

/**
 * What each household is promised of a line, with the time of its pledge. Common stock is promised here only what it
 * took over from a household that withdrew: the unfilled mass of the fill, which rounds the bags up, claims nothing
 * and gets what is left.
 */
export async function listPromised(
  tx: Tx,
  storehouseId: string,
  line: { buyId: string; lineId: string; owners: SharingOwners },
): Promise<Promised[]> {
  const rows = await tx.execute<{
    owner_id: string;
    grams: string;
    whole_bags: boolean;
    ranked_at: string | null;
    unfilled_grams: string;
  }>(sql`
    select a.owner_id, a.grams, a.whole_bags,
      (select min(p.ranked_at) from book.pledge p where p.storehouse_id = a.storehouse_id and p.buy_id = a.buy_id
        and p.household_id = a.owner_id and p.withdrawn_at is null
        and (p.buy_line_id = a.buy_line_id or p.substitute_line_id = a.buy_line_id)) as ranked_at,
      coalesce((select (l ->> 'commonGrams')::bigint from book.buy b
        join book.fill f on f.storehouse_id = b.storehouse_id and f.fill_id = b.fill_id,
        jsonb_array_elements(f.answer -> 'lines') l
        where b.storehouse_id = a.storehouse_id and b.buy_id = a.buy_id
          and l ->> 'lineId' = a.buy_line_id::text), 0) as unfilled_grams
    from book.allotment a
    where a.storehouse_id = ${storehouseId} and a.buy_line_id = ${line.lineId} and a.grams > 0`);
  return rows.flatMap((row) => {
    const isCommon = row.owner_id === line.owners.commonId;
    const grams = Number(row.grams) - (isCommon ? Number(row.unfilled_grams) : 0);
    if (grams <= 0) return [];
    return [
      {
        ownerId: row.owner_id,
        seat: line.owners.seatOf(row.owner_id),
        grams,
        wholeBags: row.whole_bags,
        rankedAt: row.ranked_at === null ? null : new Date(row.ranked_at),
      },
    ];
  });
}

const isThisLine = (storehouseId: string, lineId: string) =>
  and(eq(splits.storehouseId, storehouseId), eq(splits.buyLineId, lineId), isNull(splits.undoneAt));

export async function listEarlierAwards(
  tx: Tx,
  storehouseId: string,
  lineId: string,
): Promise<EarlierAward[]> {
  return tx
    .select({
      ownerId: shares.ownerId,
      awardGrams: sql<number>`sum(${shares.awardGrams})`.mapWith(Number),
      carryChangeGrams: sql<number>`sum(${shares.carryChangeGrams})`.mapWith(Number),
    })
    .from(shares)
    .innerJoin(splits, joinOn(splits, shares, 'splitId'))
    .where(isThisLine(storehouseId, lineId))
    .groupBy(shares.ownerId);
}

/** The rounds of a line in force, first to last. */
export async function listRounds(tx: Tx, storehouseId: string, lineId: string): Promise<SplitRow[]> {
  return tx.select().from(splits).where(isThisLine(storehouseId, lineId)).orderBy(asc(splits.roundNo));
}

/** What each owner has borne beyond its part in the splits of a food group so far (job map section 5.3). */
export async function sumCarries(
  tx: Tx,
  storehouseId: string,
  foodGroup: string,
): Promise<Map<string, number>> {
  const rows = await tx.execute<{ owner_id: string; carry: string }>(sql`
    select s.owner_id, sum(s.carry_change_grams) as carry from book.share s
    join book.split p on p.storehouse_id = s.storehouse_id and p.split_id = s.split_id and p.undone_at is null
    join book.buy_line l on l.storehouse_id = p.storehouse_id and l.buy_line_id = p.buy_line_id
    join book.food f on f.storehouse_id = l.storehouse_id and f.food_id = l.food_id
    where s.storehouse_id = ${storehouseId} and f.food_group = ${foodGroup}
    group by s.owner_id`);
  return new Map(rows.map((row) => [row.owner_id, Number(row.carry)]));
}

/** How far apart households stand in what they bore beyond their parts, by food group; common stock bears nothing. */
export async function listCarrySpreads(tx: Tx, storehouseId: string) {
  const rows = await tx.execute<{ food_group: string; households: string; least: string; most: string }>(sql`
    select food_group, count(*) as households, min(carry) as least, max(carry) as most from (
      select f.food_group, s.owner_id, sum(s.carry_change_grams) as carry from book.share s
      join book.household h on h.storehouse_id = s.storehouse_id and h.household_id = s.owner_id
      join book.split p on p.storehouse_id = s.storehouse_id and p.split_id = s.split_id and p.undone_at is null
      join book.buy_line l on l.storehouse_id = p.storehouse_id and l.buy_line_id = p.buy_line_id
      join book.food f on f.storehouse_id = l.storehouse_id and f.food_id = l.food_id
      where s.storehouse_id = ${storehouseId}
      group by f.food_group, s.owner_id) borne
    group by food_group order by food_group`);
  return rows.map((row) => ({
    foodGroup: row.food_group,
    households: Number(row.households),
    leastGrams: Number(row.least),
    mostGrams: Number(row.most),
  }));
}
export type CarrySpread = Awaited<ReturnType<typeof listCarrySpreads>>[number];

export async function loadFoodOfLine(tx: Tx, storehouseId: string, foodId: string) {
  const [row] = await tx
    .select()
    .from(foods)
    .where(and(eq(foods.storehouseId, storehouseId), eq(foods.foodId, foodId)));
  assert(row, 'a line has its food');
  return row;
}

export async function insertSplit(tx: Tx, split: typeof splits.$inferInsert): Promise<SplitRow> {
  const [row] = await tx.insert(splits).values(split).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function insertSplitInputs(tx: Tx, row: typeof splitInputs.$inferInsert): Promise<void> {
  await tx.insert(splitInputs).values(row);
}

export async function insertShares(tx: Tx, rows: (typeof shares.$inferInsert)[]): Promise<void> {
  await tx.insert(shares).values(rows);
}

export async function insertSharePieces(tx: Tx, rows: (typeof sharePieces.$inferInsert)[]): Promise<void> {
  await tx.insert(sharePieces).values(rows);
}

const isThisSplit = (storehouseId: string, splitId: string) =>
  and(eq(splits.storehouseId, storehouseId), eq(splits.splitId, splitId));

export async function loadSplit(tx: Tx, storehouseId: string, splitId: string): Promise<SplitRow> {
  const [row] = await tx.select().from(splits).where(isThisSplit(storehouseId, splitId));
  if (!row) throw new Problem('thing-not-found', { thing: 'split' });
  return row;
}

/** Readable in the tasks 'split' and 'review' alone: the inputs of need-first hold what households eat and hold. */
export async function findSplitInputs(tx: Tx, storehouseId: string, splitId: string): Promise<unknown> {
  const [row] = await tx
    .select({ inputs: splitInputs.inputs })
    .from(splitInputs)
    .where(and(eq(splitInputs.storehouseId, storehouseId), eq(splitInputs.splitId, splitId)));
  return row?.inputs;
}

export async function updateSplitUndone(
  tx: Tx,
  storehouseId: string,
  { splitId, undoneAt }: { splitId: string; undoneAt: Date },
): Promise<SplitRow> {
  const [row] = await tx
    .update(splits)
    .set({ undoneAt })
    .where(isThisSplit(storehouseId, splitId))
    .returning();
  assert(row, 'the split was read before');
  return row;
}

export async function loadSplitEntryId(tx: Tx, storehouseId: string, splitId: string): Promise<string> {
  const [row] = await tx
    .select({ entryId: entries.entryId })
    .from(entries)
    .where(
      and(
        eq(entries.storehouseId, storehouseId),
        eq(entries.subjectId, splitId),
        eq(entries.what, 'split-made'),
      ),
    );
  assert(row, 'a split is posted in the transaction that makes it');
  return row.entryId;
}

export async function listSharesOf(tx: Tx, storehouseId: string, splitIds: readonly string[]) {
  return tx
    .select()
    .from(shares)
    .where(and(eq(shares.storehouseId, storehouseId), inArray(shares.splitId, [...splitIds])));
}

export async function listPiecesOf(tx: Tx, storehouseId: string, splitIds: readonly string[]) {
  return tx
    .select({
      splitId: sharePieces.splitId,
      ownerId: sharePieces.ownerId,
      bagId: sharePieces.bagId,
      bagCode: bags.bagCode,
      bagNo: bags.bagNo,
      lotId: bags.lotId,
      grams: sharePieces.grams,
    })
    .from(sharePieces)
    .innerJoin(bags, joinOn(bags, sharePieces, 'bagId'))
    .where(and(eq(sharePieces.storehouseId, storehouseId), inArray(sharePieces.splitId, [...splitIds])))
    .orderBy(asc(bags.bagNo), asc(sharePieces.ownerId));
}

/** Pieces of a split that are no longer whole in their bag: poured, given up or handed on since. */
export async function listMovedPieces(tx: Tx, storehouseId: string, splitId: string) {
  const rows = await tx.execute<{ bag_id: string; bag_code: string; owner_id: string }>(sql`
    select p.bag_id, b.bag_code, p.owner_id from book.share_piece p
    join book.bag b on b.storehouse_id = p.storehouse_id and b.bag_id = p.bag_id
    join book.account a on a.storehouse_id = p.storehouse_id and a.vessel_id = p.bag_id and a.owner_id = p.owner_id
      and a.unit_id = b.lot_id and a.kind = 'mass'
    where p.storehouse_id = ${storehouseId} and p.split_id = ${splitId} and a.inflow - a.outflow < p.grams
    order by b.bag_no, p.owner_id`);
  return rows.map((row) => ({ bagId: row.bag_id, bagCode: row.bag_code, ownerId: row.owner_id }));
}

export type LotLoss = { readonly lotId: string; readonly cause: string; readonly grams: number };
type OfLine = { readonly lineId: string };

/** What was lost of some lines' lots before it was anyone's, by where it went. */
export async function listLossesOfLines(
  tx: Tx,
  storehouseId: string,
  lineIds: readonly string[],
): Promise<(LotLoss & OfLine)[]> {
  const rows = await tx.execute<{ line_id: string; lot_id: string; cause: string; grams: string }>(sql`
    select l.buy_line_id as line_id, l.lot_id, a.vessel_kind as cause, sum(a.inflow - a.outflow) as grams from book.lot l
    join book.account a on a.storehouse_id = l.storehouse_id and a.unit_id = l.lot_id and a.kind = 'mass'
      and a.vessel_kind not in ('bag', 'container', 'supplier')
    join book.owner o on o.storehouse_id = a.storehouse_id and o.owner_id = a.owner_id and o.kind = 'unassigned'
    where l.storehouse_id = ${storehouseId} and l.buy_line_id = any(${sql.param([...lineIds])}::uuid[])
    group by l.buy_line_id, l.lot_id, a.vessel_kind having sum(a.inflow - a.outflow) > 0 order by l.lot_id, a.vessel_kind`);
  return rows.map((row) => ({
    ...{ lineId: row.line_id, lotId: row.lot_id, cause: row.cause, grams: Number(row.grams) },
  }));
}

/** What each owner was charged on the goods and other lines that the shares of some lines of a buy weigh in. */
export async function listChargesOfLines(
  tx: Tx,
  storehouseId: string,
  { buyId, lineIds }: { buyId: string; lineIds: readonly string[] },
) {
  type Row = Record<'line_id' | 'cost_line' | 'owner_id' | 'minor_units', string>;
  const rows = await tx.execute<Row>(sql`
    select w.line_id, c.cost_line, s.owner_id, sum(s.minor_units) as minor_units
    from unnest(${sql.param([...lineIds])}::uuid[]) w(line_id)
    join book.charge_line c on c.storehouse_id = ${storehouseId} and c.buy_id = ${buyId}
      and (c.buy_line_id is null or c.buy_line_id = w.line_id)
    join book.charge_share s on s.storehouse_id = ${storehouseId} and s.charge_line_id = c.charge_line_id
    group by w.line_id, c.cost_line, s.owner_id order by c.cost_line, s.owner_id`);
  return rows.map((row) => ({
    lineId: row.line_id,
    costLine: row.cost_line,
    ownerId: row.owner_id,
    minorUnits: Number(row.minor_units),
  }));
}

/** What each owner was awarded of each line of a buy, all rounds together. */
export async function listAwardsOfBuy(tx: Tx, storehouseId: string, buyId: string) {
  return tx
    .select({
      buyLineId: splits.buyLineId,
      ownerId: shares.ownerId,
      grams: sql<number>`sum(${shares.awardGrams})`.mapWith(Number),
    })
    .from(shares)
    .innerJoin(splits, joinOn(splits, shares, 'splitId'))
    .where(and(eq(splits.storehouseId, storehouseId), eq(splits.buyId, buyId), isNull(splits.undoneAt)))
    .groupBy(splits.buyLineId, shares.ownerId);
}

/** The newest splits in force, of whatever buy. */
export async function listLastSplits(tx: Tx, storehouseId: string, count: number): Promise<SplitRow[]> {
  return tx
    .select()
    .from(splits)
    .where(and(eq(splits.storehouseId, storehouseId), isNull(splits.undoneAt)))
    .orderBy(desc(splits.madeAt), desc(splits.splitId))
    .limit(count);
}

export async function listSplitsOfBuy(tx: Tx, storehouseId: string, buyId: string): Promise<SplitRow[]> {
  return tx
    .select()
    .from(splits)
    .where(and(eq(splits.storehouseId, storehouseId), eq(splits.buyId, buyId)))
    .orderBy(desc(splits.madeAt), desc(splits.splitId));
}

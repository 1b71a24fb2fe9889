import type { Tx } from '@sheafbook/db';
import {
  buyLines,
  households,
  type PledgeCeilingRow,
  type PledgeRow,
  pledgeCeilings,
  pledges,
} from '@sheafbook/db/tables';
import type { UnitPrice } from '@sheafbook/sharing';
import { assert } from '@sheafbook/units';
import { and, asc, eq, isNull, or, type SQL, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

/** A standing pledge with the seat that decides ties; `ceiling` is null also when it was not asked for. */
export type BuyPledge = PledgeRow & {
  readonly seat: number;
  readonly householdName: string;
  readonly ceiling: UnitPrice | null;
};

const columns = { pledge: pledges, seat: households.seat, householdName: households.name };

const isOfHousehold = joinOn(households, pledges, 'householdId');

/**
 * The standing pledges of a buy in pledge order: ranked-at, then seat, then the line's place. Ceilings come along only
 * when asked for, and of other households only inside a transaction of the task 'fill' or 'review'.
 */
export async function listPledgesOfBuy(
  tx: Tx,
  storehouseId: string,
  buyId: string,
  { withCeilings = false }: { withCeilings?: boolean } = {},
): Promise<BuyPledge[]> {
  const rows = await tx
    .select(columns)
    .from(pledges)
    .innerJoin(households, isOfHousehold)
    .innerJoin(buyLines, joinOn(buyLines, pledges, 'buyLineId'))
    .where(and(eq(pledges.storehouseId, storehouseId), eq(pledges.buyId, buyId), isNull(pledges.withdrawnAt)))
    .orderBy(asc(pledges.rankedAt), asc(households.seat), asc(buyLines.position));
  const ceilings = withCeilings ? await listCeilings(tx, storehouseId, buyId) : new Map<string, UnitPrice>();
  return rows.map(({ pledge, ...rest }) => ({
    ...pledge,
    ...rest,
    ceiling: ceilings.get(pledge.pledgeId) ?? null,
  }));
}

async function listCeilings(tx: Tx, storehouseId: string, buyId: string): Promise<Map<string, UnitPrice>> {
  const rows = await tx
    .select({ ceiling: pledgeCeilings })
    .from(pledgeCeilings)
    .innerJoin(pledges, joinOn(pledges, pledgeCeilings, 'pledgeId'))
    .where(and(eq(pledgeCeilings.storehouseId, storehouseId), eq(pledges.buyId, buyId)));
  return new Map(rows.map(({ ceiling }) => [ceiling.pledgeId, toUnitPrice(ceiling)]));
}

const toUnitPrice = ({ ceilingMinorUnits: minorUnits, perGrams }: PledgeCeilingRow): UnitPrice => ({
  minorUnits,
  grams: perGrams,
});

/** A page of the standing pledges of all households, by seat and then by pledge; one row more than the page holds. */
export async function listHouseholdPledges(
  tx: Tx,
  storehouseId: string,
  { buyId, after, limit }: { buyId: string; after: string | undefined; limit: number },
): Promise<BuyPledge[]> {
  const rows = await tx
    .select(columns)
    .from(pledges)
    .innerJoin(households, isOfHousehold)
    .where(
      and(
        eq(pledges.storehouseId, storehouseId),
        eq(pledges.buyId, buyId),
        isNull(pledges.withdrawnAt),
        after === undefined ? undefined : isAfter(storehouseId, after),
      ),
    )
    .orderBy(asc(households.seat), asc(pledges.pledgeId))
    .limit(limit + 1);
  return rows.map(({ pledge, ...rest }) => ({ ...pledge, ...rest, ceiling: null }));
}

const isAfter = (storehouseId: string, pledgeId: string): SQL => sql`
  (${households.seat}, ${pledges.pledgeId}) > (select h.seat, p.pledge_id from book.pledge p
    join book.household h on h.storehouse_id = p.storehouse_id and h.household_id = p.household_id
    where p.storehouse_id = ${storehouseId} and p.pledge_id = ${pledgeId})`;

/** A pledge of a buy, locked so that two changes of it follow one another. Withdrawn ones are found too. */
export async function lockPledge(
  tx: Tx,
  storehouseId: string,
  { buyId, pledgeId }: { buyId: string; pledgeId: string },
): Promise<PledgeRow> {
  const [pledge] = await tx
    .select()
    .from(pledges)
    .where(
      and(eq(pledges.storehouseId, storehouseId), eq(pledges.buyId, buyId), eq(pledges.pledgeId, pledgeId)),
    )
    .for('update');
  if (!pledge) throw new Problem('thing-not-found', { thing: 'pledge' });
  return pledge;
}

export async function findPledgeOfLine(
  tx: Tx,
  storehouseId: string,
  { buyLineId, householdId }: { buyLineId: string; householdId: string },
): Promise<PledgeRow | undefined> {
  const [pledge] = await tx
    .select()
    .from(pledges)
    .where(
      and(
        eq(pledges.storehouseId, storehouseId),
        eq(pledges.buyLineId, buyLineId),
        eq(pledges.householdId, householdId),
        isNull(pledges.withdrawnAt),
      ),
    );
  return pledge;
}

/** Whether anyone ever pledged on a line or named it as a substitute, withdrawn or not. */
export async function hasPledges(tx: Tx, storehouseId: string, buyLineId: string): Promise<boolean> {
  const rows = await tx
    .select({ pledgeId: pledges.pledgeId })
    .from(pledges)
    .where(
      and(
        eq(pledges.storehouseId, storehouseId),
        or(eq(pledges.buyLineId, buyLineId), eq(pledges.substituteLineId, buyLineId)),
      ),
    )
    .limit(1);
  return rows.length > 0;
}

export async function insertPledge(tx: Tx, pledge: typeof pledges.$inferInsert): Promise<PledgeRow> {
  const [row] = await tx.insert(pledges).values(pledge).returning();
  assert(row, 'an insert returns its row');
  return row;
}

export async function updatePledge(
  tx: Tx,
  pledge: PledgeRow,
  change: Partial<typeof pledges.$inferInsert>,
): Promise<PledgeRow> {
  const [row] = await tx
    .update(pledges)
    .set({ ...change, version: pledge.version + 1 })
    .where(and(eq(pledges.storehouseId, pledge.storehouseId), eq(pledges.pledgeId, pledge.pledgeId)))
    .returning();
  assert(row, 'the pledge was locked before');
  return row;
}

export async function findCeiling(tx: Tx, pledge: PledgeRow): Promise<UnitPrice | null> {
  const [ceiling] = await tx.select().from(pledgeCeilings).where(isCeilingOf(pledge));
  return ceiling ? toUnitPrice(ceiling) : null;
}

export async function deleteCeiling(tx: Tx, pledge: PledgeRow): Promise<void> {
  await tx.delete(pledgeCeilings).where(isCeilingOf(pledge));
}

export async function insertCeiling(tx: Tx, pledge: PledgeRow, ceiling: UnitPrice): Promise<void> {
  const { storehouseId, pledgeId, householdId } = pledge;
  await tx.insert(pledgeCeilings).values({
    storehouseId,
    pledgeId,
    householdId,
    ceilingMinorUnits: ceiling.minorUnits,
    perGrams: ceiling.grams,
  });
}

const isCeilingOf = ({ storehouseId, pledgeId }: PledgeRow) =>
  and(eq(pledgeCeilings.storehouseId, storehouseId), eq(pledgeCeilings.pledgeId, pledgeId));

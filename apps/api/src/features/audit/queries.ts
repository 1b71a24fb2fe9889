import type { Tx } from '@sheafbook/db';
import {
  accounts,
  buys,
  entries,
  fillInputs,
  fills,
  movements,
  packingSessions,
  stageMoves,
  storehouses,
  units,
} from '@sheafbook/db/tables';
import {
  type AccountKind,
  type AuditAccount,
  type AuditBuy,
  type AuditContainer,
  type AuditCostLine,
  type AuditEntry,
  type AuditHold,
  type AuditLot,
  type AuditMovement,
  type AuditSession,
  type AuditUnit,
  type BuyStage,
  type Guard,
  isOutside,
  type VesselKind,
} from '@sheafbook/ledger';
import type { FrozenSplit } from '@sheafbook/sharing';
import { assert } from '@sheafbook/units';
import { and, asc, eq, isNotNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

export async function loadStorehouseName(tx: Tx, storehouseId: string): Promise<string> {
  const [row] = await tx
    .select({ name: storehouses.name })
    .from(storehouses)
    .where(eq(storehouses.storehouseId, storehouseId));
  assert(row, 'an audit is of a storehouse that is there');
  return row.name;
}

export async function listUnits(tx: Tx, storehouseId: string): Promise<AuditUnit[]> {
  const rows = await tx
    .select({ unitId: units.unitId, kind: units.kind })
    .from(units)
    .where(eq(units.storehouseId, storehouseId));
  return rows.map(({ unitId, kind }) => ({ unitId, kind: kind as AuditUnit['kind'] }));
}

export async function listAccounts(tx: Tx, storehouseId: string): Promise<AuditAccount[]> {
  const rows = await tx
    .select()
    .from(accounts)
    .where(eq(accounts.storehouseId, storehouseId))
    .orderBy(accounts.accountId);
  return rows.map((row) => {
    const vesselKind = row.vesselKind as VesselKind | null;
    return {
      accountId: row.accountId,
      unitId: row.unitId,
      kind: row.kind as AccountKind,
      vesselId: row.vesselId,
      outsideKind: vesselKind !== null && isOutside(vesselKind) ? vesselKind : null,
      ownerId: row.ownerId,
      causeId: row.causeId,
      guard: row.guard as Guard,
      inflow: row.inflow,
      outflow: row.outflow,
    };
  });
}

/** Instants come as text, since a Date would drop the microseconds that tell two entries apart. */
export async function listEntries(tx: Tx, storehouseId: string): Promise<AuditEntry[]> {
  return tx
    .select({
      entryId: entries.entryId,
      entryNo: entries.entryNo,
      recordedAt: sql<string>`${entries.recordedAt}::text`,
      reversesEntryId: entries.reversesId,
    })
    .from(entries)
    .where(eq(entries.storehouseId, storehouseId))
    .orderBy(entries.entryNo);
}

export async function listMovements(tx: Tx, storehouseId: string): Promise<AuditMovement[]> {
  return tx
    .select({
      entryId: movements.entryId,
      line: movements.line,
      unitId: movements.unitId,
      sourceId: movements.sourceId,
      destinationId: movements.destinationId,
      amount: movements.amount,
    })
    .from(movements)
    .where(eq(movements.storehouseId, storehouseId))
    .orderBy(movements.entryId, movements.line);
}

export async function listBuys(tx: Tx, storehouseId: string): Promise<AuditBuy[]> {
  const rows = await tx
    .select({
      buyId: buys.buyId,
      stage: buys.stage,
      from: stageMoves.fromStage,
      to: stageMoves.toStage,
    })
    .from(buys)
    .leftJoin(stageMoves, joinOn(stageMoves, buys, 'buyId'))
    .where(eq(buys.storehouseId, storehouseId))
    .orderBy(asc(buys.buyId), asc(stageMoves.stageMoveId));
  const found = new Map<string, AuditBuy>();
  for (const { buyId, stage, from, to } of rows) {
    const moves = found.get(buyId)?.moves ?? [];
    const move = from === null || to === null ? [] : [{ from: from as BuyStage, to: to as BuyStage }];
    found.set(buyId, { buyId, stage: stage as BuyStage, moves: [...moves, ...move] });
  }
  return [...found.values()];
}

export async function listSessions(tx: Tx, storehouseId: string): Promise<AuditSession[]> {
  const rows = await tx
    .select({ sessionId: packingSessions.packingSessionId, stage: packingSessions.stage })
    .from(packingSessions)
    .where(eq(packingSessions.storehouseId, storehouseId));
  return rows.map(({ sessionId, stage }) => ({ sessionId, stage: stage as AuditSession['stage'] }));
}

/** Weights and amounts in the order of owners, with what the same cost had come to for each before. */
export async function listCostLines(tx: Tx, storehouseId: string): Promise<AuditCostLine[]> {
  const rows = await tx.execute<{
    id: string;
    total: string;
    before: string;
    weights: string[];
    amounts: string[];
    befores: string[];
  }>(sql`
    with line as (
      select l.*, e.entry_no from book.charge_line l
      join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = l.entry_id
      where l.storehouse_id = ${storehouseId}),
    share as (
      select s.charge_line_id, s.owner_id, s.weight, s.minor_units,
        coalesce(sum(s.minor_units) over earlier, 0) as before
      from line l
      join book.charge_share s on s.storehouse_id = ${storehouseId} and s.charge_line_id = l.charge_line_id
      window earlier as (partition by l.buy_id, l.cost_line, s.owner_id order by l.entry_no
        rows between unbounded preceding and 1 preceding))
    select l.charge_line_id as id, l.minor_units as total,
      coalesce(sum(l.minor_units) over (partition by l.buy_id, l.cost_line order by l.entry_no
        rows between unbounded preceding and 1 preceding), 0) as before,
      s.weights, s.amounts, s.befores
    from line l
    cross join lateral (
      select coalesce(array_agg(s.weight::text order by s.owner_id), '{}') as weights,
        coalesce(array_agg(s.minor_units::text order by s.owner_id), '{}') as amounts,
        coalesce(array_agg(s.before::text order by s.owner_id), '{}') as befores
      from share s where s.charge_line_id = l.charge_line_id) s
    order by l.charge_line_id`);
  return rows.map((row) => ({
    costLineId: row.id,
    totalMinorUnits: Number(row.total),
    chargedBeforeMinorUnits: Number(row.before),
    shares: row.weights.map((weight, position) => ({
      weight: BigInt(weight),
      amountMinorUnits: Number(row.amounts[position]),
      chargedBeforeMinorUnits: Number(row.befores[position]),
    })),
  }));
}

export type StoredSplit = {
  readonly splitId: string;
  readonly inputs: FrozenSplit;
  readonly answer: Omit<FrozenSplit, 'claims'>;
  readonly shares: readonly {
    readonly ownerId: string;
    readonly isCommon: boolean;
    readonly claimGrams: number;
    readonly awardGrams: number;
  }[];
};

/** Readable in the task 'review' alone, since a split by need keeps what households eat and hold. */
export async function listSplits(tx: Tx, storehouseId: string): Promise<StoredSplit[]> {
  const rows = await tx.execute<{
    split_id: string;
    inputs: FrozenSplit;
    answer: Omit<FrozenSplit, 'claims'>;
    shares: StoredSplit['shares'];
  }>(sql`
    select sp.split_id, i.inputs, sp.answer, (
      select coalesce(jsonb_agg(jsonb_build_object('ownerId', s.owner_id, 'isCommon', o.kind = 'common',
        'claimGrams', s.claim_grams, 'awardGrams', s.award_grams) order by s.owner_id), '[]')
      from book.share s join book.owner o on o.storehouse_id = ${storehouseId} and o.owner_id = s.owner_id
      where s.storehouse_id = ${storehouseId} and s.split_id = sp.split_id) as shares
    from book.split sp
    join book.split_inputs i on i.storehouse_id = ${storehouseId} and i.split_id = sp.split_id
    where sp.storehouse_id = ${storehouseId} order by sp.split_id`);
  return rows.map(({ split_id, inputs, answer, shares }) => ({ splitId: split_id, inputs, answer, shares }));
}

export async function listLots(tx: Tx, storehouseId: string): Promise<AuditLot[]> {
  const rows = await tx.execute<{ lot_id: string; delivery_id: string | null; is_intake: boolean }>(sql`
    select l.lot_id, min(b.delivery_id::text) as delivery_id, l.buy_line_id is null as is_intake
    from book.lot l
    left join book.bag b on b.storehouse_id = ${storehouseId} and b.lot_id = l.lot_id
    where l.storehouse_id = ${storehouseId}
    group by l.lot_id, l.buy_line_id order by l.lot_id`);
  return rows.map((row) => ({
    lotId: row.lot_id,
    deliveryId: row.delivery_id,
    intakeId: row.is_intake ? row.lot_id : null,
    parentLotIds: [],
  }));
}

export async function listContainers(tx: Tx, storehouseId: string): Promise<AuditContainer[]> {
  const rows = await tx.execute<{
    container_id: string;
    lot_id: string;
    net: string;
    microlitres: string;
    bulk: number | null;
  }>(sql`
    select c.container_id, c.lot_id, k.capacity_microlitres as microlitres, f.bulk_micrograms_per_millilitre as bulk,
      (select coalesce(sum(a.inflow - a.outflow), 0) from book.account a
        where a.storehouse_id = ${storehouseId} and a.vessel_id = c.container_id) as net
    from book.container c
    join book.container_kind k on k.storehouse_id = ${storehouseId} and k.container_kind_id = c.container_kind_id
    join book.lot l on l.storehouse_id = ${storehouseId} and l.lot_id = c.lot_id
    join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = l.food_id
    where c.storehouse_id = ${storehouseId} order by c.container_id`);
  return rows.map((row) => ({
    containerId: row.container_id,
    lotId: row.lot_id,
    netGrams: Number(row.net),
    capacityGrams: levelGrams(Number(row.microlitres), row.bulk),
  }));
}

/** Level, to the microgram: whole grams would make the 8 % above it too little. A food of unknown bulk fits anything. */
function levelGrams(microlitres: number, microgramsPerMillilitre: number | null): number {
  if (microgramsPerMillilitre === null) return Number.POSITIVE_INFINITY;
  return Math.ceil((microlitres * microgramsPerMillilitre) / 1000) / 1_000_000;
}

export async function listCodes(tx: Tx, storehouseId: string): Promise<string[]> {
  const rows = await tx.execute<{ code: string }>(sql`
    select bag_code as code from book.bag where storehouse_id = ${storehouseId}
    union all select container_code from book.container where storehouse_id = ${storehouseId}`);
  return rows.map((row) => row.code);
}

/** Holds by what they reached and for how long: bags and containers of one lot that came to be held, and ended, together. */
export async function listHolds(tx: Tx, storehouseId: string): Promise<AuditHold[]> {
  const rows = await tx.execute<{
    hold_id: string;
    lot_id: string;
    vessel_ids: string[];
    held_at: string;
    released_at: string | null;
    login_ids: string[];
    is_released: boolean;
  }>(sql`
    select h.hold_id, coalesce(b.lot_id, c.lot_id) as lot_id, array_agg(v.vessel_id) as vessel_ids,
      v.reached_at as held_at, v.ended_at as released_at, h.released_by is not null as is_released,
      (select coalesce(array_agg(coalesce(p.login_id, p.person_id)::text), '{}') from book.person p
        where p.storehouse_id = ${storehouseId} and p.person_id in (h.release_asked_by, h.released_by)) as login_ids
    from book.hold h
    join book.hold_vessel v on v.storehouse_id = ${storehouseId} and v.hold_id = h.hold_id
    left join book.bag b on b.storehouse_id = ${storehouseId} and b.bag_id = v.vessel_id
    left join book.container c on c.storehouse_id = ${storehouseId} and c.container_id = v.vessel_id
    where h.storehouse_id = ${storehouseId}
    group by h.storehouse_id, h.hold_id, coalesce(b.lot_id, c.lot_id), v.reached_at, v.ended_at
    order by h.hold_id, lot_id, held_at`);
  return rows.map((row) => ({
    holdId: row.hold_id,
    lotUnitId: row.lot_id,
    vesselIds: row.vessel_ids,
    heldAt: row.held_at,
    releasedAt: row.released_at,
    releasedByLoginIds: row.is_released ? row.login_ids : null,
  }));
}

/** Pledges of buys that are not fixed yet, in grams; those of fixed buys are judged by what the fill froze. */
export async function listOpenPledges(tx: Tx, storehouseId: string) {
  const rows = await tx.execute<{ pledge_id: string; least: string; wanted: string; most: string }>(sql`
    select p.pledge_id, p.least_grams as least, p.wanted_grams as wanted, p.most_grams as most
    from book.pledge p join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = p.buy_id
    where p.storehouse_id = ${storehouseId} and p.withdrawn_at is null and b.fill_id is null
    order by p.pledge_id`);
  return rows.map((row) => ({
    pledgeId: row.pledge_id,
    least: Number(row.least),
    wanted: Number(row.wanted),
    most: Number(row.most),
  }));
}

export type StoredFill = {
  readonly fillId: string;
  readonly answer: unknown;
  readonly inputs: unknown;
  readonly methodVersion: number;
  readonly overrideReason: string;
  /** Whether its buy is fixed with it now. */
  readonly isInForce: boolean;
};

/** Readable in the task 'review' alone, since the inputs hold every ceiling. */
export async function listFills(tx: Tx, storehouseId: string): Promise<StoredFill[]> {
  const rows = await tx
    .select({
      fillId: fills.fillId,
      answer: fills.answer,
      inputs: fillInputs.inputs,
      methodVersion: fills.methodVersion,
      overrideReason: fills.overrideReason,
      fixedBuyId: buys.buyId,
    })
    .from(fills)
    .innerJoin(fillInputs, joinOn(fillInputs, fills, 'fillId'))
    .leftJoin(
      buys,
      and(eq(buys.storehouseId, fills.storehouseId), isNotNull(buys.fillId), eq(buys.fillId, fills.fillId)),
    )
    .where(eq(fills.storehouseId, storehouseId))
    .orderBy(asc(fills.fillId));
  return rows.map(({ fixedBuyId, ...fill }) => ({ ...fill, isInForce: fixedBuyId !== null }));
}

/** The households whose ceilings stand in a fill, or whose needs in a split. */
export async function listReviewedHouseholdIds(tx: Tx, storehouseId: string): Promise<string[]> {
  const rows = await tx.execute<{ household_id: string }>(sql`
    select h.household_id from book.household h where h.storehouse_id = ${storehouseId} and h.household_id::text in (
      select p ->> 'householdId' from book.fill_inputs i, jsonb_array_elements(i.inputs -> 'pledges') p
        where i.storehouse_id = ${storehouseId} and p -> 'ceiling' <> 'null'::jsonb
      union
      select c ->> 'ownerId' from book.split_inputs i, jsonb_array_elements(i.inputs -> 'claims') c
        where i.storehouse_id = ${storehouseId} and c ? 'dailyNeedUnits')
    order by h.seat`);
  return rows.map((row) => row.household_id);
}

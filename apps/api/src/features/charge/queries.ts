import type { Tx } from '@sheafbook/db';
import { allotments, type BuyRow, type ChargeLineRow, chargeLines, chargeShares } from '@sheafbook/db/tables';
import type { SharingFacts } from '@sheafbook/ledger';
import { clearingAccount } from '@sheafbook/ledger';
import type { ChargedLine } from '@sheafbook/sharing';
import { assert } from '@sheafbook/units';
import { and, asc, eq, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';
import { listClaims, standingMinorUnits } from '../claim/queries.ts';
import { loadFill } from '../fill/queries.ts';
import { loadBalance } from '../money/queries.ts';
import { listWithdrawals } from '../withdrawal/queries.ts';
import type { Bill, LineAward } from './bills.ts';
import type { AnsweredCredit } from './lost-lines.ts';
import type { CommonLot } from './postings.ts';

/** What claims take off the bills of a buy. */
export async function listCredits(tx: Tx, storehouseId: string, buyId: string): Promise<AnsweredCredit[]> {
  const claims = await listClaims(tx, storehouseId, buyId);
  return claims.map((claim) => ({
    kind: claim.kind,
    buyLineId: claim.buyLineId,
    minorUnits: standingMinorUnits(claim),
    isAnswered: claim.state !== 'open',
  }));
}

/** What an order will cost whose bill isn't in yet, line by line, with its freight. */
export async function listExpectedBills(tx: Tx, storehouseId: string, buyId: string): Promise<Bill[]> {
  const rows = await tx.execute<{ kind: Bill['kind']; buy_line_id: string | null; minor_units: string }>(sql`
    with o as (select * from book.supplier_order so where so.storehouse_id = ${storehouseId} and so.buy_id = ${buyId}
      and so.cancelled_at is null and not exists (select from book.invoice i where i.storehouse_id = so.storehouse_id
        and i.buy_id = so.buy_id and i.supplier_id = so.supplier_id and i.voided_at is null))
    select 'goods' as kind, l.buy_line_id, sum(l.goods_minor_units) as minor_units from o
      join book.order_line l on l.storehouse_id = o.storehouse_id and l.supplier_order_id = o.supplier_order_id
      group by l.buy_line_id
    union all select 'freight', null, sum(o.freight_minor_units) from o having sum(o.freight_minor_units) > 0`);
  return rows.map((row) => ({
    kind: row.kind,
    buyLineId: row.buy_line_id,
    minorUnits: Number(row.minor_units),
  }));
}

/** What every owner is promised of each line, common stock's unfilled mass included. */
export async function listAllotmentsOfBuy(tx: Tx, storehouseId: string, buyId: string): Promise<LineAward[]> {
  return tx
    .select({ buyLineId: allotments.buyLineId, ownerId: allotments.ownerId, grams: allotments.grams })
    .from(allotments)
    .where(and(eq(allotments.storehouseId, storehouseId), eq(allotments.buyId, buyId)));
}

/** What withdrawals left of their deposits in the clearing account, less what was given back of it. */
export async function sumWithheldDeposits(tx: Tx, storehouseId: string, buyId: string): Promise<number> {
  const [row] = await tx.execute<{ withheld: string }>(sql`
    select coalesce(sum(case when c.account_id = m.source_id then m.amount else -m.amount end), 0) as withheld
    from book.account c
    join book.account d on d.storehouse_id = c.storehouse_id and d.kind = 'buy_deposit' and d.cause_id = c.cause_id
    join book.movement m on m.storehouse_id = c.storehouse_id
      and ((m.source_id = c.account_id and m.destination_id = d.account_id)
        or (m.source_id = d.account_id and m.destination_id = c.account_id))
    where c.storehouse_id = ${storehouseId} and c.kind = 'buy_clearing' and c.cause_id = ${buyId}`);
  return Number(row?.withheld ?? 0);
}

export function loadClearing(tx: Tx, storehouseId: string, buyId: string): Promise<number> {
  return loadBalance(tx, storehouseId, clearingAccount(buyId));
}

/**
 * Households that came in by taking over what another gave up, and were promised nothing when the buy was fixed: the
 * withdrawer goes on bearing its part per household, so they bear none.
 */
export async function listStandIns(tx: Tx, { storehouseId, buyId, fillId }: BuyRow): Promise<string[]> {
  const withdrawals = await listWithdrawals(tx, storehouseId, buyId);
  const takers = withdrawals.flatMap(({ answer }) => answer.lines.flatMap((line) => line.placements));
  if (takers.length === 0 || fillId === null) return [];
  const { answer } = await loadFill(tx, storehouseId, fillId);
  const promised = answer.lines.flatMap((line) => line.pledges.filter((pledge) => pledge.grams > 0));
  const inFromTheStart = new Set(promised.map((pledge) => pledge.householdId));
  return takers
    .filter((taker) => taker.takenAs === 'waitlist' && !inFromTheStart.has(taker.ownerId))
    .map((taker) => taker.ownerId);
}

/** Suppliers of whom something of this buy landed and who have not billed it. Who sent nothing has nothing to bill. */
export async function listUnbilledSuppliers(tx: Tx, storehouseId: string, buyId: string): Promise<string[]> {
  const rows = await tx.execute<{ supplier_id: string }>(sql`
    select distinct d.supplier_id from book.delivery d
    join book.bag b on b.storehouse_id = d.storehouse_id and b.delivery_id = d.delivery_id and b.decision <> 'refused'
    where d.storehouse_id = ${storehouseId} and d.buy_id = ${buyId} and not exists (select from book.invoice i
      where i.storehouse_id = d.storehouse_id and i.buy_id = d.buy_id and i.supplier_id = d.supplier_id
        and i.voided_at is null)
    order by d.supplier_id`);
  return rows.map((row) => row.supplier_id);
}

/** What sharing out is judged by, but for the lines: every bag, and every lot to the gram. */
export async function loadSharingFacts(tx: Tx, storehouseId: string, buyId: string): Promise<SharingFacts> {
  const bags = await tx.execute<{ bag_id: string; is_weighed: boolean }>(sql`
    select b.bag_id, b.weighed_at is not null or b.is_exempt_from_weighing as is_weighed from book.bag b
    where b.storehouse_id = ${storehouseId} and b.buy_id = ${buyId} and b.decision <> 'refused' order by b.bag_id`);
  return {
    bags: bags.map((row) => ({ bagId: row.bag_id, isWeighedOrExempted: row.is_weighed })),
    lines: await listLandedLines(tx, storehouseId, buyId),
    lots: await listLotFacts(tx, storehouseId, buyId),
  };
}

/** The lines of which something has landed that is not on hold, with the rule of their first split. */
async function listLandedLines(tx: Tx, storehouseId: string, buyId: string): Promise<SharingFacts['lines']> {
  const rows = await tx.execute<{ buy_line_id: string; rule: string | null }>(sql`
    select distinct b.buy_line_id, (select s.rule from book.split s where s.storehouse_id = b.storehouse_id
      and s.buy_line_id = b.buy_line_id and s.undone_at is null order by s.round_no limit 1) as rule
    from book.bag b
    where b.storehouse_id = ${storehouseId} and b.buy_id = ${buyId} and b.decision <> 'refused'
      and not exists (select from book.held h where h.storehouse_id = b.storehouse_id and h.vessel_id = b.bag_id)
      and exists (select from book.account i where i.storehouse_id = b.storehouse_id and i.vessel_id = b.bag_id
        and i.inflow > i.outflow)
    order by b.buy_line_id`);
  return rows.map((row) => ({ lineId: row.buy_line_id, ruleName: row.rule }));
}

async function listLotFacts(tx: Tx, storehouseId: string, buyId: string): Promise<SharingFacts['lots']> {
  const rows = await tx.execute<
    Record<'lot_id' | 'landed' | 'on_hold' | 'shared' | 'common' | 'lost', string>
  >(sql`
    with lots as (select l.storehouse_id, l.lot_id from book.lot l join book.buy_line bl
        on bl.storehouse_id = l.storehouse_id and bl.buy_line_id = l.buy_line_id
        where l.storehouse_id = ${storehouseId} and bl.buy_id = ${buyId}),
    mass as (select l.lot_id, a.vessel_kind, a.vessel_id, o.kind as owner_kind, a.inflow - a.outflow as grams from lots l
        join book.account a on a.storehouse_id = l.storehouse_id and a.unit_id = l.lot_id and a.kind = 'mass'
        join book.owner o on o.storehouse_id = a.storehouse_id and o.owner_id = a.owner_id),
    pieces as (select b.lot_id, o.kind as owner_kind, p.grams from book.share_piece p
        join book.split s on s.storehouse_id = p.storehouse_id and s.split_id = p.split_id and s.undone_at is null
        join book.bag b on b.storehouse_id = p.storehouse_id and b.bag_id = p.bag_id
        join book.owner o on o.storehouse_id = p.storehouse_id and o.owner_id = p.owner_id
        where p.storehouse_id = ${storehouseId} and s.buy_id = ${buyId})
    select l.lot_id,
      coalesce((select -sum(grams) from mass m where m.lot_id = l.lot_id and vessel_kind = 'supplier'), 0) as landed,
      coalesce((select sum(grams) from mass m where m.lot_id = l.lot_id and vessel_kind = 'bag'
        and owner_kind = 'unassigned' and exists (select from book.held h where h.storehouse_id = l.storehouse_id
          and h.vessel_id = m.vessel_id)), 0) as on_hold,
      coalesce((select sum(grams) from pieces p where p.lot_id = l.lot_id and owner_kind = 'household'), 0) as shared,
      coalesce((select sum(grams) from pieces p where p.lot_id = l.lot_id and owner_kind = 'common'), 0) as common,
      coalesce((select sum(grams) from mass m where m.lot_id = l.lot_id and owner_kind = 'unassigned'
        and vessel_kind not in ('bag', 'container', 'supplier')), 0) as lost
    from lots l order by l.lot_id`);
  return rows.map((row) => ({
    lotId: row.lot_id,
    landedGrams: Number(row.landed),
    onHoldGrams: Number(row.on_hold),
    sharedGrams: Number(row.shared),
    commonGrams: Number(row.common),
    lostGrams: Number(row.lost),
  }));
}

/** The lots that common stock was awarded of a buy, line by line. */
export async function listCommonLots(
  tx: Tx,
  storehouseId: string,
  { buyId, commonId }: { buyId: string; commonId: string },
): Promise<CommonLot[]> {
  const rows = await tx.execute<{ buy_line_id: string; lot_id: string; grams: string }>(sql`
    select b.buy_line_id, b.lot_id, sum(p.grams) as grams from book.share_piece p
    join book.split s on s.storehouse_id = p.storehouse_id and s.split_id = p.split_id and s.undone_at is null
    join book.bag b on b.storehouse_id = p.storehouse_id and b.bag_id = p.bag_id
    where p.storehouse_id = ${storehouseId} and s.buy_id = ${buyId} and p.owner_id = ${commonId}
    group by b.buy_line_id, b.lot_id order by b.lot_id`);
  return rows.map((row) => ({ buyLineId: row.buy_line_id, lotId: row.lot_id, grams: Number(row.grams) }));
}

/** What common stock stands at in account 1400, by lot. */
export async function listCommonStockBalances(tx: Tx, storehouseId: string): Promise<Map<string, number>> {
  const rows = await tx.execute<{ cause_id: string; balance: string }>(sql`
    select a.cause_id, a.inflow - a.outflow as balance from book.account a
    where a.storehouse_id = ${storehouseId} and a.kind = 'common_stock'`);
  return new Map(rows.map((row) => [row.cause_id, Number(row.balance)]));
}

export async function insertChargeLine(
  tx: Tx,
  line: {
    storehouseId: string;
    buyId: string;
    buyLineId: string | null;
    entryId: string;
    charged: ChargedLine;
  },
): Promise<void> {
  const { storehouseId, buyId, buyLineId, entryId, charged } = line;
  const [row] = await tx
    .insert(chargeLines)
    .values({
      storehouseId,
      buyId,
      buyLineId,
      entryId,
      costLine: charged.costLineId,
      minorUnits: charged.minorUnits,
    })
    .returning({ chargeLineId: chargeLines.chargeLineId });
  assert(row, 'an insert returns its row');
  await tx.insert(chargeShares).values(
    charged.shares.map((share) => ({
      storehouseId,
      chargeLineId: row.chargeLineId,
      ownerId: share.ownerId,
      minorUnits: share.minorUnits,
      weight: String(share.weight),
      gotSpareUnit: share.gotSpareUnit,
    })),
  );
}

export type StoredChargeLine = ChargeLineRow & { readonly shares: ChargedLine['shares'] };

/** The charges of a buy in the order they were made. */
export async function listChargeLines(
  tx: Tx,
  storehouseId: string,
  buyId: string,
): Promise<StoredChargeLine[]> {
  const rows = await tx
    .select({ line: chargeLines, share: chargeShares })
    .from(chargeLines)
    .innerJoin(chargeShares, joinOn(chargeShares, chargeLines, 'chargeLineId'))
    .where(and(eq(chargeLines.storehouseId, storehouseId), eq(chargeLines.buyId, buyId)))
    .orderBy(asc(chargeLines.chargeLineId), asc(chargeShares.ownerId));
  const lines = new Map(rows.map(({ line }) => [line.chargeLineId, line]));
  return [...lines.values()].map((line) => ({
    ...line,
    shares: rows
      .filter((row) => row.line.chargeLineId === line.chargeLineId)
      .map(({ share: { ownerId, minorUnits, weight, gotSpareUnit } }) => ({
        ownerId,
        minorUnits,
        weight: Number(weight),
        gotSpareUnit,
      })),
  }));
}

export async function loadChargeLine(
  tx: Tx,
  storehouseId: string,
  { buyId, chargeLineId }: { buyId: string; chargeLineId: string },
): Promise<StoredChargeLine> {
  const lines = await listChargeLines(tx, storehouseId, buyId);
  const line = lines.find((candidate) => candidate.chargeLineId === chargeLineId);
  if (!line) throw new Problem('thing-not-found', { thing: 'charge line' });
  return line;
}

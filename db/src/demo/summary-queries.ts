import { mealsOf } from '@sheafbook/giving';
import { type SQL, sql } from 'drizzle-orm';
import type { Db, Tx } from '../connect.ts';

/** Reads in one snapshot as the app's unprivileged role, behind the storehouse's own policies. */
export function insideStorehouse<Result>(
  db: Db,
  storehouseId: string,
  read: (tx: Tx) => Promise<Result>,
): Promise<Result> {
  return db.transaction(
    async (tx) => {
      await tx.execute(sql`select set_config('app.storehouse', ${storehouseId}, true)`);
      return read(tx);
    },
    { isolationLevel: 'repeatable read', accessMode: 'read only' },
  );
}

export async function loadStorehouse(tx: Tx): Promise<{ name: string; currency: string }> {
  const [row] = await tx.execute<{ name: string; currency: string }>(
    sql`select name, currency from book.storehouse`,
  );
  if (!row) throw new Error('there is no storehouse to sum up');
  return row;
}

/** Sessions that took place, the containers that stand from them, and slots of one line that overlap: counted from the tables. */
export async function sumUpPacking(tx: Tx) {
  const sessions = sql`select count(*) as figure from book.packing_session where stage in ('signed', 'settled')`;
  const containers = sql`select count(*) as figure from book.packing_pour where undone_entry_id is null`;
  const overlaps = sql`select count(*) as figure from book.packing_slot a
    join book.packing_slot b on b.storehouse_id = a.storehouse_id and b.packing_session_id = a.packing_session_id
      and b.line = a.line and b.packing_slot_id > a.packing_slot_id
    where a.state = 'booked' and b.state = 'booked' and a.starts_at < b.ends_at and b.starts_at < a.ends_at`;
  // What does not stand at 0.00 counts whichever way it is off, so that two days can't hide each other.
  const clearing = sql`select sum(abs(inflow - outflow)) as figure from book.account where kind = 'session_clearing'`;
  const seamChecks = sql`select count(*) as figure from book.seal_check`;
  return {
    sessions: await loadNumber(tx, sessions),
    containers: await loadNumber(tx, containers),
    seamChecks: await loadNumber(tx, seamChecks),
    overlaps: await loadNumber(tx, overlaps),
    clearingMinorUnits: await loadNumber(tx, clearing),
  };
}

/** Sessions whose grams are signed for and whose costs nobody bears yet. */
export const countUnsettled = (tx: Tx) =>
  loadNumber(tx, sql`select count(*) as figure from book.packing_session where stage = 'signed'`);

/** What households and the store bear of all packing days, as the settlements say and as the book moved it. */
export async function sumPackingCosts(tx: Tx) {
  const settled = sql`select sum(c.minor_units) as figure from book.session_cost c
    join book.session_settlement s using (storehouse_id, session_settlement_id) where s.undone_at is null`;
  const shared = sql`select sum(a.outflow) as figure from book.account a where a.kind = 'session_clearing'`;
  return { settledMinorUnits: await loadNumber(tx, settled), sharedMinorUnits: await loadNumber(tx, shared) };
}

/** A sum comes as text, since it may pass what a driver takes for a number. */
async function loadNumber(tx: Tx, query: SQL): Promise<number> {
  const [row] = await tx.execute<{ figure: string | null }>(query);
  return Number(row?.figure ?? 0);
}

/** Lots of the buy, by its lines: what was brought in from elsewhere is no lot of it. */
const lotsOf = (buyId: string) =>
  sql`(select l.lot_id from book.lot l join book.buy_line b using (storehouse_id, buy_line_id) where b.buy_id = ${buyId})`;

/** Net grams that came from the supplier, a bag sent back taken off again. */
export const sumDeliveredGrams = (tx: Tx, buyId: string) =>
  loadNumber(
    tx,
    sql`select sum(outflow - inflow) as figure from book.account
      where vessel_kind = 'supplier' and unit_id in ${lotsOf(buyId)}`,
  );

/** What every split awarded, to households and to common stock. */
export const sumSharedGrams = (tx: Tx, buyId: string) =>
  loadNumber(
    tx,
    sql`select sum(s.award_grams) as figure from book.share s join book.split p using (storehouse_id, split_id)
      where p.buy_id = ${buyId} and p.undone_at is null`,
  );

/** What was lost while it was nobody’s yet: spilled, sampled, thrown away. */
export const sumLostGrams = (tx: Tx, buyId: string) =>
  loadNumber(
    tx,
    sql`select sum(a.inflow - a.outflow) as figure from book.account a
      join book.owner o on o.storehouse_id = a.storehouse_id and o.owner_id = a.owner_id
      where o.kind = 'unassigned' and a.vessel_kind not in ('bag', 'container', 'supplier')
        and a.unit_id in ${lotsOf(buyId)}`,
  );

/** What went from bags into containers, a pour that was undone taken off again. */
export const sumPouredGrams = (tx: Tx, buyId: string) =>
  loadNumber(
    tx,
    sql`select sum(case when src.vessel_kind = 'bag' then m.amount else -m.amount end) as figure
      from book.movement m
      join book.account src on src.storehouse_id = m.storehouse_id and src.account_id = m.source_id
      join book.account dst on dst.storehouse_id = m.storehouse_id and dst.account_id = m.destination_id
      where m.unit_id in ${lotsOf(buyId)}
        and (src.vessel_kind, dst.vessel_kind) in (('bag', 'container'), ('container', 'bag'))`,
  );

/** Grams of the buy that belong to nobody: unsplit, or on hold. */
export const sumUnassignedGrams = (tx: Tx, buyId: string) =>
  loadNumber(
    tx,
    sql`select sum(a.inflow - a.outflow) as figure from book.account a
      join book.owner o on o.storehouse_id = a.storehouse_id and o.owner_id = a.owner_id
      where o.kind = 'unassigned' and a.vessel_kind = 'bag' and a.unit_id in ${lotsOf(buyId)}`,
  );

/** The bills as they were entered, less what was granted on claims, less what came back after the sharing out. */
export const sumBilledMinorUnits = (tx: Tx, buyId: string) =>
  loadNumber(
    tx,
    sql`select
      (select coalesce(sum(l.minor_units), 0) from book.invoice_line l join book.invoice i using (storehouse_id, invoice_id)
        where i.buy_id = ${buyId} and i.voided_at is null)
      - (select coalesce(sum(credited_minor_units), 0) from book.claim where buy_id = ${buyId})
      - (select coalesce(sum(case when dst.kind in ('bank', 'cash_tin', 'supplier') then m.amount else -m.amount end), 0)
          from book.movement m join book.entry e using (storehouse_id, entry_id)
          join book.account dst on dst.storehouse_id = m.storehouse_id and dst.account_id = m.destination_id
          where e.buy_id = ${buyId} and e.what in ('late-credit', 'late-bill')) as figure`,
  );

/** What the ledger moved onto households and common stock for the buy: out of its clearing, and late credits back. */
export const sumChargedMinorUnits = (tx: Tx, buyId: string) =>
  loadNumber(
    tx,
    sql`select sum(case when dst.kind in ('household', 'common_stock') then m.amount else -m.amount end) as figure
      from book.movement m join book.entry e using (storehouse_id, entry_id)
      join book.account src on src.storehouse_id = m.storehouse_id and src.account_id = m.source_id
      join book.account dst on dst.storehouse_id = m.storehouse_id and dst.account_id = m.destination_id
      where e.buy_id = ${buyId} and (src.kind in ('household', 'common_stock')) <> (dst.kind in ('household', 'common_stock'))
        and ('buy_clearing' in (src.kind, dst.kind) or e.what in ('late-credit', 'late-bill'))`,
  );

/** The clearing account: above zero the buy cost more than was charged so far. */
export const sumClearing = (tx: Tx, buyId: string) =>
  loadNumber(
    tx,
    sql`select sum(inflow - outflow) as figure from book.account
      where kind = 'buy_clearing' and cause_id = ${buyId}`,
  );

/** Deposits that are still held for the buy. */
export const sumDeposits = (tx: Tx, buyId: string) =>
  loadNumber(
    tx,
    sql`select sum(outflow - inflow) as figure from book.account
      where kind = 'buy_deposit' and cause_id = ${buyId}`,
  );

/** What stands open with the suppliers and carriers that billed the buy; nothing once they are paid. */
export const sumOpenWithSuppliers = (tx: Tx, buyId: string) =>
  loadNumber(
    tx,
    sql`select sum(abs(inflow - outflow)) as figure from book.account
      where kind in ('supplier', 'supplier_claim')
        and owner_id in (select supplier_id from book.invoice where buy_id = ${buyId})`,
  );

export type ChargeRow = { household: string; minorUnits: number; grams: number };

/** What each household bears of a buy and what it got of it; common stock comes last, if it took something. */
export async function listCharges(tx: Tx, buyId: string): Promise<ChargeRow[]> {
  const rows = await tx.execute<{ name: string | null; minor_units: string; grams: string }>(sql`
    with charge as (
      select s.owner_id, sum(s.minor_units) as minor_units from book.charge_share s
      join book.charge_line l using (storehouse_id, charge_line_id) where l.buy_id = ${buyId} group by s.owner_id),
    award as (
      select s.owner_id, sum(s.award_grams) as grams from book.share s
      join book.split p using (storehouse_id, split_id) where p.buy_id = ${buyId} and p.undone_at is null
      group by s.owner_id)
    select h.name, coalesce(c.minor_units, 0) as minor_units, coalesce(a.grams, 0) as grams
    from charge c full join award a using (owner_id)
    left join book.household h on h.household_id = coalesce(c.owner_id, a.owner_id)
    where coalesce(c.minor_units, 0) <> 0 or coalesce(a.grams, 0) <> 0
    order by h.seat nulls last`);
  return rows.map((row) => ({
    household: row.name ?? 'common stock',
    minorUnits: Number(row.minor_units),
    grams: Number(row.grams),
  }));
}

export async function loadBuy(tx: Tx, buyId: string): Promise<{ stage: string }> {
  const [row] = await tx.execute<{ stage: string }>(sql`select stage from book.buy where buy_id = ${buyId}`);
  if (!row) throw new Error('there is no such buy to sum up');
  return row;
}

/** Above zero a household owes. */
export async function listBalances(tx: Tx): Promise<Map<string, number>> {
  const rows = await tx.execute<{ household_id: string; balance: string }>(sql`
    select h.household_id, coalesce(sum(a.inflow - a.outflow), 0) as balance from book.household h
    left join book.account a on a.kind = 'household' and a.owner_id = h.household_id
    group by h.household_id`);
  return new Map(rows.map((row) => [row.household_id, Number(row.balance)]));
}

export type LedgerFigures = {
  entries: number;
  movements: number;
  unitsOutOfBalance: number;
  accountsDrifted: number;
};

/** Counts the book, the units that don't add up to nothing, and the accounts whose totals no movement explains. */
export async function loadLedger(tx: Tx): Promise<LedgerFigures> {
  return {
    entries: await loadNumber(tx, sql`select count(*) as figure from book.entry`),
    movements: await loadNumber(tx, sql`select count(*) as figure from book.movement`),
    unitsOutOfBalance: await loadNumber(
      tx,
      sql`select count(*) as figure from (select from book.account group by unit_id
        having sum(inflow - outflow) <> 0) as unbalanced`,
    ),
    accountsDrifted: await loadNumber(
      tx,
      sql`select count(*) as figure from book.account a
        where a.inflow <> (select coalesce(sum(amount), 0) from book.movement m
          where m.storehouse_id = a.storehouse_id and m.destination_id = a.account_id)
        or a.outflow <> (select coalesce(sum(amount), 0) from book.movement m
          where m.storehouse_id = a.storehouse_id and m.source_id = a.account_id)`,
    ),
  };
}

export type GivingFigures = { offered: number; matched: number; givenGrams: number; meals: number };

/** Containers that were offered to members, those that went out on a manifest, and the grams that a pantry kept. */
export async function loadGiving(tx: Tx): Promise<GivingFigures> {
  const givenGrams = await loadNumber(
    tx,
    sql`select coalesce(sum(a.inflow - a.outflow), 0) as figure from book.account a where a.vessel_kind = 'given'`,
  );
  return {
    offered: await loadNumber(tx, sql`select count(*) as figure from book.offer_container`),
    matched: await loadNumber(tx, sql`select count(*) as figure from book.gift_line`),
    givenGrams,
    meals: mealsOf(givenGrams),
  };
}

/** Grams that receipts say a pantry kept: the same figure, from the other side. */
export const sumAcceptedGrams = (tx: Tx): Promise<number> =>
  loadNumber(
    tx,
    sql`select coalesce(sum(grams) filter (where is_accepted), 0) as figure from book.gift_line`,
  );

export type LoanFigures = { lent: number; returned: number; overlaps: number; trueScales: number };

/** Counts loans, the pairs of times that hold one piece at one moment, and the scales that were found true. */
export async function loadLoans(tx: Tx): Promise<LoanFigures> {
  return {
    lent: await loadNumber(tx, sql`select count(*) as figure from book.loan`),
    returned: await loadNumber(tx, sql`select count(in_at) as figure from book.loan`),
    overlaps: await loadNumber(
      tx,
      sql`select count(*) as figure from book.booking a
        join book.booking b on b.storehouse_id = a.storehouse_id and b.equipment_unit_id = a.equipment_unit_id
          and a.booking_id < b.booking_id and a.blocked_from < b.blocked_to and b.blocked_from < a.blocked_to
        where a.state in ('offered', 'booked', 'out', 'returned')
          and b.state in ('offered', 'booked', 'out', 'returned')`,
    ),
    trueScales: await loadNumber(
      tx,
      sql`select count(distinct equipment_unit_id) as figure from book.scale_check
        where abs(shown_grams - laid_grams) <= limit_grams`,
    ),
  };
}

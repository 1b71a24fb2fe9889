import type { Tx } from '@sheafbook/db';
import {
  accounts,
  buyLines,
  buys,
  claims,
  equipmentItems,
  equipmentUnits,
  foods,
  households,
  loans,
  suppliers,
} from '@sheafbook/db/tables';
import type { MoneyKind, MoneyTotals } from '@sheafbook/ledger';
import { and, asc, eq, ne, or, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** Each money account's running totals, or what they were through a day. */
export async function listMoneyTotals(
  tx: Tx,
  storehouseId: string,
  throughOn?: string,
): Promise<MoneyTotals[]> {
  if (throughOn === undefined) {
    const rows = await tx
      .select({ kind: accounts.kind, inflow: accounts.inflow, outflow: accounts.outflow })
      .from(accounts)
      .where(and(eq(accounts.storehouseId, storehouseId), eq(accounts.unitKind, 'currency')));
    return rows.map((row) => ({ ...row, kind: row.kind as MoneyKind }));
  }
  const rows = await tx.execute<{ kind: MoneyKind; inflow: string; outflow: string }>(sql`
    with a as (select account_id, kind from book.account
      where storehouse_id = ${storehouseId} and unit_kind = 'currency'),
    m as (
      select a.*, m.entry_id, m.amount as inflow, 0 as outflow from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id
      union all
      select a.*, m.entry_id, 0, m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id)
    select m.kind, sum(m.inflow) as inflow, sum(m.outflow) as outflow
    from m join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    where e.on_day <= ${throughOn}::date
    group by m.account_id, m.kind`);
  return rows.map(({ kind, inflow, outflow }) => ({
    kind,
    inflow: Number(inflow),
    outflow: Number(outflow),
  }));
}

/** What an entry moved between a buy's clearing account and accounts of one kind; costs above zero. */
export type ClearingPart = {
  readonly entryId: string;
  readonly entryNo: number;
  readonly onDay: string;
  readonly what: string;
  readonly note: string;
  readonly otherKind: MoneyKind;
  /** Whose account it is: a household, a supplier; common stock and the store's own have no name. */
  readonly otherName: string | null;
  readonly minorUnits: number;
};

export async function listClearingParts(
  tx: Tx,
  storehouseId: string,
  buyId: string,
): Promise<ClearingPart[]> {
  const rows = await tx.execute<{
    entry_id: string;
    entry_no: string;
    on_day: string;
    what: string;
    note: string;
    other_kind: MoneyKind;
    other_name: string | null;
    amount: string;
  }>(sql`
    with a as (select account_id from book.account
      where storehouse_id = ${storehouseId} and kind = 'buy_clearing' and cause_id = ${buyId}),
    m as (
      select m.entry_id, m.source_id as other_id, m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id
      union all
      select m.entry_id, m.destination_id, -m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id)
    select e.entry_id, e.entry_no, e.on_day, e.what, e.note, o.kind as other_kind,
      coalesce(h.name, s.name) as other_name, sum(m.amount) as amount
    from m
    join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    join book.account o on o.storehouse_id = ${storehouseId} and o.account_id = m.other_id
    left join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = o.owner_id
    left join book.supplier s on s.storehouse_id = ${storehouseId} and s.supplier_id = o.owner_id
    group by e.entry_id, e.entry_no, e.on_day, e.what, e.note, o.kind, h.seat, h.name, s.name
    order by e.entry_no, o.kind, h.seat, s.name`);
  return rows.map((row) => ({
    entryId: row.entry_id,
    entryNo: Number(row.entry_no),
    onDay: row.on_day,
    what: row.what,
    note: row.note,
    otherKind: row.other_kind,
    otherName: row.other_name,
    minorUnits: Number(row.amount),
  }));
}

/** Deposits that are held, by buy and seat. */
export async function listHeldDeposits(tx: Tx, storehouseId: string) {
  return tx
    .select({
      buyId: buys.buyId,
      buy: buys.name,
      stage: buys.stage,
      householdId: households.householdId,
      household: households.name,
      accountId: accounts.accountId,
      heldMinorUnits: sql<number>`${accounts.outflow} - ${accounts.inflow}`.mapWith(Number),
    })
    .from(accounts)
    .innerJoin(buys, joinOn(buys, accounts, 'buyId', 'causeId'))
    .innerJoin(households, joinOn(households, accounts, 'householdId', 'ownerId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.kind, 'buy_deposit'),
        ne(accounts.outflow, accounts.inflow),
      ),
    )
    .orderBy(asc(buys.name), asc(households.seat));
}

/** Deposits that are held for equipment, by who borrowed it and when. */
export async function listHeldLoanDeposits(tx: Tx, storehouseId: string) {
  return tx
    .select({
      loanId: loans.loanId,
      item: equipmentItems.name,
      unitNo: equipmentUnits.unitNo,
      dueAt: loans.dueAt,
      inAt: loans.inAt,
      householdId: households.householdId,
      household: households.name,
      accountId: accounts.accountId,
      heldMinorUnits: sql<number>`${accounts.outflow} - ${accounts.inflow}`.mapWith(Number),
    })
    .from(accounts)
    .innerJoin(loans, joinOn(loans, accounts, 'loanId', 'causeId'))
    .innerJoin(equipmentUnits, joinOn(equipmentUnits, loans, 'equipmentUnitId'))
    .innerJoin(equipmentItems, joinOn(equipmentItems, equipmentUnits, 'equipmentItemId'))
    .innerJoin(households, joinOn(households, accounts, 'householdId', 'ownerId'))
    .where(
      and(
        eq(accounts.storehouseId, storehouseId),
        eq(accounts.kind, 'loan_deposit'),
        ne(accounts.outflow, accounts.inflow),
      ),
    )
    .orderBy(asc(loans.outAt), asc(households.seat));
}

/** Claims that the supplier has not answered, and any whose account is not at zero. */
export async function listOpenClaims(tx: Tx, storehouseId: string) {
  return tx
    .select({
      claimId: claims.claimId,
      buyId: claims.buyId,
      buy: buys.name,
      supplierId: claims.supplierId,
      supplier: suppliers.name,
      foodEn: foods.nameEn,
      foodEs: foods.nameEs,
      kind: claims.kind,
      because: claims.because,
      state: claims.state,
      raisedOn: claims.raisedOn,
      minorUnits: claims.minorUnits,
      creditedMinorUnits: claims.creditedMinorUnits,
      outstandingMinorUnits: sql<number>`coalesce(${accounts.inflow} - ${accounts.outflow}, 0)`.mapWith(
        Number,
      ),
    })
    .from(claims)
    .innerJoin(buys, joinOn(buys, claims, 'buyId'))
    .innerJoin(suppliers, joinOn(suppliers, claims, 'supplierId'))
    .leftJoin(
      accounts,
      and(
        eq(accounts.storehouseId, claims.storehouseId),
        eq(accounts.kind, 'supplier_claim'),
        eq(accounts.causeId, claims.claimId),
      ),
    )
    .leftJoin(buyLines, joinOn(buyLines, claims, 'buyLineId'))
    .leftJoin(foods, joinOn(foods, buyLines, 'foodId'))
    .where(
      and(
        eq(claims.storehouseId, storehouseId),
        or(eq(claims.state, 'open'), ne(accounts.inflow, accounts.outflow)),
      ),
    )
    .orderBy(asc(claims.raisedOn), asc(claims.claimId));
}

/** What a supplier's account came to and what it is made of; above zero we owe. */
export type SupplierStanding = {
  readonly supplierId: string;
  readonly supplier: string;
  readonly contact: string;
  readonly accountId: string | null;
  readonly broughtOverMinorUnits: number;
  readonly billedMinorUnits: number;
  readonly creditedMinorUnits: number;
  readonly paidMinorUnits: number;
  readonly lastPaidOn: string | null;
  readonly claimedMinorUnits: number;
};

/** Each supplier and carrier by name. An entry that was taken back counts with what it took back, so both are nothing. */
export async function listSupplierStandings(tx: Tx, storehouseId: string): Promise<SupplierStanding[]> {
  const rows = await tx.execute<Record<string, string | null>>(sql`
    with m as (
      select a.account_id, coalesce(undone.what, e.what) as what, e.on_day, m.owed
      from book.account a
      join lateral (
        select entry_id, amount as owed from book.movement
        where storehouse_id = ${storehouseId} and source_id = a.account_id
        union all
        select entry_id, -amount from book.movement
        where storehouse_id = ${storehouseId} and destination_id = a.account_id) m on true
      join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
      left join book.entry undone on undone.storehouse_id = ${storehouseId} and undone.entry_id = e.reverses_id
      where a.storehouse_id = ${storehouseId} and a.kind = 'supplier'),
    claimed as (
      select owner_id, sum(inflow - outflow) as minor_units from book.account
      where storehouse_id = ${storehouseId} and kind = 'supplier_claim' group by owner_id)
    select s.supplier_id, s.name, s.contact, a.account_id, max(claimed.minor_units) as claimed,
      sum(m.owed) filter (where m.what = 'opening-balance') as brought_over,
      sum(m.owed) filter (where m.what not in
        ('opening-balance', 'claim-credited', 'late-credit', 'supplier-paid')) as billed,
      -sum(m.owed) filter (where m.what in ('claim-credited', 'late-credit')) as credited,
      -sum(m.owed) filter (where m.what = 'supplier-paid') as paid,
      max(m.on_day) filter (where m.what = 'supplier-paid' and m.owed < 0) as last_paid_on
    from book.supplier s
    left join book.account a
      on a.storehouse_id = ${storehouseId} and a.kind = 'supplier' and a.owner_id = s.supplier_id
    left join m on m.account_id = a.account_id
    left join claimed on claimed.owner_id = s.supplier_id
    where s.storehouse_id = ${storehouseId}
    group by s.supplier_id, s.name, s.contact, a.account_id
    order by s.name`);
  return rows.map((row) => ({
    supplierId: row.supplier_id ?? '',
    supplier: row.name ?? '',
    contact: row.contact ?? '',
    accountId: row.account_id ?? null,
    broughtOverMinorUnits: Number(row.brought_over),
    billedMinorUnits: Number(row.billed),
    creditedMinorUnits: Number(row.credited),
    paidMinorUnits: Number(row.paid),
    lastPaidOn: row.last_paid_on ?? null,
    claimedMinorUnits: Number(row.claimed),
  }));
}

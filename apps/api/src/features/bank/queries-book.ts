import type { Tx } from '@sheafbook/db';
import type { BankEntry, BookedReceipt, EarlierLine, ExpectedMoney, KnownParty } from '@sheafbook/ledger';
import { sql } from 'drizzle-orm';
import { listOpenBills } from '../invoice/queries.ts';

/** An entry that moved the bank's account, in words enough to choose it by. */
export type EntryAtBank = BankEntry & {
  readonly entryNo: number;
  readonly what: string;
  readonly note: string;
  readonly party: string | null;
  readonly partyId: string | null;
  readonly isHousehold: boolean;
  readonly isOpening: boolean;
};

/**
 * Every entry that moved the bank's account and stands, with the day of the line it is matched with. What was taken back
 * and what took it back cancel, so neither is there.
 */
export async function listEntriesAtBank(
  tx: Tx,
  storehouseId: string,
): Promise<Omit<EntryAtBank, 'isBeforeLines'>[]> {
  const rows = await tx.execute<{
    entry_id: string;
    entry_no: string;
    on_day: string;
    what: string;
    note: string;
    minor_units: string;
    cleared_on: string | null;
    party: string | null;
    party_id: string | null;
    is_household: boolean;
  }>(sql`
    with a as (select account_id from book.account where storehouse_id = ${storehouseId} and kind = 'bank'),
    m as (
      select m.entry_id, m.amount, m.source_id as other_id from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id
      union all
      select m.entry_id, -m.amount, m.destination_id from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id)
    select e.entry_id, e.entry_no, e.on_day, e.what, e.note, sum(m.amount) as minor_units, max(l.on_day) as cleared_on,
      min(coalesce(h.name, s.name)) as party, min(coalesce(h.household_id, s.supplier_id)::text) as party_id,
      bool_or(h.household_id is not null) as is_household
    from m
    join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    join book.account o on o.storehouse_id = ${storehouseId} and o.account_id = m.other_id
    left join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = o.owner_id
    left join book.supplier s on s.storehouse_id = ${storehouseId} and s.supplier_id = o.owner_id
    left join book.bank_match b on b.storehouse_id = ${storehouseId} and b.entry_id = e.entry_id and b.undone_at is null
    left join book.bank_line l on l.storehouse_id = ${storehouseId} and l.bank_line_id = b.bank_line_id
    where e.reverses_id is null and not exists (select from book.entry r
      where r.storehouse_id = ${storehouseId} and r.reverses_id = e.entry_id)
    group by e.entry_id, e.entry_no, e.on_day, e.what, e.note having sum(m.amount) <> 0
    order by e.on_day, e.entry_no`);
  return rows.map((row) => ({
    entryId: row.entry_id,
    entryNo: Number(row.entry_no),
    onDay: row.on_day,
    what: row.what,
    note: row.note,
    minorUnits: Number(row.minor_units),
    clearedOn: row.cleared_on,
    party: row.party,
    partyId: row.party_id,
    isHousehold: row.is_household,
    isOpening: row.what === 'opening-balance',
  }));
}

/** The first day that the bank gave a line of; null while it gave none. */
export async function loadFirstDay(tx: Tx, storehouseId: string): Promise<string | null> {
  const [row] = await tx.execute<{ first: string | null }>(
    sql`select min(on_day) as first from book.bank_line where storehouse_id = ${storehouseId}`,
  );
  return row?.first ?? null;
}

/** Whoever a line of the bank may be of: households that are here or still owe, and suppliers. */
export async function listParties(tx: Tx, storehouseId: string): Promise<KnownParty[]> {
  const rows = await tx.execute<{
    id: string;
    kind: KnownParty['kind'];
    name: string;
    seat: number | null;
    people: string[];
  }>(
    sql`
    select h.household_id as id, 'household' as kind, h.name, h.seat, (select coalesce(array_agg(p.name order by p.name), '{}')
      from book.person p where p.storehouse_id = ${storehouseId} and p.household_id = h.household_id) as people
    from book.household h where h.storehouse_id = ${storehouseId}
    union all
    select s.supplier_id, 'supplier', s.name, null, '{}' from book.supplier s where s.storehouse_id = ${storehouseId}
    order by 2, 4, 3`,
  );
  return [...rows];
}

/** Lines that were matched before, with the household or supplier that their entry was about, the newest first. */
export async function listEarlierLines(tx: Tx, storehouseId: string): Promise<EarlierLine[]> {
  const rows = await tx.execute<{ words: string; party_id: string }>(sql`
    select l.words, min(a.owner_id::text) as party_id
    from book.bank_match b
    join book.bank_line l on l.storehouse_id = ${storehouseId} and l.bank_line_id = b.bank_line_id
    join book.movement m on m.storehouse_id = ${storehouseId} and m.entry_id = b.entry_id
    join book.account a on a.storehouse_id = ${storehouseId} and a.account_id in (m.source_id, m.destination_id)
      and a.kind in ('household', 'buy_deposit', 'supplier')
    where b.storehouse_id = ${storehouseId} and b.undone_at is null
    group by b.bank_match_id, l.words
    order by b.bank_match_id desc limit 2000`);
  return rows.map((row) => ({ words: row.words, partyId: row.party_id }));
}

/** What a household paid that stands in the book, on its balance or as a deposit, by whichever till. */
export async function listReceipts(
  tx: Tx,
  storehouseId: string,
  of: { householdId: string; minorUnits: number },
): Promise<(BookedReceipt & { entryNo: number; buy: string | null })[]> {
  const rows = await tx.execute<{
    entry_id: string;
    entry_no: string;
    on_day: string;
    what: string;
    is_at_bank: boolean;
    is_in_tin: boolean;
    buy: string | null;
  }>(sql`
    with a as (select account_id from book.account
      where storehouse_id = ${storehouseId} and owner_id = ${of.householdId} and kind in ('household', 'buy_deposit'))
    select e.entry_id, e.entry_no, e.on_day, e.what, b.name as buy, exists (select from book.bank_match k
        where k.storehouse_id = ${storehouseId} and k.entry_id = e.entry_id and k.undone_at is null) as is_at_bank,
      t.kind = 'cash_tin' as is_in_tin
    from a
    join book.movement m on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id
      and m.amount = ${of.minorUnits}
    join book.account t on t.storehouse_id = ${storehouseId} and t.account_id = m.destination_id
    join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
      and e.what in ('payment-received', 'deposit-received')
    left join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = e.buy_id
    where not exists (select from book.entry r where r.storehouse_id = ${storehouseId} and r.reverses_id = e.entry_id)
    order by e.entry_no`);
  return rows.map((row) => ({
    entryId: row.entry_id,
    entryNo: Number(row.entry_no),
    onDay: row.on_day,
    minorUnits: of.minorUnits,
    what: row.what === 'deposit-received' ? ('deposit' as const) : ('payment' as const),
    isAtBank: row.is_at_bank,
    isInTin: row.is_in_tin,
    buy: row.buy,
  }));
}

export type Expected = ExpectedMoney & {
  readonly party: string;
  readonly why: 'balance' | 'deposit' | 'bill';
};

/** What households owe now, and what deposits are asked for and not paid nor waived, by the day they are due. */
export async function listReceiptsDue(
  tx: Tx,
  storehouseId: string,
  todayOn: string,
): Promise<(Expected & { householdId: string; buyId: string | null })[]> {
  const rows = await tx.execute<{
    household_id: string;
    buy_id: string | null;
    party: string;
    due_on: string;
    minor_units: string;
    why: 'balance' | 'deposit';
  }>(sql`
    select h.household_id, null::uuid as buy_id, h.name as party, ${todayOn}::date as due_on, a.inflow - a.outflow as minor_units,
      'balance' as why, h.seat
    from book.account a join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = a.owner_id
    where a.storehouse_id = ${storehouseId} and a.kind = 'household' and a.inflow > a.outflow
    union all
    select h.household_id, d.buy_id, h.name, d.due_on, d.asked_minor_units - coalesce(a.outflow - a.inflow, 0), 'deposit', h.seat
    from book.deposit_ask d
    join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = d.household_id
    join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = d.buy_id and b.stage = 'fixed'
    left join book.account a on a.storehouse_id = ${storehouseId} and a.kind = 'buy_deposit'
      and a.owner_id = d.household_id and a.cause_id = d.buy_id
    where d.storehouse_id = ${storehouseId} and d.waived_by is null
      and d.asked_minor_units > coalesce(a.outflow - a.inflow, 0)
    order by 4, 7, 6`);
  return rows.map((row) => ({
    householdId: row.household_id,
    buyId: row.buy_id,
    party: row.party,
    dueOn: row.due_on,
    minorUnits: Number(row.minor_units),
    why: row.why,
  }));
}

/** What suppliers and carriers are owed, by the days on which their bills are due; what no bill asks is due now. */
export async function listPaymentsDue(tx: Tx, storehouseId: string, todayOn: string): Promise<Expected[]> {
  const open = await listOpenBills(tx, storehouseId);
  return open.map(({ supplier: party, dueOn, minorUnits }) => {
    return { party, dueOn: dueOn ?? todayOn, minorUnits, why: 'bill' as const };
  });
}

/** What the entry of a match is about beside its movements, for whatever takes it back. */
export async function loadAbout(tx: Tx, storehouseId: string, { entryId }: { entryId: string | null }) {
  const [row] = await tx.execute<{ buy_id: string | null; subject_id: string | null }>(sql`
    select buy_id, subject_id from book.entry where storehouse_id = ${storehouseId} and entry_id = ${entryId}`);
  return { buyId: row?.buy_id ?? undefined, subjectId: row?.subject_id ?? undefined };
}

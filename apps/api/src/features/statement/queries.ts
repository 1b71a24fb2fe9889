import type { Tx } from '@sheafbook/db';
import { accounts, dutyGrants, households, persons } from '@sheafbook/db/tables';
import type { BalanceLine } from '@sheafbook/ledger';
import { assert } from '@sheafbook/units';
import { and, asc, eq, gt, isNull, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** A line of a household's account as its statement prints it, with where it leads. */
export type AccountLine = BalanceLine & {
  readonly entryId: string;
  readonly note: string;
  /** Of the buy, or of the packing session, that the entry belongs to. */
  readonly buyName: string | null;
  readonly subjectId: string | null;
  readonly reversesEntryNo: number | null;
  readonly reversedByEntryNo: number | null;
  readonly enteredBy: string;
  readonly isEnteredFor: boolean;
};

type LineRow = {
  entry_id: string;
  entry_no: string;
  on_day: string;
  recorded_at: string;
  what: string;
  note: string;
  buy_id: string | null;
  buy_name: string | null;
  subject_id: string | null;
  reverses_no: string | null;
  reversed_by_no: string | null;
  entered_by: string;
  is_entered_for: boolean;
  amount: string;
};

/** Every movement on a household's balance, from its first; charges above zero. Each side goes by its own index. */
export async function listAccountLines(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<AccountLine[]> {
  const rows = await tx.execute<LineRow>(sql`
    with a as (select account_id from book.account
      where storehouse_id = ${storehouseId} and owner_id = ${householdId} and kind = 'household'),
    m as (
      select m.entry_id, m.line, m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id
      union all
      select m.entry_id, m.line, -m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id)
    select e.entry_id, e.entry_no, e.on_day, e.recorded_at, e.what, e.note, e.buy_id,
      coalesce(b.name, ps.name) as buy_name, e.subject_id,
      undone.entry_no as reverses_no, undoing.entry_no as reversed_by_no, p.name as entered_by,
      e.entered_for is not null as is_entered_for, m.amount
    from m
    join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    join book.person p on p.storehouse_id = ${storehouseId} and p.person_id = e.person_id
    left join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = e.buy_id
    left join book.packing_session ps on ps.storehouse_id = ${storehouseId} and ps.packing_session_id = e.subject_id
    left join book.entry undone on undone.storehouse_id = ${storehouseId} and undone.entry_id = e.reverses_id
    left join book.entry undoing on undoing.storehouse_id = ${storehouseId} and undoing.reverses_id = e.entry_id
    order by e.entry_no, m.line`);
  return rows.map((row) => ({
    entryId: row.entry_id,
    entryNo: Number(row.entry_no),
    onDay: row.on_day,
    recordedAt: row.recorded_at,
    what: row.what,
    note: row.note,
    causeId: row.buy_id,
    buyName: row.buy_name,
    subjectId: row.subject_id,
    reversesEntryNo: row.reverses_no === null ? null : Number(row.reverses_no),
    reversedByEntryNo: row.reversed_by_no === null ? null : Number(row.reversed_by_no),
    enteredBy: row.entered_by,
    isEnteredFor: row.is_entered_for,
    amountMinorUnits: Number(row.amount),
  }));
}

export type DepositLine = {
  readonly buyId: string;
  readonly buyName: string;
  readonly onDay: string;
  readonly recordedAt: string;
  readonly heldMinorUnits: number;
};

/** Every movement on a household's buy deposits; what is held stands above zero. */
export async function listDepositLines(
  tx: Tx,
  storehouseId: string,
  householdId: string,
): Promise<DepositLine[]> {
  const rows = await tx.execute<{
    buy_id: string;
    buy_name: string;
    on_day: string;
    recorded_at: string;
    held: string;
  }>(sql`
    with a as (select account_id, cause_id from book.account
      where storehouse_id = ${storehouseId} and owner_id = ${householdId} and kind = 'buy_deposit'),
    m as (
      select a.cause_id, m.entry_id, m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id
      union all
      select a.cause_id, m.entry_id, -m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id)
    select b.buy_id, b.name as buy_name, e.on_day, e.recorded_at, m.amount as held
    from m
    join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = m.cause_id`);
  return rows.map((row) => ({
    buyId: row.buy_id,
    buyName: row.buy_name,
    onDay: row.on_day,
    recordedAt: row.recorded_at,
    heldMinorUnits: Number(row.held),
  }));
}

/** What a household bears of one cost line of a buy. */
export type ChargePart = {
  readonly buyId: string;
  readonly buyName: string;
  readonly costLine: string;
  readonly buyLineId: string | null;
  readonly food: { readonly en: string; readonly es: string } | null;
  readonly lineMinorUnits: number;
  readonly minorUnits: number;
  readonly gotSpareUnit: boolean;
  readonly onDay: string;
  readonly recordedAt: string;
};

/** Charges that were not taken back by then. */
export async function listChargeParts(
  tx: Tx,
  storehouseId: string,
  of: { householdId: string; knownAt: string },
): Promise<ChargePart[]> {
  const rows = await tx.execute<{
    buy_id: string;
    buy_name: string;
    cost_line: string;
    buy_line_id: string | null;
    name_en: string | null;
    name_es: string | null;
    line_minor_units: string;
    minor_units: string;
    got_spare_unit: boolean;
    on_day: string;
    recorded_at: string;
  }>(sql`
    select l.buy_id, b.name as buy_name, l.cost_line, l.buy_line_id, f.name_en, f.name_es,
      l.minor_units as line_minor_units, s.minor_units, s.got_spare_unit, e.on_day, e.recorded_at
    from book.charge_share s
    join book.charge_line l on l.storehouse_id = ${storehouseId} and l.charge_line_id = s.charge_line_id
    join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = l.entry_id
    join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = l.buy_id
    left join book.buy_line bl on bl.storehouse_id = ${storehouseId} and bl.buy_line_id = l.buy_line_id
    left join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = bl.food_id
    where s.storehouse_id = ${storehouseId} and s.owner_id = ${of.householdId}
      and not exists (select from book.entry r where r.storehouse_id = ${storehouseId}
        and r.reverses_id = e.entry_id and r.recorded_at <= ${of.knownAt}::timestamptz)
    order by e.entry_no, bl.position, l.cost_line, l.charge_line_id`);
  return rows.map((row) => ({
    buyId: row.buy_id,
    buyName: row.buy_name,
    costLine: row.cost_line,
    buyLineId: row.buy_line_id,
    food: row.name_en === null || row.name_es === null ? null : { en: row.name_en, es: row.name_es },
    lineMinorUnits: Number(row.line_minor_units),
    minorUnits: Number(row.minor_units),
    gotSpareUnit: row.got_spare_unit,
    onDay: row.on_day,
    recordedAt: row.recorded_at,
  }));
}

/** The grams awarded of each line by the splits that stood at an instant. */
export async function sumAwards(
  tx: Tx,
  storehouseId: string,
  of: { householdId: string; knownAt: string },
): Promise<Map<string, number>> {
  const rows = await tx.execute<{ buy_line_id: string; award_grams: string }>(sql`
    select sp.buy_line_id, sum(s.award_grams) as award_grams
    from book.share s
    join book.split sp on sp.storehouse_id = ${storehouseId} and sp.split_id = s.split_id
    where s.storehouse_id = ${storehouseId} and s.owner_id = ${of.householdId}
      and sp.made_at <= ${of.knownAt}::timestamptz
      and (sp.undone_at is null or sp.undone_at > ${of.knownAt}::timestamptz)
    group by sp.buy_line_id`);
  return new Map(rows.map((row) => [row.buy_line_id, Number(row.award_grams)]));
}

/** Whom to ask about a statement. */
export async function listTreasurerNames(tx: Tx, storehouseId: string): Promise<string[]> {
  const rows = await tx
    .select({ name: persons.name })
    .from(dutyGrants)
    .innerJoin(persons, joinOn(persons, dutyGrants, 'personId'))
    .where(
      and(
        eq(dutyGrants.storehouseId, storehouseId),
        eq(dutyGrants.duty, 'treasurer'),
        isNull(dutyGrants.endedAt),
      ),
    )
    .orderBy(asc(persons.name));
  return rows.map((row) => row.name);
}

export type Standing = {
  readonly balanceMinorUnits: number;
  readonly deposits: readonly {
    readonly buyId: string;
    readonly buyName: string;
    readonly heldMinorUnits: number;
  }[];
};

/** What a household stands at now: its running balance, and the deposits held for it by buy. */
export async function loadStanding(tx: Tx, storehouseId: string, householdId: string): Promise<Standing> {
  const [row] = await tx.execute<{ balance: string; deposits: Standing['deposits'] }>(sql`
    select coalesce(sum(a.inflow - a.outflow) filter (where a.kind = 'household'), 0) as balance,
      coalesce(jsonb_agg(jsonb_build_object('buyId', b.buy_id, 'buyName', b.name,
        'heldMinorUnits', a.outflow - a.inflow) order by b.buy_id)
        filter (where a.kind = 'buy_deposit' and a.outflow > a.inflow), '[]') as deposits
    from book.account a
    left join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = a.cause_id
    where a.storehouse_id = ${storehouseId} and a.owner_id = ${householdId} and a.kind in ('household', 'buy_deposit')`);
  assert(row, 'an aggregate without group by returns one row');
  return { balanceMinorUnits: Number(row.balance), deposits: row.deposits };
}

const balance = sql<number>`coalesce(${accounts.inflow} - ${accounts.outflow}, 0)`.mapWith(Number);

/** Households with their running balance, by seat; one row more than the page holds. */
export async function listBalances(
  tx: Tx,
  storehouseId: string,
  page: { after?: number | undefined; limit: number; owing: boolean },
) {
  return tx
    .select({
      householdId: households.householdId,
      seat: households.seat,
      name: households.name,
      leftOn: households.leftOn,
      balanceMinorUnits: balance,
    })
    .from(households)
    .leftJoin(
      accounts,
      and(
        eq(accounts.storehouseId, households.storehouseId),
        eq(accounts.ownerId, households.householdId),
        eq(accounts.kind, 'household'),
      ),
    )
    .where(
      and(
        eq(households.storehouseId, storehouseId),
        page.after === undefined ? undefined : gt(households.seat, page.after),
        page.owing ? sql`coalesce(${accounts.inflow} - ${accounts.outflow}, 0) > 0` : undefined,
      ),
    )
    .orderBy(households.seat)
    .limit(page.limit + 1);
}

/**
 * The charges and payments of some households, each with its day. What was taken back counts together with what took it
 * back, on the day of the first: a payment that was undone leaves the charge as old as it is.
 */
export async function listDatedAmounts(tx: Tx, storehouseId: string, householdIds: readonly string[]) {
  const rows = await tx.execute<{ household_id: string; on_day: string; amount: string }>(sql`
    with recursive a as (select account_id, owner_id from book.account
      where storehouse_id = ${storehouseId} and kind = 'household'
        and owner_id = any(${sql.param([...householdIds])}::uuid[])),
    m as (
      select a.owner_id, m.entry_id, m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id
      union all
      select a.owner_id, m.entry_id, -m.amount from a join book.movement m
        on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id),
    back as (
      select m.owner_id, m.amount, e.entry_id, e.reverses_id, e.on_day
      from m join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
      union all
      select b.owner_id, b.amount, e.entry_id, e.reverses_id, e.on_day
      from back b join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = b.reverses_id),
    first as (
      select owner_id, on_day, sum(amount) as amount from back where reverses_id is null
      group by owner_id, entry_id, on_day)
    select owner_id as household_id, on_day, sum(amount) as amount
    from first where amount <> 0 group by owner_id, on_day, sign(amount)`);
  return rows.map((row) => ({
    householdId: row.household_id,
    dueOn: row.on_day,
    amountMinorUnits: Number(row.amount),
  }));
}

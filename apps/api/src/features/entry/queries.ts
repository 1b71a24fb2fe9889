import type { Tx } from '@sheafbook/db';
import { type MovementRow, movements } from '@sheafbook/db/tables';
import { CHART } from '@sheafbook/ledger';
import { and, asc, eq, inArray, type SQL, sql } from 'drizzle-orm';
import { Problem } from '../../platform/problem.ts';

export type EntryReading = {
  readonly entryId: string;
  readonly entryNo: number;
  readonly what: string;
  readonly onDay: string;
  readonly recordedAt: string;
  readonly note: string;
  readonly buyId: string | null;
  readonly buyName: string | null;
  readonly subjectId: string | null;
  readonly enteredBy: string;
  readonly enteredFor: string | null;
  readonly reversesEntryNo: number | null;
  readonly reversedByEntryNo: number | null;
};

type EntryRow = {
  entry_id: string;
  entry_no: string;
  what: string;
  on_day: string;
  recorded_at: string;
  note: string;
  buy_id: string | null;
  buy_name: string | null;
  subject_id: string | null;
  entered_by: string;
  entered_for: string | null;
  reverses_no: string | null;
  reversed_by_no: string | null;
};

type Filter = {
  readonly buy?: string | undefined;
  readonly household?: string | undefined;
  readonly account?: string | undefined;
  readonly chart?: string | undefined;
  readonly fromOn?: string | undefined;
  readonly toOn?: string | undefined;
  readonly words?: string | undefined;
  readonly what?: string | undefined;
};

/** One row more than the page holds. */
export async function listEntries(
  tx: Tx,
  storehouseId: string,
  page: Filter & { after?: number | undefined; limit: number; newestFirst: boolean },
): Promise<EntryReading[]> {
  const { after, newestFirst, buy, household, account, chart, fromOn, toOn, words, what } = page;
  const beyond = newestFirst ? sql`e.entry_no < ${after ?? 0}` : sql`e.entry_no > ${after ?? 0}`;
  const conditions = [
    ...(after === undefined ? [] : [beyond]),
    ...(buy === undefined ? [] : [sql`e.buy_id = ${buy}`]),
    ...(household === undefined ? [] : [touches(storehouseId, household)]),
    ...(account === undefined ? [] : [touchesAccounts(storehouseId, sql`account_id = ${account}`)]),
    ...(chart === undefined ? [] : [touchesAccounts(storehouseId, sql`kind = ${kindOf(chart)}`)]),
    ...(fromOn === undefined ? [] : [sql`e.on_day >= ${fromOn}`]),
    ...(toOn === undefined ? [] : [sql`e.on_day <= ${toOn}`]),
    ...(what === undefined ? [] : [sql`e.what = any(${sql.param(what.split(','))}::text[])`]),
    ...(words === undefined ? [] : [says(storehouseId, words)]),
  ];
  const order = newestFirst ? sql`e.entry_no desc` : sql`e.entry_no`;
  return selectEntries(
    tx,
    storehouseId,
    sql`${sql.join([sql`true`, ...conditions], sql` and `)}
    order by ${order} limit ${page.limit + 1}`,
  );
}

/** Entries that say it, by number, note or buy, or that moved money of somebody whose name holds it. */
function says(storehouseId: string, words: string): SQL {
  const pattern = `%${words.replaceAll(/[\\%_]/g, '\\$&')}%`;
  return sql`(e.entry_no::text = ${words} or e.note ilike ${pattern} or b.name ilike ${pattern}
    or ${touchesAccounts(
      storehouseId,
      sql`owner_id in (
      select household_id from book.household where storehouse_id = ${storehouseId} and name ilike ${pattern}
      union all
      select supplier_id from book.supplier where storehouse_id = ${storehouseId} and name ilike ${pattern})`,
    )})`;
}

const kindOf = (chart: string): string => CHART.find(({ number }) => number === chart)?.kind ?? '';

/** Entries on accounts of money. A household's own stock is found by nobody else, whatever its account is called. */
const touchesAccounts = (storehouseId: string, which: SQL): SQL => sql`e.entry_id in (
  with a as (select account_id from book.account
    where storehouse_id = ${storehouseId} and unit_kind = 'currency' and ${which})
  select m.entry_id from a join book.movement m
    on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id
  union
  select m.entry_id from a join book.movement m
    on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id)`;

/** Entries on a household's money or awarded grams. What it does at home is found by nobody else. */
const touches = (storehouseId: string, householdId: string): SQL => sql`e.entry_id in (
  with a as (select account_id from book.account
    where storehouse_id = ${storehouseId} and owner_id = ${householdId}
      and (vessel_kind is null or vessel_kind = 'bag'))
  select m.entry_id from a join book.movement m
    on m.storehouse_id = ${storehouseId} and m.source_id = a.account_id
  union
  select m.entry_id from a join book.movement m
    on m.storehouse_id = ${storehouseId} and m.destination_id = a.account_id)`;

export async function loadEntry(tx: Tx, storehouseId: string, entryId: string): Promise<EntryReading> {
  const [entry] = await selectEntries(tx, storehouseId, sql`e.entry_id = ${entryId}`);
  if (!entry) throw new Problem('thing-not-found', { thing: 'entry' });
  return entry;
}

export const listEntriesById = (tx: Tx, storehouseId: string, entryIds: readonly string[]) =>
  selectEntries(tx, storehouseId, sql`e.entry_id = any(${sql.param([...entryIds])}::uuid[])`);

async function selectEntries(tx: Tx, storehouseId: string, which: SQL): Promise<EntryReading[]> {
  const rows = await tx.execute<EntryRow>(sql`
    select e.entry_id, e.entry_no, e.what, e.on_day, e.recorded_at, e.note, e.buy_id, b.name as buy_name, e.subject_id,
      p.name as entered_by, h.name as entered_for, undone.entry_no as reverses_no, undoing.entry_no as reversed_by_no
    from book.entry e
    join book.person p on p.storehouse_id = ${storehouseId} and p.person_id = e.person_id
    left join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = e.entered_for
    left join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = e.buy_id
    left join book.entry undone on undone.storehouse_id = ${storehouseId} and undone.entry_id = e.reverses_id
    left join book.entry undoing on undoing.storehouse_id = ${storehouseId} and undoing.reverses_id = e.entry_id
    where e.storehouse_id = ${storehouseId} and ${which}`);
  return rows.map((row) => ({
    entryId: row.entry_id,
    entryNo: Number(row.entry_no),
    what: row.what,
    onDay: row.on_day,
    recordedAt: row.recorded_at,
    note: row.note,
    buyId: row.buy_id,
    buyName: row.buy_name,
    subjectId: row.subject_id,
    enteredBy: row.entered_by,
    enteredFor: row.entered_for,
    reversesEntryNo: row.reverses_no === null ? null : Number(row.reverses_no),
    reversedByEntryNo: row.reversed_by_no === null ? null : Number(row.reversed_by_no),
  }));
}

export async function listMovementsOf(
  tx: Tx,
  storehouseId: string,
  entryIds: readonly string[],
): Promise<MovementRow[]> {
  return tx
    .select()
    .from(movements)
    .where(and(eq(movements.storehouseId, storehouseId), inArray(movements.entryId, [...entryIds])))
    .orderBy(asc(movements.entryId), asc(movements.line));
}

/** An account in words: whose it is, what it is kept apart for, where its grams are and of which food. */
export type AccountInWords = {
  readonly accountId: string;
  readonly kind: string;
  readonly unitKind: 'currency' | 'lot' | 'supply';
  readonly ownerId: string | null;
  readonly ownerKind: string | null;
  readonly ownerName: string | null;
  readonly causeName: string | null;
  readonly vesselKind: string | null;
  readonly vesselCode: string | null;
  readonly foodEn: string | null;
  readonly foodEs: string | null;
  readonly guard: 'none' | 'not_below' | 'not_above';
  readonly isClosed: boolean;
  readonly balance: number;
};

export async function listAccountsInWords(
  tx: Tx,
  storehouseId: string,
  accountIds: readonly string[],
): Promise<Map<string, AccountInWords>> {
  const rows = await tx.execute<Omit<AccountInWords, 'balance'> & { balance: string }>(sql`
    select a.account_id as "accountId", a.kind, a.unit_kind as "unitKind", a.owner_id as "ownerId",
      o.kind as "ownerKind", coalesce(h.name, s.name) as "ownerName", coalesce(b.name, cb.name, sup.name, ps.name) as "causeName",
      a.vessel_kind as "vesselKind", coalesce(bag.bag_code, con.container_code) as "vesselCode",
      f.name_en as "foodEn", f.name_es as "foodEs", a.guard, a.closed as "isClosed", a.inflow - a.outflow as balance
    from book.account a
    left join book.owner o on o.storehouse_id = ${storehouseId} and o.owner_id = a.owner_id
    left join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = a.owner_id
    left join book.supplier s on s.storehouse_id = ${storehouseId} and s.supplier_id = a.owner_id
    left join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = a.cause_id
    left join book.claim c on c.storehouse_id = ${storehouseId} and c.claim_id = a.cause_id
    left join book.buy cb on cb.storehouse_id = ${storehouseId} and cb.buy_id = c.buy_id
    left join book.supply sup on sup.storehouse_id = ${storehouseId}
      and sup.supply_id = case a.unit_kind when 'supply' then a.unit_id else a.cause_id end
    left join book.packing_session ps on ps.storehouse_id = ${storehouseId} and ps.packing_session_id = a.cause_id
    left join book.bag bag on bag.storehouse_id = ${storehouseId} and bag.bag_id = a.vessel_id
    left join book.container con on con.storehouse_id = ${storehouseId} and con.container_id = a.vessel_id
    left join book.lot l on l.storehouse_id = ${storehouseId} and l.lot_id = a.unit_id
    left join book.food f on f.storehouse_id = ${storehouseId} and f.food_id = l.food_id
    where a.storehouse_id = ${storehouseId} and a.account_id = any(${sql.param([...accountIds])}::uuid[])`);
  return new Map(rows.map((row) => [row.accountId, { ...row, balance: Number(row.balance) }]));
}

export type MovementInWords = {
  readonly line: number;
  readonly amount: number;
  readonly from: AccountInWords;
  readonly to: AccountInWords;
  /** A household's own stock, which the reader sees move and no more. */
  readonly isHomeStock: boolean;
};

export type EntryInWords = EntryReading & { readonly movements: readonly MovementInWords[] };

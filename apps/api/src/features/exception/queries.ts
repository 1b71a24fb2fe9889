import type { Tx } from '@sheafbook/db';
import { type SQL, sql } from 'drizzle-orm';
import { type DaySpan, dayOf, isWithin } from '../../platform/storehouse-day.ts';

export type Span = DaySpan & { readonly timeZone: string };

export type CorrectionRow = {
  readonly entryId: string;
  readonly entryNo: number;
  readonly onDay: string;
  readonly reason: string;
  readonly by: string;
  readonly undoneEntryId: string;
  readonly undoneEntryNo: number;
  readonly undoneWhat: string;
  /** The money that was moved back in all; null where grams alone were. */
  readonly minorUnits: number | null;
};

/** Reversing entries with their reasons, in the order of their numbers. What a household undid at home is its own. */
export async function listCorrections(tx: Tx, storehouseId: string, span: Span): Promise<CorrectionRow[]> {
  type Row = Omit<CorrectionRow, 'entryNo' | 'undoneEntryNo' | 'minorUnits'> &
    Record<'entryNo' | 'undoneEntryNo', string> & { minorUnits: string | null };
  const rows = await tx.execute<Row>(sql`
    select e.entry_id as "entryId", e.entry_no as "entryNo", e.on_day::text as "onDay", e.note as reason, p.name as by,
      u.entry_id as "undoneEntryId", u.entry_no as "undoneEntryNo", u.what as "undoneWhat", (
        select sum(m.amount) from book.movement m
        join book.account a on a.storehouse_id = ${storehouseId} and a.account_id = m.source_id
        where m.storehouse_id = ${storehouseId} and m.entry_id = e.entry_id and a.unit_kind = 'currency') as "minorUnits"
    from book.entry e
    join book.entry u on u.storehouse_id = ${storehouseId} and u.entry_id = e.reverses_id
    join book.person p on p.storehouse_id = ${storehouseId} and p.person_id = e.person_id
    where e.storehouse_id = ${storehouseId} and ${isWithin(sql`e.on_day`, span)} and exists (
      select from book.movement m
      join book.account s on s.storehouse_id = ${storehouseId} and s.account_id = m.source_id
      join book.account d on d.storehouse_id = ${storehouseId} and d.account_id = m.destination_id
      left join book.owner so on so.storehouse_id = ${storehouseId} and so.owner_id = s.owner_id
      left join book.owner dst on dst.storehouse_id = ${storehouseId} and dst.owner_id = d.owner_id
      where m.storehouse_id = ${storehouseId} and m.entry_id = e.entry_id and not (
        coalesce(so.kind = 'household' or dst.kind = 'household', false)
        and coalesce(s.vessel_kind not in ('bag', 'supplier') or d.vessel_kind not in ('bag', 'supplier'), false)))
    order by e.entry_no`);
  return rows.map((row) => ({
    ...row,
    entryNo: Number(row.entryNo),
    undoneEntryNo: Number(row.undoneEntryNo),
    minorUnits: row.minorUnits === null ? null : Number(row.minorUnits),
  }));
}

export type OverrideKind =
  | 'fill-overridden'
  | 'stage-moved'
  | 'deposit-waived'
  | 'invoice-voided'
  | 'written-off'
  | 'tin-differed'
  | 'line-set-aside'
  | 'fund-overpromised';

export type OverrideRow = {
  readonly kind: OverrideKind;
  readonly onDay: string;
  readonly by: string | null;
  readonly reason: string;
  readonly buyId: string | null;
  readonly buy: string | null;
  readonly householdId: string | null;
  readonly household: string | null;
  readonly minorUnits: number | null;
  /** The stage that a buy was moved to; otherwise empty. */
  readonly stage: string;
};

export type Exceptions = {
  readonly currency: string;
  readonly corrections: readonly CorrectionRow[];
  readonly overrides: readonly OverrideRow[];
};

/**
 * Whatever was decided against what the rules or the book would have had, with the reason that was written then. A waiver
 * keeps no moment of its own, so it stands on the day that the deposit was due; its reason stays between the two.
 */
export async function listOverrides(tx: Tx, storehouseId: string, span: Span): Promise<OverrideRow[]> {
  const on = (at: SQL) => dayOf(at, span.timeZone);
  const rows = await tx.execute<Omit<OverrideRow, 'minorUnits'> & { minorUnits: string | null }>(sql`
    with o as (
      select 'fill-overridden' as kind, ${on(sql`made_at`)} as on_day, made_by as person_id, override_reason as reason,
        buy_id, null::uuid as household_id, null::bigint as minor_units, '' as stage
      from book.fill where storehouse_id = ${storehouseId} and override_reason <> ''
      union all
      select 'stage-moved', ${on(sql`moved_at`)}, person_id, reason, buy_id, null, null, to_stage
      from book.stage_move where storehouse_id = ${storehouseId} and reason <> ''
      union all
      select 'deposit-waived', due_on, waived_by, '', buy_id, household_id, asked_minor_units, ''
      from book.deposit_ask where storehouse_id = ${storehouseId} and waived_by is not null
      union all
      select 'invoice-voided', ${on(sql`voided_at`)}, voided_by, void_reason, buy_id, null, null, ''
      from book.invoice where storehouse_id = ${storehouseId} and voided_at is not null
      union all
      select 'written-off', ${on(sql`coalesce(agreed_at, asked_at)`)}, coalesce(agreed_by, asked_by), reason, null,
        household_id, minor_units, ''
      from book.write_off where storehouse_id = ${storehouseId} and entry_id is not null
      union all
      select 'tin-differed', on_day, counted_by, reason, null, null, counted_minor_units - expected_minor_units, ''
      from book.cash_count where storehouse_id = ${storehouseId} and counted_minor_units <> expected_minor_units
      union all
      select 'line-set-aside', ${on(sql`m.matched_at`)}, m.matched_by, m.reason, null, null, l.minor_units, ''
      from book.bank_match m
      join book.bank_line l on l.storehouse_id = ${storehouseId} and l.bank_line_id = m.bank_line_id
      where m.storehouse_id = ${storehouseId} and m.how = 'set-aside' and m.undone_at is null
      union all
      select 'fund-overpromised', ${on(sql`approved_at`)}, approved_by, override_reason, null, null, minor_units, ''
      from book.fund_promise where storehouse_id = ${storehouseId} and override_reason <> '')
    select o.kind, o.on_day::text as "onDay", p.name as by, o.reason, o.buy_id as "buyId", b.name as buy,
      o.household_id as "householdId", h.name as household, o.minor_units as "minorUnits", o.stage
    from o
    left join book.person p on p.storehouse_id = ${storehouseId} and p.person_id = o.person_id
    left join book.buy b on b.storehouse_id = ${storehouseId} and b.buy_id = o.buy_id
    left join book.household h on h.storehouse_id = ${storehouseId} and h.household_id = o.household_id
    where ${isWithin(sql`o.on_day`, span)}
    order by o.on_day, o.kind, o.reason, h.seat`);
  return rows.map((row) => ({ ...row, minorUnits: row.minorUnits === null ? null : Number(row.minorUnits) }));
}

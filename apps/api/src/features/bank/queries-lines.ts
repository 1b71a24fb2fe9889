import type { Tx } from '@sheafbook/db';
import { sql } from 'drizzle-orm';
import type { LinesQuery } from './schema.ts';

/** A line of the bank with what became of it. */
export type LineReading = {
  readonly bankLineId: string;
  readonly onDay: string;
  readonly minorUnits: number;
  readonly words: string;
  readonly match: null | {
    readonly how: 'in-book' | 'posted' | 'set-aside';
    readonly reason: string;
    readonly by: string;
    readonly at: string;
    readonly entryId: string | null;
    readonly entryNo: number | null;
    readonly entryOn: string | null;
    readonly what: string | null;
  };
};

type Row = {
  bank_line_id: string;
  on_day: string;
  minor_units: string;
  words: string;
  how: 'in-book' | 'posted' | 'set-aside' | null;
  reason: string | null;
  matched_by: string | null;
  matched_at: string | null;
  entry_id: string | null;
  entry_no: string | null;
  entry_on: string | null;
  what: string | null;
};

const ofState = (state: LinesQuery['state']) =>
  ({
    all: sql`true`,
    open: sql`m.bank_match_id is null`,
    done: sql`m.entry_id is not null`,
    'set-aside': sql`m.how = 'set-aside'`,
  })[state];

/** The newest first; `search` finds words, or an amount typed as it is read. One row more than the page holds. */
export async function listLines(
  tx: Tx,
  storehouseId: string,
  page: Pick<LinesQuery, 'after' | 'limit' | 'state' | 'search'>,
): Promise<LineReading[]> {
  const { after, search } = page;
  const isFurther =
    after === undefined
      ? sql`true`
      : sql`(l.on_day, l.bank_line_id) < (select a.on_day, a.bank_line_id from book.bank_line a
          where a.storehouse_id = ${storehouseId} and a.bank_line_id = ${after})`;
  const figures = search?.replaceAll(/\D/g, '') ?? '';
  const isFound = search
    ? sql`(position(lower(${search}) in lower(l.words)) > 0
        or (${figures} <> '' and abs(l.minor_units)::text = ${figures}))`
    : sql`true`;
  const rows = await tx.execute<Row>(sql`
    select l.bank_line_id, l.on_day, l.minor_units, l.words, m.how, m.reason, p.name as matched_by, m.matched_at, m.entry_id,
      e.entry_no, e.on_day as entry_on, e.what
    from book.bank_line l
    left join book.bank_match m on m.storehouse_id = ${storehouseId} and m.bank_line_id = l.bank_line_id
      and m.undone_at is null
    left join book.person p on p.storehouse_id = ${storehouseId} and p.person_id = m.matched_by
    left join book.entry e on e.storehouse_id = ${storehouseId} and e.entry_id = m.entry_id
    where l.storehouse_id = ${storehouseId} and ${ofState(page.state)} and ${isFurther} and ${isFound}
    order by l.on_day desc, l.bank_line_id desc limit ${page.limit + 1}`);
  return rows.map(readingOf);
}

export type Counts = { readonly open: number; readonly done: number; readonly setAside: number };

export async function countLines(tx: Tx, storehouseId: string): Promise<Counts> {
  const [row] = await tx.execute<{ open: string; done: string; set_aside: string }>(sql`
    select count(*) filter (where m.bank_match_id is null) as open,
      count(*) filter (where m.entry_id is not null) as done, count(*) filter (where m.how = 'set-aside') as set_aside
    from book.bank_line l
    left join book.bank_match m on m.storehouse_id = ${storehouseId} and m.bank_line_id = l.bank_line_id
      and m.undone_at is null
    where l.storehouse_id = ${storehouseId}`);
  return { open: Number(row?.open), done: Number(row?.done), setAside: Number(row?.set_aside) };
}

function readingOf(row: Row): LineReading {
  return {
    bankLineId: row.bank_line_id,
    onDay: row.on_day,
    minorUnits: Number(row.minor_units),
    words: row.words,
    match:
      row.how === null
        ? null
        : {
            how: row.how,
            reason: row.reason ?? '',
            by: row.matched_by ?? '',
            at: new Date(row.matched_at ?? 0).toISOString(),
            entryId: row.entry_id,
            entryNo: row.entry_no === null ? null : Number(row.entry_no),
            entryOn: row.entry_on,
            what: row.what,
          },
  };
}

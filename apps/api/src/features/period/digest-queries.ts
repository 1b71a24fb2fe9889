import type { Tx } from '@sheafbook/db';
import { sql } from 'drizzle-orm';
import type { DigestEntry, DigestMovement } from './digest.ts';

type Row = {
  entry_id: string;
  entry_no: string;
  on_day: string;
  what: string;
  recorded_at: string;
  note: string;
  reverses_no: string | null;
  line: number;
  source_id: string;
  destination_id: string;
  unit_id: string;
  amount: string;
  is_home: boolean;
};

/**
 * The entries of the days after `after` through `throughOn`, with their movements, in the order of their numbers. What a
 * household has at home tells that it moved and no more, nor what was noted of it.
 */
export async function listDigestEntries(
  tx: Tx,
  storehouseId: string,
  { after, throughOn }: { after: string | null; throughOn: string },
): Promise<DigestEntry[]> {
  const rows = await tx.execute<Row>(sql`
    select e.entry_id, e.entry_no, e.on_day::text as on_day, e.what,
      to_char(e.recorded_at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"') as recorded_at, e.note,
      r.entry_no as reverses_no, m.line, m.source_id, m.destination_id, s.unit_id, m.amount::text as amount,
      coalesce(so.kind = 'household' or dst.kind = 'household', false)
        and coalesce(s.vessel_kind not in ('bag', 'supplier') or d.vessel_kind not in ('bag', 'supplier'), false)
        as is_home
    from book.entry e
    join book.movement m on m.storehouse_id = ${storehouseId} and m.entry_id = e.entry_id
    join book.account s on s.storehouse_id = ${storehouseId} and s.account_id = m.source_id
    join book.account d on d.storehouse_id = ${storehouseId} and d.account_id = m.destination_id
    left join book.owner so on so.storehouse_id = ${storehouseId} and so.owner_id = s.owner_id
    left join book.owner dst on dst.storehouse_id = ${storehouseId} and dst.owner_id = d.owner_id
    left join book.entry r on r.storehouse_id = ${storehouseId} and r.entry_id = e.reverses_id
    where e.storehouse_id = ${storehouseId} and e.on_day <= ${throughOn}
      and (${after}::date is null or e.on_day > ${after}::date)
    order by e.entry_no, m.line`);
  const entries = new Map<string, Omit<DigestEntry, 'movements'> & { movements: DigestMovement[] }>();
  for (const row of rows) {
    const entry = entries.get(row.entry_id) ?? {
      entryId: row.entry_id,
      entryNo: Number(row.entry_no),
      onDay: row.on_day,
      what: row.what,
      recordedAt: row.recorded_at,
      note: row.note,
      reversesEntryNo: row.reverses_no === null ? null : Number(row.reverses_no),
      movements: [],
    };
    entry.movements.push(
      row.is_home
        ? { line: row.line, isHomeStock: true }
        : {
            line: row.line,
            isHomeStock: false,
            fromAccountId: row.source_id,
            toAccountId: row.destination_id,
            unitId: row.unit_id,
            amount: row.amount,
          },
    );
    entries.set(row.entry_id, entry);
  }
  return [...entries.values()].map((entry) =>
    entry.movements.every(({ isHomeStock }) => isHomeStock) ? { ...entry, note: '' } : entry,
  );
}

export type AccountKind = {
  readonly accountId: string;
  readonly unitKind: string;
  readonly kind: string;
  readonly vesselKind: string | null;
};

/** Of what kind some accounts are. Whose they are is told by the journal, which notes who looked. */
export async function listAccountKinds(
  tx: Tx,
  storehouseId: string,
  accountIds: readonly string[],
): Promise<AccountKind[]> {
  return tx.execute<AccountKind>(sql`
    select account_id as "accountId", unit_kind as "unitKind", kind, vessel_kind as "vesselKind" from book.account
    where storehouse_id = ${storehouseId} and account_id = any(${sql.param([...accountIds])}::uuid[])
    order by account_id`);
}

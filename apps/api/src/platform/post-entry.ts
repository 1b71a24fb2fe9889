import type { Tx } from '@sheafbook/db';
import { movements, vessels } from '@sheafbook/db/tables';
import {
  type AccountKey,
  accountKeyText,
  guardOf,
  isOutside,
  type MovementDraft,
  type UnitKey,
  type VesselKind,
} from '@sheafbook/ledger';
import { assert } from '@sheafbook/units';
import { and, eq, inArray, sql } from 'drizzle-orm';
import type { Context } from './context.ts';

/** What an entry is about, apart from its movements. `onDay` is a day of the storehouse's own calendar. */
export type EntryHeader = {
  readonly what: string;
  readonly onDay: string;
  readonly buyId?: string | undefined;
  readonly subjectId?: string | undefined;
  readonly reversesId?: string | undefined;
  readonly note?: string | undefined;
  readonly enteredFor?: string | undefined;
};

export type PostedEntry = { readonly entryId: string; readonly entryNo: number };

type DraftedEntry = EntryHeader & { readonly drafts: readonly MovementDraft[] };

/**
 * Posts the movements of one event as one entry. Accounts that are missing are made first, in a fixed order
 * (ledger-notes 6.10); the database locks, checks the guards, counts and writes.
 */
export async function postEntry(tx: Tx, context: Context, entry: DraftedEntry): Promise<PostedEntry> {
  const [posted] = await postEntries(tx, context, [entry]);
  assert(posted, 'one entry in, one out');
  return posted;
}

/** Posts several entries in their order, in as many round trips as one takes. */
export async function postEntries(
  tx: Tx,
  context: Context,
  entries: readonly DraftedEntry[],
): Promise<PostedEntry[]> {
  const { storehouseId } = context.actor;
  const accounts = await ensureAccounts(
    tx,
    storehouseId,
    entries.flatMap(({ drafts }) => drafts),
  );
  const accountOf = (unit: UnitKey, key: AccountKey): FoundAccount => {
    const account = accounts.get(accountKeyText(unit, key));
    assert(account, 'every account of a draft was made before');
    return account;
  };
  const lined = entries.map(({ drafts, ...header }) => {
    const lines = drafts.map(({ unit, source, destination, amount }) => {
      const { unitId, accountId: sourceId } = accountOf(unit, source);
      return { unitId, sourceId, destinationId: accountOf(unit, destination).accountId, amount };
    });
    return { header, lines };
  });
  return postMovements(tx, context, lined);
}

type ReversingEntry = EntryHeader & { readonly reversesId: string };

/** Posts an entry that undoes another line by line. The guards refuse it when what it moved has moved on. */
export async function reverseEntry(tx: Tx, context: Context, entry: ReversingEntry): Promise<PostedEntry> {
  const [posted] = await reverseEntries(tx, context, [entry]);
  assert(posted, 'one entry in, one out');
  return posted;
}

/** Undoes several entries in their order, in as many round trips as one takes. */
export async function reverseEntries(
  tx: Tx,
  context: Context,
  entries: readonly ReversingEntry[],
): Promise<PostedEntry[]> {
  const { storehouseId } = context.actor;
  const found = await tx
    .select()
    .from(movements)
    .where(
      and(
        eq(movements.storehouseId, storehouseId),
        sql`${movements.entryId} = any(${sql.param(entries.map(({ reversesId }) => reversesId))}::uuid[])`,
      ),
    )
    .orderBy(movements.line);
  const linesOf = new Map<string, typeof found>();
  for (const line of found) linesOf.set(line.entryId, [...(linesOf.get(line.entryId) ?? []), line]);
  const back = entries.map((header) => {
    const lines = linesOf.get(header.reversesId) ?? [];
    assert(lines.length > 0, 'the entry to reverse has movements');
    return {
      header,
      lines: lines.map(({ unitId, sourceId, destinationId, amount }) => ({
        ...{ unitId, amount },
        ...{ sourceId: destinationId, destinationId: sourceId },
      })),
    };
  });
  return postMovements(tx, context, back);
}

type Line = { unitId: string; sourceId: string; destinationId: string; amount: number };

/** Each entry is posted by a call of its own inside one statement; entries stand in the book in the order given. */
async function postMovements(
  tx: Tx,
  context: Context,
  entries: readonly { readonly header: EntryHeader; readonly lines: readonly Line[] }[],
): Promise<PostedEntry[]> {
  const { actor } = context;
  const rows = entries.map(({ header, lines }) => ({
    ...{ what: header.what, onDay: header.onDay, note: header.note ?? '', lines },
    enteredFor: header.enteredFor ?? (actor.isHelping ? actor.householdId : null),
    ...{ buyId: header.buyId ?? null, subjectId: header.subjectId ?? null },
    reversesId: header.reversesId ?? null,
  }));
  const posted = await tx.execute<{ entry_id: string; entry_no: string }>(sql`
    with e as materialized (
      select e.*, l.unit_ids, l.source_ids, l.destination_ids, l.amounts
      from rows from (jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) as (what text, "onDay" date, note text,
        lines jsonb, "enteredFor" uuid, "buyId" uuid, "subjectId" uuid, "reversesId" uuid)) with ordinality
        as e(what, on_day, note, lines, entered_for, buy_id, subject_id, reverses_id, place)
      cross join lateral (
        select array_agg("unitId" order by line) as unit_ids, array_agg("sourceId" order by line) as source_ids,
          array_agg("destinationId" order by line) as destination_ids, array_agg(amount order by line) as amounts
        from rows from (jsonb_to_recordset(e.lines) as ("unitId" uuid, "sourceId" uuid, "destinationId" uuid,
          amount bigint)) with ordinality as l("unitId", "sourceId", "destinationId", amount, line)) l
      order by e.place)
    select p.entry_id, p.entry_no from e cross join lateral book.post_entry(e.what, e.on_day,
      ${context.now().toISOString()}::timestamptz, ${actor.personId}::uuid, e.entered_for, e.buy_id, e.subject_id,
      e.reverses_id, e.note, e.unit_ids, e.source_ids, e.destination_ids, e.amounts) p
    order by p.entry_no`);
  assert(posted.length === entries.length, 'post_entry returns one row');
  return posted.map((row) => ({ entryId: row.entry_id, entryNo: Number(row.entry_no) }));
}

type WantedAccount = { readonly text: string; readonly unit: UnitKey; readonly key: AccountKey };
type FoundAccount = { readonly accountId: string; readonly unitId: string };

/** Finds the accounts of some drafts. Those that are missing, seldom any, are made in a fixed order first. */
async function ensureAccounts(
  tx: Tx,
  storehouseId: string,
  drafts: readonly MovementDraft[],
): Promise<Map<string, FoundAccount>> {
  const byText = new Map(
    drafts.flatMap(({ unit, source, destination }) =>
      [source, destination].map((key) => {
        const text = accountKeyText(unit, key);
        return [text, { text, unit, key }] as const;
      }),
    ),
  );
  const wanted = [...byText.values()].toSorted((a, b) => (a.text < b.text ? -1 : 1));
  const found = await findAccounts(tx, storehouseId, wanted);
  const missing = wanted.filter(({ text }) => !found.has(text));
  if (missing.length === 0) return found;
  await insertAccounts(tx, storehouseId, missing);
  return findAccounts(tx, storehouseId, wanted);
}

/** A lot and a supply have the id of their unit; that of the currency is looked up. */
const unitIdOf = (unit: UnitKey): string | null => {
  if (unit.kind === 'currency') return null;
  return unit.kind === 'lot' ? unit.lotId : unit.supplyId;
};

const keyRow = ({ text, unit, key }: WantedAccount) => ({
  text,
  ...key,
  unitId: unitIdOf(unit),
  unitKind: unit.kind,
});

const currencyUnit = (storehouseId: string) =>
  sql`(select u.unit_id from book.unit u where u.storehouse_id = ${storehouseId}::uuid and u.kind = 'currency')`;

/**
 * What is not money is looked for by its unit, since a lot has few accounts, and common stock and the outside have one for
 * every lot that ever was. Of money there is one unit, so there the owner leads where there is one.
 */
async function findAccounts(
  tx: Tx,
  storehouseId: string,
  wanted: readonly WantedAccount[],
): Promise<Map<string, FoundAccount>> {
  const isKey = sql`a.storehouse_id = ${storehouseId}::uuid and a.kind = k.kind
    and a.vessel_id is not distinct from k."vesselId" and a.cause_id is not distinct from k."causeId"`;
  const isMoney = sql`k."unitId" is null and a.unit_id = ${currencyUnit(storehouseId)} and ${isKey}`;
  const rows = await tx.execute<{ text: string; account_id: string; unit_id: string }>(sql`
    select k.text, a.account_id, a.unit_id
    from jsonb_to_recordset(${JSON.stringify(wanted.map(keyRow))}::jsonb)
      as k(text text, "unitId" uuid, kind text, "vesselId" uuid, "ownerId" uuid, "causeId" uuid),
    lateral (select a.account_id, a.unit_id from book.account a
        where a.unit_id = k."unitId" and a.owner_id is not distinct from k."ownerId" and ${isKey}
      union all select a.account_id, a.unit_id from book.account a where a.owner_id = k."ownerId" and ${isMoney}
      union all select a.account_id, a.unit_id from book.account a
        where k."ownerId" is null and a.owner_id is null and ${isMoney}) a`);
  return new Map(rows.map((row) => [row.text, { accountId: row.account_id, unitId: row.unit_id }]));
}

async function insertAccounts(
  tx: Tx,
  storehouseId: string,
  missing: readonly WantedAccount[],
): Promise<void> {
  const vesselIds = missing.flatMap(({ key }) => (key.vesselId === null ? [] : [key.vesselId]));
  const vesselKinds = await loadVesselKinds(tx, storehouseId, vesselIds);
  const rows = missing.map((account) => {
    const { vesselId } = account.key;
    const vesselKind = vesselId === null ? null : (vesselKinds.get(vesselId) ?? null);
    const guard = guardOf(account.key, vesselKind && isOutside(vesselKind) ? vesselKind : null);
    return { ...keyRow(account), vesselKind, guard };
  });
  await tx.execute(sql`
    insert into book.account (storehouse_id, unit_id, unit_kind, kind, vessel_id, vessel_kind, owner_id, cause_id, guard)
    select ${storehouseId}::uuid, coalesce("unitId", ${currencyUnit(storehouseId)}), "unitKind", k.kind, "vesselId",
      "vesselKind", "ownerId", "causeId", k.guard
    from jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) as k(text text, "unitId" uuid, "unitKind" text, kind text,
      "vesselId" uuid, "vesselKind" text, "ownerId" uuid, "causeId" uuid, guard text)
    order by text on conflict do nothing`);
}

async function loadVesselKinds(tx: Tx, storehouseId: string, vesselIds: readonly string[]) {
  if (vesselIds.length === 0) return new Map<string, VesselKind>();
  const rows = await tx
    .select({ vesselId: vessels.vesselId, kind: vessels.kind })
    .from(vessels)
    .where(and(eq(vessels.storehouseId, storehouseId), inArray(vessels.vesselId, [...new Set(vesselIds)])));
  return new Map(rows.map((row) => [row.vesselId, row.kind as VesselKind]));
}

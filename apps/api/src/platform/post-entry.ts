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

/**
 * Posts the movements of one event as one entry. Accounts that are missing are made first, in a fixed order
 * (ledger-notes 6.10); the database locks, checks the guards, counts and writes.
 */
export async function postEntry(
  tx: Tx,
  context: Context,
  entry: EntryHeader & { readonly drafts: readonly MovementDraft[] },
): Promise<PostedEntry> {
  const { storehouseId } = context.actor;
  const accounts = await ensureAccounts(tx, storehouseId, entry.drafts);
  const accountOf = (unit: UnitKey, key: AccountKey): FoundAccount => {
    const account = accounts.get(accountKeyText(unit, key));
    assert(account, 'every account of a draft was made before');
    return account;
  };
  const lines = entry.drafts.map(({ unit, source, destination, amount }) => {
    const { unitId, accountId: sourceId } = accountOf(unit, source);
    return { unitId, sourceId, destinationId: accountOf(unit, destination).accountId, amount };
  });
  return postMovements(tx, context, entry, lines);
}

/** Posts an entry that undoes another line by line. The guards refuse it when what it moved has moved on. */
export async function reverseEntry(
  tx: Tx,
  context: Context,
  entry: EntryHeader & { readonly reversesId: string },
): Promise<PostedEntry> {
  const { storehouseId } = context.actor;
  const lines = await tx
    .select()
    .from(movements)
    .where(and(eq(movements.storehouseId, storehouseId), eq(movements.entryId, entry.reversesId)))
    .orderBy(movements.line);
  assert(lines.length > 0, 'the entry to reverse has movements');
  const back = lines.map(({ unitId, sourceId, destinationId, amount }) => ({
    unitId,
    sourceId: destinationId,
    destinationId: sourceId,
    amount,
  }));
  return postMovements(tx, context, entry, back);
}

type Line = { unitId: string; sourceId: string; destinationId: string; amount: number };

async function postMovements(
  tx: Tx,
  context: Context,
  header: EntryHeader,
  lines: readonly Line[],
): Promise<PostedEntry> {
  const { actor } = context;
  const enteredFor = header.enteredFor ?? (actor.isHelping ? actor.householdId : null);
  const [posted] = await tx.execute<{ entry_id: string; entry_no: string }>(sql`
    with l as (select * from rows from (jsonb_to_recordset(${JSON.stringify(lines)}::jsonb)
      as ("unitId" uuid, "sourceId" uuid, "destinationId" uuid, amount bigint))
      with ordinality as l("unitId", "sourceId", "destinationId", amount, line))
    select p.entry_id, p.entry_no from (select
      array_agg("unitId" order by line) as unit_ids, array_agg("sourceId" order by line) as source_ids,
      array_agg("destinationId" order by line) as destination_ids, array_agg(amount order by line) as amounts from l) a,
    lateral book.post_entry(${header.what}, ${header.onDay}::date, ${context.now().toISOString()}::timestamptz,
      ${actor.personId}::uuid, ${enteredFor}::uuid, ${header.buyId ?? null}::uuid, ${header.subjectId ?? null}::uuid,
      ${header.reversesId ?? null}::uuid, ${header.note ?? ''}, a.unit_ids, a.source_ids, a.destination_ids, a.amounts) p`);
  assert(posted, 'post_entry returns one row');
  return { entryId: posted.entry_id, entryNo: Number(posted.entry_no) };
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

/** The owner is looked for by its index where there is one: `is not distinct from` alone would go through all accounts. */
async function findAccounts(
  tx: Tx,
  storehouseId: string,
  wanted: readonly WantedAccount[],
): Promise<Map<string, FoundAccount>> {
  const isKey = sql`a.storehouse_id = ${storehouseId}::uuid and a.kind = k.kind
    and a.unit_id = coalesce(k."unitId", ${currencyUnit(storehouseId)})
    and a.vessel_id is not distinct from k."vesselId" and a.cause_id is not distinct from k."causeId"`;
  const rows = await tx.execute<{ text: string; account_id: string; unit_id: string }>(sql`
    select k.text, a.account_id, a.unit_id
    from jsonb_to_recordset(${JSON.stringify(wanted.map(keyRow))}::jsonb)
      as k(text text, "unitId" uuid, kind text, "vesselId" uuid, "ownerId" uuid, "causeId" uuid),
    lateral (select a.account_id, a.unit_id from book.account a where a.owner_id = k."ownerId" and ${isKey}
      union all select a.account_id, a.unit_id from book.account a
        where k."ownerId" is null and a.owner_id is null and ${isKey}) a`);
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

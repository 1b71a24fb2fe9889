import type { Tx } from '@sheafbook/db';
import { movements, units, vessels } from '@sheafbook/db/tables';
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
  const currencyId = await loadCurrencyUnitId(tx, storehouseId);
  const unitIdOf = (unit: UnitKey) => (unit.kind === 'currency' ? currencyId : unitIdOfThing(unit));
  const accountIds = await ensureAccounts(tx, storehouseId, entry.drafts, unitIdOf);
  const accountIdOf = (unit: UnitKey, key: AccountKey) => {
    const accountId = accountIds.get(accountKeyText(unit, key));
    assert(accountId, 'every account of a draft was made before');
    return accountId;
  };
  const lines = entry.drafts.map(({ unit, source, destination, amount }) => ({
    unitId: unitIdOf(unit),
    sourceId: accountIdOf(unit, source),
    destinationId: accountIdOf(unit, destination),
    amount,
  }));
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

async function loadCurrencyUnitId(tx: Tx, storehouseId: string): Promise<string> {
  const [unit] = await tx
    .select({ unitId: units.unitId })
    .from(units)
    .where(and(eq(units.storehouseId, storehouseId), eq(units.kind, 'currency')));
  assert(unit, 'a storehouse is founded with its currency');
  return unit.unitId;
}

/** A lot and a supply have the id of their unit. */
const unitIdOfThing = (unit: Exclude<UnitKey, { kind: 'currency' }>): string =>
  unit.kind === 'lot' ? unit.lotId : unit.supplyId;

async function ensureAccounts(
  tx: Tx,
  storehouseId: string,
  drafts: readonly MovementDraft[],
  unitIdOf: (unit: UnitKey) => string,
): Promise<Map<string, string>> {
  const wanted = new Map(
    drafts.flatMap(({ unit, source, destination }) =>
      [source, destination].map((key) => [accountKeyText(unit, key), { unit, key }] as const),
    ),
  );
  const vesselKinds = await loadVesselKinds(
    tx,
    storehouseId,
    [...wanted.values()].flatMap(({ key }) => (key.vesselId === null ? [] : [key.vesselId])),
  );
  const keys = [...wanted]
    .toSorted(([a], [b]) => (a < b ? -1 : 1))
    .map(([text, { unit, key }]) => {
      const vesselKind = key.vesselId === null ? null : (vesselKinds.get(key.vesselId) ?? null);
      const guard = guardOf(key, vesselKind && isOutside(vesselKind) ? vesselKind : null);
      return { text, ...key, unitId: unitIdOf(unit), unitKind: unit.kind, vesselKind, guard };
    });
  const asJson = JSON.stringify(keys);
  const columns = sql`text text, "unitId" uuid, "unitKind" text, kind text, "vesselId" uuid, "vesselKind" text,
    "ownerId" uuid, "causeId" uuid, guard text`;
  await tx.execute(sql`
    insert into book.account (storehouse_id, unit_id, unit_kind, kind, vessel_id, vessel_kind, owner_id, cause_id, guard)
    select ${storehouseId}::uuid, "unitId", "unitKind", k.kind, "vesselId", "vesselKind", "ownerId", "causeId", k.guard
    from jsonb_to_recordset(${asJson}::jsonb) as k(${columns})
    where not exists (select from book.account a where a.storehouse_id = ${storehouseId}::uuid and a.unit_id = "unitId"
      and a.kind = k.kind and a.vessel_id is not distinct from "vesselId" and a.owner_id is not distinct from "ownerId"
      and a.cause_id is not distinct from "causeId")
    order by text on conflict do nothing`);
  const rows = await tx.execute<{ text: string; account_id: string }>(sql`
    select k.text, a.account_id from jsonb_to_recordset(${asJson}::jsonb) as k(${columns})
    join book.account a on a.storehouse_id = ${storehouseId}::uuid and a.unit_id = "unitId" and a.kind = k.kind
      and a.vessel_id is not distinct from "vesselId" and a.owner_id is not distinct from "ownerId"
      and a.cause_id is not distinct from "causeId"`);
  return new Map(rows.map((row) => [row.text, row.account_id]));
}

async function loadVesselKinds(tx: Tx, storehouseId: string, vesselIds: readonly string[]) {
  if (vesselIds.length === 0) return new Map<string, VesselKind>();
  const rows = await tx
    .select({ vesselId: vessels.vesselId, kind: vessels.kind })
    .from(vessels)
    .where(and(eq(vessels.storehouseId, storehouseId), inArray(vessels.vesselId, [...new Set(vesselIds)])));
  return new Map(rows.map((row) => [row.vesselId, row.kind as VesselKind]));
}

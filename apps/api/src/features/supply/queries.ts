import type { Tx } from '@sheafbook/db';
import {
  accounts,
  containerKinds,
  entries,
  movements,
  packingSessions,
  type SupplyRow,
  supplies,
  supplyUseBys,
  units,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, eq, inArray, isNotNull, isNull, min, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, supplyId: string) =>
  and(eq(supplies.storehouseId, storehouseId), eq(supplies.supplyId, supplyId));

/** Supplies by sort and name, each with the pieces on hand and what stands of them at cost. */
export async function listSupplies(
  tx: Tx,
  storehouseId: string,
  which: { supplyIds?: readonly string[]; retired?: boolean } = {},
) {
  const sumOfKind = (kind: 'pieces' | 'supplies') =>
    sql<number>`coalesce((
    select sum(a.inflow - a.outflow) from ${accounts} a where a.storehouse_id = ${storehouseId} and a.kind = ${kind}
      and ${kind === 'pieces' ? sql`a.unit_id = ${supplies.supplyId} and a.owner_id is not null` : sql`a.cause_id = ${supplies.supplyId}`}), 0)`.mapWith(
      Number,
    );
  return tx
    .select({
      supply: supplies,
      kindEn: containerKinds.nameEn,
      kindEs: containerKinds.nameEs,
      onHandPieces: sumOfKind('pieces'),
      worthMinorUnits: sumOfKind('supplies'),
    })
    .from(supplies)
    .leftJoin(containerKinds, joinOn(containerKinds, supplies, 'containerKindId'))
    .where(
      and(
        eq(supplies.storehouseId, storehouseId),
        which.retired ? undefined : eq(supplies.isRetired, false),
        which.supplyIds ? inArray(supplies.supplyId, [...which.supplyIds]) : undefined,
      ),
    )
    .orderBy(asc(supplies.kind), asc(supplies.name));
}
export type SupplyOnHand = Awaited<ReturnType<typeof listSupplies>>[number];

/**
 * What a piece costs. Of a kind of container by the supplies list, else by the kind's own price; of absorbers what the
 * list has, by their size. A pack's price is rounded up, so that nothing seems cheaper than it is. The list has one
 * supply of each sort (`supply_one_of_its_sort`).
 */
export async function listPiecePrices(
  tx: Tx,
  storehouseId: string,
): Promise<{ containerPrice: (kind: PricedKind) => number | null; absorbers: Map<number, number> }> {
  const rows = await tx
    .select()
    .from(supplies)
    .where(
      and(
        eq(supplies.storehouseId, storehouseId),
        eq(supplies.isRetired, false),
        isNotNull(supplies.packMinorUnits),
        inArray(supplies.kind, ['container', 'absorber']),
      ),
    );
  const each = ({ packMinorUnits, packPieces }: SupplyRow) => Math.ceil((packMinorUnits ?? 0) / packPieces);
  const listed = new Map(
    rows.flatMap((row) => (row.containerKindId === null ? [] : [[row.containerKindId, each(row)] as const])),
  );
  return {
    containerPrice: ({ containerKindId, priceMinorUnits }) => listed.get(containerKindId) ?? priceMinorUnits,
    absorbers: new Map(
      rows.flatMap((row) =>
        row.sizeMillilitres === null ? [] : [[row.sizeMillilitres, each(row)] as const],
      ),
    ),
  };
}

type PricedKind = { readonly containerKindId: string; readonly priceMinorUnits: number | null };

/** Alone with some supplies, in a fixed order: what they cost on average must not move meanwhile. */
export async function lockSupplies(
  tx: Tx,
  storehouseId: string,
  supplyIds: readonly string[],
): Promise<SupplyOnHand[]> {
  const locked = await tx
    .select({ supplyId: supplies.supplyId })
    .from(supplies)
    .where(and(eq(supplies.storehouseId, storehouseId), inArray(supplies.supplyId, [...supplyIds])))
    .orderBy(asc(supplies.supplyId))
    .for('update');
  if (locked.length < new Set(supplyIds).size) throw new Problem('thing-not-found', { thing: 'supply' });
  return listSupplies(tx, storehouseId, { supplyIds, retired: true });
}

export async function lockSupply(tx: Tx, storehouseId: string, supplyId: string): Promise<SupplyOnHand> {
  const [supply] = await lockSupplies(tx, storehouseId, [supplyId]);
  assert(supply, 'what was locked is there');
  return supply;
}

export async function findSupplyByName(tx: Tx, storehouseId: string, name: string) {
  const [row] = await tx
    .select()
    .from(supplies)
    .where(and(eq(supplies.storehouseId, storehouseId), eq(supplies.name, name)));
  return row;
}

/** Another supply that a plan would count on for the same thing. */
export async function findSupplyOfSort(
  tx: Tx,
  storehouseId: string,
  { kind, containerKindId, sizeMillilitres }: Pick<SupplyRow, 'kind' | 'containerKindId' | 'sizeMillilitres'>,
): Promise<SupplyRow | undefined> {
  const [row] = await tx
    .select()
    .from(supplies)
    .where(
      and(
        eq(supplies.storehouseId, storehouseId),
        eq(supplies.isRetired, false),
        eq(supplies.kind, kind),
        sql`${supplies.containerKindId} is not distinct from ${containerKindId}`,
        sql`${supplies.sizeMillilitres} is not distinct from ${sizeMillilitres}`,
      ),
    );
  return row;
}

/** A supply is a unit of the ledger first. */
export async function insertSupply(tx: Tx, row: typeof supplies.$inferInsert): Promise<void> {
  await tx.insert(units).values({ storehouseId: row.storehouseId, unitId: row.supplyId, kind: 'supply' });
  await tx.insert(supplies).values(row);
}

export async function updateSupply(
  tx: Tx,
  { storehouseId, supplyId, version }: SupplyRow,
  change: Partial<typeof supplies.$inferInsert>,
): Promise<void> {
  await tx
    .update(supplies)
    .set({ ...change, version: version + 1 })
    .where(isThis(storehouseId, supplyId));
}

const store = alias(accounts, 'store');
const outside = alias(accounts, 'outside');

/** Pieces that came into the store and were not taken back, the oldest first, with their last good day where one was read. */
export async function listArrivals(tx: Tx, storehouseId: string) {
  const rows = await tx
    .select({ supplyId: movements.unitId, pieces: movements.amount, useBy: supplyUseBys.useBy })
    .from(movements)
    .innerJoin(
      store,
      and(eq(store.storehouseId, movements.storehouseId), eq(store.accountId, movements.destinationId)),
    )
    .innerJoin(
      outside,
      and(eq(outside.storehouseId, movements.storehouseId), eq(outside.accountId, movements.sourceId)),
    )
    .innerJoin(entries, joinOn(entries, movements, 'entryId'))
    .leftJoin(
      supplyUseBys,
      and(
        eq(supplyUseBys.storehouseId, movements.storehouseId),
        eq(supplyUseBys.entryId, movements.entryId),
        eq(supplyUseBys.supplyId, movements.unitId),
      ),
    )
    .where(
      and(
        eq(movements.storehouseId, storehouseId),
        eq(store.kind, 'pieces'),
        isNotNull(store.ownerId),
        eq(outside.kind, 'pieces'),
        isNull(outside.ownerId),
        isNull(entries.reversesId),
        sql`not exists (select from book.entry undoing where undoing.storehouse_id = ${storehouseId}
          and undoing.reverses_id = ${entries.entryId})`,
      ),
    )
    .orderBy(asc(entries.onDay), asc(entries.entryNo));
  return rows;
}

export async function insertUseBys(
  tx: Tx,
  of: { storehouseId: string; entryId: string },
  dated: readonly { supplyId: string; useBy: string }[],
): Promise<void> {
  if (dated.length > 0) await tx.insert(supplyUseBys).values(dated.map((line) => ({ ...of, ...line })));
}

/** When the next packing day that is not over begins; null without one. */
export async function nextSessionAt(tx: Tx, storehouseId: string): Promise<Date | null> {
  const [row] = await tx
    .select({ startsAt: min(packingSessions.startsAt) })
    .from(packingSessions)
    .where(
      and(
        eq(packingSessions.storehouseId, storehouseId),
        inArray(packingSessions.stage, ['open', 'running']),
      ),
    );
  return row?.startsAt ?? null;
}

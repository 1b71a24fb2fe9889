import type { Tx } from '@sheafbook/db';
import {
  type PlaceLogRow,
  type PlaceRow,
  type PlaceWarmthRow,
  persons,
  placeLogs,
  places,
  placeWarmths,
} from '@sheafbook/db/tables';
import { assert } from '@sheafbook/units';
import { and, asc, desc, eq, gt, inArray, isNull, lt, or, sql } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

const isThis = (storehouseId: string, placeId: string) =>
  and(eq(places.storehouseId, storehouseId), eq(places.placeId, placeId));

/** A household's own places and then the store's, each in the order of their names. */
export async function listPlaces(
  tx: Tx,
  storehouseId: string,
  householdId: string | null,
): Promise<PlaceRow[]> {
  const isOwn = householdId === null ? undefined : eq(places.householdId, householdId);
  return tx
    .select()
    .from(places)
    .where(and(eq(places.storehouseId, storehouseId), or(isNull(places.householdId), isOwn)))
    .orderBy(sql`${places.householdId} is null`, asc(places.name));
}

/** A place that may be seen: one's own or the store's. A neighbour's is not there. */
export async function loadPlace(
  tx: Tx,
  storehouseId: string,
  { placeId, householdId }: { placeId: string; householdId: string | null },
): Promise<PlaceRow> {
  const [row] = await tx.select().from(places).where(isThis(storehouseId, placeId));
  if (!row || (row.householdId !== null && row.householdId !== householdId))
    throw new Problem('thing-not-found', { thing: 'place' });
  return row;
}

/** The grams of food that stand in a place, whosever they are, and would stand there with some containers more. */
export async function loadOf(
  tx: Tx,
  { storehouseId, placeId }: PlaceRow,
  withIds: readonly string[] = [],
): Promise<number> {
  const [row] = await tx.execute<{ grams: string }>(sql`
    select book.place_load(${storehouseId}, ${placeId}, ${sql.param([...withIds])}::uuid[]) as grams`);
  return Number(row?.grams ?? 0);
}

/** Whoever writes a place's record waits for whoever does so at this moment. */
export async function lockPlace(tx: Tx, { storehouseId, placeId }: PlaceRow): Promise<void> {
  await tx.select({ id: places.placeId }).from(places).where(isThis(storehouseId, placeId)).for('update');
}

export async function hasPlaceNamed(
  tx: Tx,
  { storehouseId, householdId, name }: Pick<PlaceRow, 'storehouseId' | 'householdId' | 'name'>,
): Promise<string | undefined> {
  const [row] = await tx
    .select({ placeId: places.placeId })
    .from(places)
    .where(
      and(
        eq(places.storehouseId, storehouseId),
        householdId === null ? isNull(places.householdId) : eq(places.householdId, householdId),
        eq(places.name, name),
      ),
    );
  return row?.placeId;
}

export async function insertPlace(tx: Tx, place: typeof places.$inferInsert): Promise<PlaceRow> {
  const [row] = await tx.insert(places).values(place).returning();
  assert(row, 'an insert returns its row');
  return row;
}

/** Undefined when there is none of this version. */
export async function updatePlace(
  tx: Tx,
  { storehouseId, placeId }: PlaceRow,
  {
    version,
    ...facts
  }: Omit<PlaceRow, 'storehouseId' | 'placeId' | 'householdId' | 'mostGrams'> & {
    mostGrams?: number | null | undefined;
  },
): Promise<PlaceRow | undefined> {
  const [row] = await tx
    .update(places)
    .set({ ...facts, version: version + 1 })
    .where(and(isThis(storehouseId, placeId), eq(places.version, version)))
    .returning();
  return row;
}

/** What is known of the warmth of places, each in the order of time. */
export async function listWarmth(
  tx: Tx,
  storehouseId: string,
  placeIds: readonly string[],
): Promise<PlaceWarmthRow[]> {
  return tx
    .select()
    .from(placeWarmths)
    .where(and(eq(placeWarmths.storehouseId, storehouseId), inArray(placeWarmths.placeId, [...placeIds])))
    .orderBy(asc(placeWarmths.placeId), asc(placeWarmths.fromOn));
}

/** The spans of a place that reach into `[fromOn, toOn)`. */
export async function listWarmthBetween(
  tx: Tx,
  { storehouseId, placeId }: PlaceRow,
  { fromOn, toOn }: { fromOn: string; toOn: string },
): Promise<PlaceWarmthRow[]> {
  return tx
    .select()
    .from(placeWarmths)
    .where(
      and(
        eq(placeWarmths.storehouseId, storehouseId),
        eq(placeWarmths.placeId, placeId),
        lt(placeWarmths.fromOn, toOn),
        gt(placeWarmths.toOn, fromOn),
      ),
    )
    .orderBy(asc(placeWarmths.fromOn));
}

const ROWS_A_STATEMENT = 1000;

export async function insertWarmth(
  tx: Tx,
  rows: readonly (typeof placeWarmths.$inferInsert)[],
): Promise<void> {
  for (let from = 0; from < rows.length; from += ROWS_A_STATEMENT)
    await tx.insert(placeWarmths).values(rows.slice(from, from + ROWS_A_STATEMENT));
}

export async function deleteTypedMonths(
  tx: Tx,
  { storehouseId, placeId }: PlaceRow,
  firstDays: readonly string[],
): Promise<void> {
  await tx
    .delete(placeWarmths)
    .where(
      and(
        eq(placeWarmths.storehouseId, storehouseId),
        eq(placeWarmths.placeId, placeId),
        isNull(placeWarmths.placeLogId),
        inArray(placeWarmths.fromOn, [...firstDays]),
      ),
    );
}

/** The files that were taken in for a place, the newest first. */
export async function listLogs(tx: Tx, { storehouseId, placeId }: PlaceRow) {
  return tx
    .select({ log: placeLogs, takenBy: persons.name })
    .from(placeLogs)
    .innerJoin(persons, joinOn(persons, placeLogs, 'personId', 'takenBy'))
    .where(and(eq(placeLogs.storehouseId, storehouseId), eq(placeLogs.placeId, placeId)))
    .orderBy(desc(placeLogs.takenAt), desc(placeLogs.placeLogId));
}
export type ListedLog = Awaited<ReturnType<typeof listLogs>>[number];

export async function insertLog(tx: Tx, row: typeof placeLogs.$inferInsert): Promise<PlaceLogRow> {
  const [inserted] = await tx.insert(placeLogs).values(row).returning();
  assert(inserted, 'an insert returns its row');
  return inserted;
}

/** False when the place has no such file. Its readings go with it. */
export async function deleteLog(
  tx: Tx,
  { storehouseId, placeId }: PlaceRow,
  placeLogId: string,
): Promise<boolean> {
  const gone = await tx
    .delete(placeLogs)
    .where(
      and(
        eq(placeLogs.storehouseId, storehouseId),
        eq(placeLogs.placeId, placeId),
        eq(placeLogs.placeLogId, placeLogId),
      ),
    )
    .returning({ id: placeLogs.placeLogId });
  return gone.length > 0;
}

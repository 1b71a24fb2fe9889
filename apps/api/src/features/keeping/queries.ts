import type { Tx } from '@sheafbook/db';
import {
  containerKinds,
  containerMoves,
  containers,
  foods,
  held,
  lots,
  type PlaceRow,
  type PlaceWarmthRow,
  persons,
  places,
} from '@sheafbook/db/tables';
import type { Finding, Outcome } from '@sheafbook/keeping';
import { and, asc, eq, inArray, isNull, sql } from 'drizzle-orm';
import { isOneOf } from '../../platform/is-one-of.ts';
import { joinOn } from '../../platform/join-on.ts';
import { Problem } from '../../platform/problem.ts';

/** Whose containers: a household's, common stock's (null), or these. */
export type WhichContainers =
  | { readonly householdId: string | null }
  | { readonly containerIds: readonly string[] };

/** Containers with what decides how long they keep, those with something in them and, of named ones, also the empty. */
export async function listKeptContainers(tx: Tx, storehouseId: string, which: WhichContainers) {
  const rows = await tx
    .select({
      container: containers,
      kind: containerKinds,
      food: foods,
      grams: sql<number>`(select coalesce(sum(a.inflow - a.outflow), 0) from book.account a
        where a.storehouse_id = ${containers.storehouseId} and a.unit_id = ${containers.lotId}
          and a.kind = 'mass' and a.vessel_id = ${containers.containerId})`.mapWith(Number),
      isHeld: sql<boolean>`exists (select from ${held} where ${held.storehouseId} = ${containers.storehouseId}
        and ${held.vesselId} = ${containers.containerId})`.mapWith(Boolean),
    })
    .from(containers)
    .innerJoin(containerKinds, joinOn(containerKinds, containers, 'containerKindId'))
    .innerJoin(lots, joinOn(lots, containers, 'lotId'))
    .innerJoin(foods, joinOn(foods, lots, 'foodId'))
    .where(and(eq(containers.storehouseId, storehouseId), areThese(which)))
    .orderBy(asc(containers.containerId));
  return 'containerIds' in which ? rows : rows.filter(({ grams }) => grams > 0);
}
export type KeptRow = Awaited<ReturnType<typeof listKeptContainers>>[number];

function areThese(which: WhichContainers) {
  if ('containerIds' in which) return isOneOf(containers.containerId, which.containerIds);
  return which.householdId === null
    ? isNull(containers.householdId)
    : eq(containers.householdId, which.householdId);
}

/** Every move of these containers, each container's in the order in which they count. */
export async function listMoves(tx: Tx, storehouseId: string, containerIds: readonly string[]) {
  return tx
    .select()
    .from(containerMoves)
    .where(
      and(eq(containerMoves.storehouseId, storehouseId), isOneOf(containerMoves.containerId, containerIds)),
    )
    .orderBy(asc(containerMoves.movedOn), asc(containerMoves.movedAt), asc(containerMoves.containerMoveId));
}

export async function listPlacesById(
  tx: Tx,
  storehouseId: string,
  placeIds: readonly string[],
): Promise<PlaceRow[]> {
  return tx
    .select()
    .from(places)
    .where(and(eq(places.storehouseId, storehouseId), inArray(places.placeId, [...placeIds])));
}

/** How warm it was where these containers stood while they stood there, in order of time; also in places that are hidden. */
export async function listKeptWarmth(
  tx: Tx,
  storehouseId: string,
  containerIds: readonly string[],
): Promise<PlaceWarmthRow[]> {
  const rows = await tx.execute<PlaceWarmthRow>(sql`
    select w.storehouse_id as "storehouseId", w.place_id as "placeId", w.from_on::text as "fromOn", w.to_on::text as "toOn",
      w.age_tenths as "ageTenths", w.mean_tenths as "meanTenths", w.coldest_tenths as "coldestTenths",
      w.warmest_tenths as "warmestTenths", w.readings, w.place_log_id as "placeLogId"
    from book.list_kept_warmth(${storehouseId}, ${sql.param([...containerIds])}::uuid[]) w
    order by w.place_id, w.from_on`);
  return [...rows];
}

/**
 * A container's moves with where to and who wrote them down. Who did before it changed hands is the earlier household's own,
 * as where it stood there is (job map 14).
 */
export async function listMovesTold(tx: Tx, storehouseId: string, containerId: string) {
  const takenAt = sql`(select max(o.ended_at) from book.offer_container o where o.storehouse_id = ${containers.storehouseId}
    and o.container_id = ${containers.containerId} and o.ended_how = 'taken')`;
  const movedBy = sql<string | null>`case when ${containerMoves.movedAt} < ${takenAt}
    and ${persons.householdId} is distinct from ${containers.householdId} then null else ${persons.name} end`;
  return tx
    .select({ move: containerMoves, place: places, movedBy })
    .from(containerMoves)
    .innerJoin(containers, joinOn(containers, containerMoves, 'containerId'))
    .innerJoin(persons, joinOn(persons, containerMoves, 'personId', 'movedBy'))
    .leftJoin(places, joinOn(places, containerMoves, 'placeId'))
    .where(and(eq(containerMoves.storehouseId, storehouseId), eq(containerMoves.containerId, containerId)))
    .orderBy(asc(containerMoves.movedOn), asc(containerMoves.movedAt), asc(containerMoves.containerMoveId));
}
export type ToldMove = Awaited<ReturnType<typeof listMovesTold>>[number];

/** These containers, each one's own or common stock's. A neighbour's is not there. */
export async function loadMovables(
  tx: Tx,
  storehouseId: string,
  { containerIds, householdId }: { containerIds: readonly string[]; householdId: string | null },
) {
  const rows = await tx
    .select()
    .from(containers)
    .where(and(eq(containers.storehouseId, storehouseId), inArray(containers.containerId, [...containerIds])))
    .orderBy(asc(containers.containerId));
  const seen = rows.filter((row) => row.householdId === null || row.householdId === householdId);
  if (seen.length < containerIds.length) throw new Problem('thing-not-found', { thing: 'container' });
  return seen;
}

export async function insertMoves(
  tx: Tx,
  rows: readonly (typeof containerMoves.$inferInsert)[],
): Promise<void> {
  await tx.insert(containerMoves).values([...rows]);
}

/** What the last look at a container found, and what it made of the food in it. Units: ISO day. */
export type LastLook = {
  readonly findings: readonly Finding[];
  readonly outcome: Outcome;
  readonly inspectedOn: string;
};

/**
 * The last look at each of some containers that somebody looked at, as far as whoever reads may know of it: also what was found
 * before a container came to its household.
 */
export async function listLastLooks(
  tx: Tx,
  storehouseId: string,
  containerIds: readonly string[],
): Promise<Map<string, LastLook>> {
  const rows = await tx.execute<LastLook & { containerId: string }>(sql`
    select distinct on (l.container_id) l.container_id as "containerId", l.findings, l.outcome,
      l.inspected_on::text as "inspectedOn"
    from book.list_looks(${storehouseId}, ${sql.param([...containerIds])}::uuid[]) l
    order by l.container_id, l.inspection_id desc`);
  return new Map(rows.map(({ containerId, ...look }) => [containerId, look]));
}
